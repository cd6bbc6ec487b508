// What was noted, the latest first, each of which can be taken back.
import type { JSX } from 'preact';
import { say } from '../language/say.ts';
import { settings, tell } from '../client/store.ts';
import type { MarkView, Now } from '../client/types.ts';
import { shownCorrection } from '../charts/shown-correction.ts';
import { selectPan } from '../pans/selected-pan.ts';
import { timeOfDay } from '../words/clock.ts';
import { correctedBy, correctedLine } from '../words/correction-words.ts';
import type { Corrected } from '../words/correction-words.ts';
import { markWords } from '../words/mark-words.ts';
import { FirstFew } from '../shell/first-few.tsx';

const SHOWN_FIRST = 8;

function takeBack(id: string, what: string): void {
  void tell({ mark: { kind: 'withdraw', id } }, say('marks.taken_back_what', { what }));
}

/** The chart of that pan tells of it, with its finish as it was and as it is. */
function showInChart({ key, correction }: Corrected): void {
  selectPan(correction.pan);
  shownCorrection.value = key;
}

/** What the mark changed in what is believed; a press shows it in the chart. */
function Changed({ each, now }: { each: MarkView; now: Now }): JSX.Element {
  return (
    <>
      {correctedBy(each, now, settings.value).map((corrected) => (
        <button
          key={corrected.key}
          type="button"
          class="changed"
          aria-pressed={shownCorrection.value === corrected.key}
          onFocus={() => (shownCorrection.value = corrected.key)}
          onClick={() => showInChart(corrected)}
        >
          {correctedLine(each, corrected, now)}
        </button>
      ))}
    </>
  );
}

function LogRow({ each, now, canTakeBack }: { each: MarkView; now: Now; canTakeBack: boolean }): JSX.Element {
  const { id } = each.mark;
  const what = markWords(each.mark, now.header, settings.value);
  return (
    <li class={each.withdrawn ? 'log-withdrawn' : undefined}>
      <time>{timeOfDay(now, each.at)}</time>
      <span>{what}</span>
      {each.withdrawn && <em>{say('marks.taken_back')}</em>}
      {each.questioned && !each.withdrawn && <em>{say('marks.left_out')}</em>}
      {canTakeBack && !each.withdrawn && id !== undefined && (
        <button type="button" onClick={() => takeBack(id, what)}>
          {say('marks.take_back')}
        </button>
      )}
      <Changed each={each} now={now} />
    </li>
  );
}

export function MarkLog({ now, canTakeBack }: { now: Now; canTakeBack: boolean }): JSX.Element {
  const latestFirst = now.marks.filter((each) => each.mark.kind !== 'withdraw').reverse();
  return (
    <section class="panel log" aria-label={say('marks.what_was_noted')}>
      <h2>{say('marks.noted_so_far')}</h2>
      {latestFirst.length === 0 && <p>{say('marks.nothing_yet')}</p>}
      <FirstFew
        items={latestFirst}
        shown={SHOWN_FIRST}
        row={(each, place) => (
          <LogRow key={each.mark.id ?? `${each.t} ${place}`} each={each} now={now} canTakeBack={canTakeBack} />
        )}
      />
    </section>
  );
}
