// Up to six boils laid over each other, what differs in words, and a season in small beneath.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Alignment, Compared, CompareView as Compare, ComparedBoil } from '../../protocol/compare-messages.ts';
import { Select } from '../boil/inputs.tsx';
import { LineKey, LinesChart } from '../charts/lines-chart.tsx';
import type { ChartLine } from '../charts/lines-chart.tsx';
import { saps as sapKinds, settings } from '../client/store.ts';
import type { BoilListing, Settings } from '../client/types.ts';
import { type MessageKey, say, setApart } from '../language/say.ts';
import { useAsked } from '../notebook/page-data.ts';
import { openReplay } from '../replay/replay-control.ts';
import { addressOf, place } from '../shell/routes.ts';
import {
  pansWords,
  ALIGNED_BY,
  alongShown,
  boilsWithin,
  boilWordsAmong,
  differingWords,
  DRAWN,
  notDrawnWords,
  upShown,
  upTitle,
} from '../words/compare-words.ts';
import { exactStrength, strengthShown } from '../words/amounts.ts';
import { sapCalled, sapKeyOf, sapOfKey } from '../words/sap-words.ts';
import { stillRead } from '../words/still-read.ts';
import { alongOf } from './along.ts';
import { BoilChooser } from './boil-chooser.tsx';
import { useCompared } from './compare-data.ts';
import { FiguresBeside } from './figures-beside.tsx';
import { SmallMultiples } from './small-multiples.tsx';
import { hostWords } from '../language/host-words.ts';

interface ChoiceProps<T extends string> {
  label: string;
  options: readonly (readonly [T, MessageKey])[];
  /** null where none is chosen yet. */
  value: T | null;
  set: (value: T) => void;
}

function Choice<T extends string>({ label, options, value, set }: ChoiceProps<T>): JSX.Element {
  return (
    <p class="row" role="group" aria-label={label}>
      <span>{label}</span>
      {options.map(([each, word]) => (
        <button key={each} type="button" aria-pressed={each === value} onClick={() => set(each)}>
          {say(word)}
        </button>
      ))}
    </p>
  );
}

/** With its sap where the lines are of several: pans of different saps finish at different heats. */
function lineName(boil: ComparedBoil, boils: readonly ComparedBoil[]): string {
  const words = boilWordsAmong(boil, boils);
  const saps = new Set(boils.flatMap(({ pan }) => (pan === null ? [] : [pan.sap])));
  if (boil.pan === null || saps.size < 2) return words;
  return say('compare.line_of_sap', { boil: words, sap: sapCalled(sapOfKey(boil.pan.sap), sapKinds.value) });
}

function lineOf(boil: ComparedBoil, stroke: number, view: Compare, choice: Settings): ChartLine {
  const { align, what } = view;
  const points = boil.x.map((x, i) => {
    const y = boil.y[i] ?? null;
    return { x: alongShown(align, x, choice), y: y === null ? null : upShown(what, y, choice) };
  });
  return { name: lineName(boil, view.boils), stroke, points };
}

/** Boil time of the point nearest to a place along. */
function momentAt(boil: ComparedBoil, align: Alignment, x: number): number {
  const away = boil.x.map((each) => Math.abs(alongShown(align, each, settings.value) - x));
  return boil.t[away.indexOf(Math.min(...away))] ?? 0;
}

/** The least strength of maple syrup by law in Canada and the United States, °Bx (CFIA; 21 CFR 168.140). */
const SYRUP_FROM_BRIX = 66;

/** The law speaks of maple: no such line lies on a birch boil. */
const isAllMaple = (boils: readonly ComparedBoil[]): boolean =>
  boils.length > 0 &&
  boils.every(({ pan }) => pan === null || sapKeyOf(sapOfKey(pan.sap), sapKinds.value).startsWith('maple'));

const syrupFrom = (choice: Settings): { y: number; word: string } => ({
  y: strengthShown(SYRUP_FROM_BRIX, choice),
  word: say('compare.syrup_from', { strength: exactStrength(SYRUP_FROM_BRIX, choice) }),
});

function Overlay({ view }: { view: Compare }): JSX.Element {
  const choice = settings.value;
  const lines = view.boils.map((boil, i) => lineOf(boil, i, view, choice));
  const { title: along, ticks } = alongOf(view.align, lines, choice);
  const within = boilsWithin(view.what, choice);
  const open = (line: ChartLine, x: number): void => {
    const boil = view.boils[lines.indexOf(line)];
    if (boil !== undefined) void openReplay(boil.boil, momentAt(boil, view.align, x));
  };
  return (
    <>
      {/* What is still being read is said above: that nothing is known were not so. */}
      {view.working < view.boils.length && (
        <LinesChart
          sentence={say('compare.sentence', {
            what: upTitle(view.what, choice),
            count: lines.length,
            along,
          })}
          lines={lines}
          xTitle={along}
          yTitle={upTitle(view.what, choice)}
          {...(ticks === undefined ? {} : { xTicks: ticks })}
          {...(within === undefined ? {} : { within })}
          {...(view.what === 'strength' && isAllMaple(view.boils) ? { level: syrupFrom(choice) } : {})}
          height={350}
          press={open}
        />
      )}
      <LineKey lines={lines.map((line, i) => ({ ...line, notDrawn: notDrawnWords(view.boils[i], view.boils) }))} />
      <p class="row" role="group" aria-label={say('compare.replay_one')}>
        {view.boils.map((boil, i) => (
          <button key={boil.boil} type="button" onClick={() => void openReplay(boil.boil)}>
            {say('compare.replay', { place: i + 1 })}
          </button>
        ))}
        <span class="hint screen-only">{say('compare.press_line')}</span>
      </p>
    </>
  );
}

function Differences({ view }: { view: Compare }): JSX.Element | null {
  if (view.boils.length < 2 || view.working > 0) return null;
  const saps = new Set(view.boils.flatMap(({ pan }) => (pan === null ? [] : [pan.sap])));
  const { lines, others, leftOut } = differingWords(view);
  return (
    <section class="panel" aria-label={say('compare.differs')}>
      <h2>{say('compare.differs_from')}</h2>
      {saps.size > 1 && (
        <p class="hint">{say('compare.other_saps', { pans: setApart(pansWords(view.boils, sapKinds.value)) })}</p>
      )}
      {lines.length > 0 && (
        <ol class="differences">
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
      )}
      {others.map((words) => (
        <p key={words}>{words}</p>
      ))}
      {leftOut !== null && <p class="hint">{leftOut}</p>}
    </section>
  );
}

function LaidOver({ boils }: { boils: readonly string[] }): JSX.Element {
  const [align, setAlign] = useState<Alignment | null>(null);
  const [what, setWhat] = useState<Compared | null>(null);
  const [pan, setPan] = useState('');
  const { view, problem } = useCompared(boils, align, what, pan === '' ? null : pan);
  return (
    <>
      <section class="panel" aria-label={say('compare.laid')}>
        <Choice
          label={say('compare.side_by')}
          options={ALIGNED_BY}
          value={align ?? view?.align ?? null}
          set={setAlign}
        />
        <Choice label={say('compare.drawn_is')} options={DRAWN} value={what ?? view?.what ?? null} set={setWhat} />
        {view !== null && (view.pans.length > 1 || pan !== '') && (
          <p>
            <Select
              label={say('compare.pan')}
              value={pan}
              options={[['', say('compare.pan.last')], ...view.pans.map(({ id, name }) => [id, name] as const)]}
              set={setPan}
            />
          </p>
        )}
        {problem !== null && <p class="problem">✕ {hostWords(problem)}</p>}
        {view !== null && view.working > 0 && <p role="status">{stillRead(view.working)}</p>}
        {view !== null && <Overlay view={view} />}
      </section>
      {view !== null && <Differences view={view} />}
    </>
  );
}

export function CompareView(): JSX.Element {
  const { view, problem } = useAsked<BoilListing[]>({ boils: true }, 'boils', () => false);
  const chosen = place.value.filter((boil) => boil !== '');
  const boils = view?.filter(({ boil, hidden }) => hidden !== true || chosen.includes(boil)) ?? null;
  return (
    <div class="page compare">
      <p>
        <a href={addressOf('notebook')}>{say('compare.to_notebook')}</a>
      </p>
      <h1>{say('compare.title')}</h1>
      {problem !== null && <p class="problem">✕ {hostWords(problem)}</p>}
      {boils !== null && <BoilChooser boils={boils} chosen={chosen} hidden={(view?.length ?? 0) - boils.length} />}
      {chosen.length > 0 && <FiguresBeside boils={chosen} />}
      {chosen.length > 0 && <LaidOver boils={chosen} />}
      {boils !== null && <SmallMultiples boils={boils} chosen={chosen} />}
    </div>
  );
}
