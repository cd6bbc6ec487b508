// Everything of one boil: its curve, figures, words, photos and bottling.
import { usualPaper } from '../../core/quantities/paper.ts';
import { lengthOfTime } from '../../core/quantities/time.ts';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { BoilPageView } from '../../protocol/season-messages.ts';
import { settings } from '../client/store.ts';
import { openReplay } from '../replay/replay-control.ts';
import { addressOf } from '../shell/routes.ts';
import { dayAndTime } from '../words/clock.ts';
import { BoilCurve } from './boil-curve.tsx';
import { Bottling } from './bottling.tsx';
import { isAnswered } from './end-draft.ts';
import { EndOfBoilForm } from './end-form.tsx';
import { fileAddress } from './file-address.ts';
import { FiguresTable } from './figures-table.tsx';
import { HidePractice } from './hide-practice.tsx';
import { PageWords } from './page-words.tsx';
import { Photos } from './photos.tsx';
import { Rename } from './rename.tsx';
import { useAsked } from './page-data.ts';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';
import { boilName } from '../words/boil-name.ts';

const REPORTS = { a4: 'notebook.way.report', letter: 'notebook.way.report_letter' } as const;
/** Printed on the paper that is usual for the units; the report on the other paper, too, for units do not tell all. */
const WAYS = [
  ['labels.pdf', {}, 'notebook.way.labels'],
  ['csv', {}, 'notebook.way.readings'],
  ['marks.csv', {}, 'notebook.way.marks'],
  ['senml.json', {}, 'notebook.way.senml'],
] as const;

interface HeadProps {
  view: BoilPageView;
  keep: (view: BoilPageView) => void;
  fillIn: (() => void) | null;
}

function Head({ view, keep, fillIn }: HeadProps): JSX.Element {
  const { boil, name, started, seconds, practice, running } = view;
  return (
    <>
      <p>
        <a href={addressOf('notebook')}>{say('notebook.all_boils')}</a>
      </p>
      <h1>{boilName(name)}</h1>
      <Rename view={view} keep={keep} />
      <p>
        {say('notebook.when', { when: dayAndTime(started), length: lengthOfTime(seconds) })}
        {practice && <span class="tag tag-practice">{say('notebook.practice')}</span>}
        {running && <span class="tag">{say('notebook.running')}</span>}
        {view.hidden && <span class="tag">{say('notebook.hidden')}</span>}
      </p>
      <p class="row">
        {fillIn !== null && (
          <button type="button" class="main-button" onClick={fillIn}>
            {say(isAnswered(view.page) ? 'notebook.change_what' : 'notebook.say_what')}
          </button>
        )}
        <button type="button" onClick={() => void openReplay(boil)}>
          {say('notebook.replay')}
        </button>
        <a class="button" href={addressOf('compare', boil)}>
          {say('notebook.compare')}
        </a>
        <a class="button" href={addressOf('tune', boil)}>
          {say('notebook.tune')}
        </a>
        <a class="button" href={`boils/${encodeURIComponent(boil)}.boil.jsonl`} download>
          {say('notebook.export')}
        </a>
        <HidePractice view={view} keep={keep} />
      </p>
      <details class="finder">
        <summary>{say('notebook.save_as')}</summary>
        <p class="row">
          {(usualPaper(settings.value) === 'letter' ? (['letter', 'a4'] as const) : (['a4', 'letter'] as const)).map(
            (paper) => (
              <a key={paper} class="button" href={fileAddress(`${boil}.pdf`, { paper })} download>
                {say(REPORTS[paper])}
              </a>
            ),
          )}
          {WAYS.map(([ending, asked, word]) => (
            <a key={word} class="button" href={fileAddress(`${boil}.${ending}`, asked)} download>
              {say(word)}
            </a>
          ))}
        </p>
      </details>
    </>
  );
}

function Page({ view, set, again }: { view: BoilPageView; set: (view: BoilPageView) => void; again: () => void }) {
  const [isAsking, setAsking] = useState(false);
  const { form, figures } = view;
  const done = (): void => {
    setAsking(false);
    again();
  };
  return (
    <>
      <Head view={view} keep={set} fillIn={form === null || isAsking ? null : () => setAsking(true)} />
      {isAsking && form !== null && (
        <EndOfBoilForm view={{ ...view, form }} kept={done} later={() => setAsking(false)} />
      )}
      {!view.running && <BoilCurve boil={view.boil} pans={view.pans} />}
      {figures === null ? (
        <p>{view.running ? say('notebook.figures_later') : say('notebook.figures_worked')}</p>
      ) : (
        <FiguresTable
          figures={figures}
          balance={view.balance}
          jars={view.page.jars}
          kinds={view.saps.length}
          pours={view.pours}
          wasSeen={!view.boiling_never_seen}
        />
      )}
      <PageWords key={JSON.stringify(view.page.notes ?? '')} view={view} keep={set} />
      <Photos view={view} changed={again} />
      <Bottling view={view} keep={set} />
    </>
  );
}

export function BoilPage({ boil }: { boil: string }): JSX.Element {
  const { view, problem, set, again } = useAsked<BoilPageView>(
    { boil_page: { boil } },
    boil,
    ({ figures, running }) => figures === null && !running,
  );
  return (
    <div class="page">
      {problem !== null && <p class="problem">✕ {hostWords(problem)}</p>}
      {view !== null && <Page view={view} set={set} again={again} />}
    </div>
  );
}
