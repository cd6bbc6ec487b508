// What was noted, the latest first, each of which can be taken back.
import type { JSX } from 'preact';
import { isByPractice } from '../../protocol/practice-marks.ts';
import { say } from '../language/say.ts';
import { settings } from '../client/store.ts';
import type { MarkView, Now } from '../client/types.ts';
import { shownCorrection } from '../charts/shown-correction.ts';
import { selectPan } from '../pans/selected-pan.ts';
import { power as powerWords } from '../words/amounts.ts';
import { timeOfDay } from '../words/clock.ts';
import { correctedBy, correctedLine } from '../words/correction-words.ts';
import type { Corrected } from '../words/correction-words.ts';
import { markViewWords, panOfMark } from '../words/mark-words.ts';
import { panName } from '../words/pan-words.ts';
import { correctedAtWords, correctedWasWords, standsAgain } from './corrected-note.ts';
import { canInsist, insist, leftOutWords } from './left-out.ts';
import { formOf } from './forms.ts';
import { openFormAgain } from './open-form.ts';
import { takeBack } from './take-back.ts';
import { FirstFew } from '../shell/first-few.tsx';

const SHOWN_FIRST = 8;

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
  // What the practice did by itself happened: there is no slip in it to take back.
  const isPractice = isByPractice(each.mark, now.header);
  const what = markViewWords(each, now, settings.value);
  const leftOut = leftOutWords(each);
  const correctedWas = correctedWasWords(each, now, settings.value);
  const isMine = canTakeBack && !isPractice && !each.withdrawn && id !== undefined;
  return (
    <li class={each.withdrawn ? 'log-withdrawn' : undefined}>
      <time>{timeOfDay(now, each.at)}</time>
      <span>{what}</span>
      {isPractice && <em>{say('marks.by_practice')}</em>}
      {each.withdrawn && <em>{correctedAtWords(each, now) ?? say('marks.taken_back')}</em>}
      {correctedWas !== null && <em>{correctedWas}</em>}
      {leftOut !== null && <em>{leftOut}</em>}
      {canTakeBack && !isPractice && canInsist(each, now) && (
        <button type="button" onClick={() => insist(each, now, settings.value)}>
          {say('marks.it_is_so')}
        </button>
      )}
      {isMine && formOf(each.mark.kind)?.build !== undefined && (
        <button type="button" onClick={() => openFormAgain(each, panOfMark(each.mark))}>
          {say('marks.correct')}
        </button>
      )}
      {isMine && (
        <button type="button" onClick={() => takeBack(id, what)}>
          {say('marks.take_back')}
        </button>
      )}
      <Changed each={each} now={now} />
    </li>
  );
}

type Logged = { at: number; mark: MarkView } | { at: number; power: Now['powers'][number] };

/** Marks and new burner powers by when they were, the latest first; of one moment what was noted last stands first. */
export function loggedIn(now: Now): Logged[] {
  const listed = now.marks.filter((each) => each.mark.kind !== 'withdraw' && !standsAgain(each, now, settings.value));
  const marks = listed.map((mark) => ({ at: mark.at, mark }));
  const powers = now.powers.map((power) => ({ at: power.t, power }));
  return [...marks, ...powers].sort((one, other) => one.at - other.at).reverse();
}

function PowerRow({ power: { t, pan, watts }, now }: { power: Now['powers'][number]; now: Now }): JSX.Element {
  return (
    <li>
      <time>{timeOfDay(now, t)}</time>
      <span>
        {say('mark.of_pan', {
          pan: panName(now.header, pan),
          words:
            watts === null
              ? say('mark.power_unknown')
              : say('mark.power', { power: powerWords(watts, settings.value) }),
        })}
      </span>
    </li>
  );
}

export function MarkLog({ now, canTakeBack }: { now: Now; canTakeBack: boolean }): JSX.Element {
  const latestFirst = loggedIn(now);
  return (
    <section class="panel log" aria-label={say('marks.what_was_noted')}>
      <h2>{say('marks.noted_so_far')}</h2>
      {latestFirst.length === 0 && <p>{say('marks.nothing_yet')}</p>}
      <FirstFew
        items={latestFirst}
        shown={SHOWN_FIRST}
        row={(each, place) =>
          'power' in each ? (
            <PowerRow key={`power ${each.at} ${place}`} power={each.power} now={now} />
          ) : (
            <LogRow
              key={each.mark.mark.id ?? `${each.at} ${place}`}
              each={each.mark}
              now={now}
              canTakeBack={canTakeBack}
            />
          )
        }
      />
    </section>
  );
}
