// The marks on a pan's curve where a person's word changed what is believed, each a button that tells what it was and is.
import type { JSX } from 'preact';
import { isByPractice } from '../../protocol/practice-marks.ts';
import { settings } from '../client/store.ts';
import type { MarkView, Now } from '../client/types.ts';
import { useKey } from '../shell/keys.ts';
import { timeOfDay } from '../words/clock.ts';
import { correctedAt, correctedBy, correctedWords, strengthStep, wayOf } from '../words/correction-words.ts';
import type { Corrected } from '../words/correction-words.ts';
import type { Step } from './curve-steps.ts';
import type { Spot } from './label-places.ts';
import { shownCorrection } from './shown-correction.ts';
import { say } from '../language/say.ts';

/** A correction of one pan, with its mark. */
export interface PanCorrection extends Corrected {
  mark: MarkView;
  /** One of the many small things that the practice does by itself: its words would crowd out those of a person. */
  isMinor: boolean;
}

/** Of one pan, in order of time. */
export function correctionsOf(now: Now, pan: string): PanCorrection[] {
  return now.marks
    .flatMap((mark) =>
      correctedBy(mark, now, settings.value).map((each) => ({
        ...each,
        mark,
        isMinor: isByPractice(mark.mark, now.header),
      })),
    )
    .filter(({ correction }) => correction.pan === pan)
    .sort((a, b) => a.correction.t - b.correction.t);
}

/** As the chart draws them: what was taken back since, or the practice did, has its mark, and words only while it is the chosen one. */
export function stepsOf(corrections: readonly PanCorrection[], shown: string | null): Step[] {
  return corrections.map(({ key, correction, isUndone, isMinor, isEmptying }) => ({
    x: correction.t,
    word: isEmptying || ((isUndone || isMinor) && key !== shown) ? null : strengthStep(correction, settings.value),
    finish: key === shown ? [correction.before.finishAt, correction.after.finishAt] : null,
  }));
}

const SHAPES = { up: 'M12 3 21 19H3Z', down: 'M12 21 3 5H21Z', aside: 'M12 2 22 12 12 22 2 12Z' };

/** "10:40, Density 58 °Bx: strength 55 → 58 °Bx": in two parts, the time and what was noted. */
const toldOf = (each: PanCorrection, now: Now): [time: string, words: string] => [
  timeOfDay(now, correctedAt(each.mark, each)),
  correctedWords(each.mark, each, now, settings.value),
];

function Marker({ each, spot, now }: { each: PanCorrection; spot: Spot; now: Now }): JSX.Element {
  const tell = (): void => void (shownCorrection.value = each.key);
  return (
    <button
      type="button"
      class={each.isUndone ? 'corrected undone' : 'corrected'}
      style={{ left: `${spot.x}px`, top: `${spot.y}px` }}
      aria-pressed={shownCorrection.value === each.key}
      aria-label={toldOf(each, now).join(', ')}
      onFocus={tell}
      onClick={tell}
    >
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d={SHAPES[wayOf(each.correction)]} />
        {each.isUndone && <path d="M2 22 22 2" />}
      </svg>
    </button>
  );
}

interface CorrectionMarkersProps {
  corrections: readonly PanCorrection[];
  /** Where each stands on the chart, px; null for one out of sight. */
  spots: readonly (Spot | null)[];
  now: Now;
}

export function CorrectionMarkers({ corrections, spots, now }: CorrectionMarkersProps): JSX.Element {
  return (
    <>
      {corrections.map((each, i) => {
        const spot = spots[i] ?? null;
        return spot !== null && <Marker key={each.key} each={each} spot={spot} now={now} />;
      })}
    </>
  );
}

/** Under the chart: the chosen correction in words. */
export function ToldCorrection({ corrections, now }: Omit<CorrectionMarkersProps, 'spots'>): JSX.Element | null {
  const chosen = corrections.find(({ key }) => key === shownCorrection.value);
  const close = (): void => void (shownCorrection.value = null);
  useKey(chosen === undefined ? null : 'Escape', close);
  if (chosen === undefined) return null;
  const [time, words] = toldOf(chosen, now);
  return (
    <p class="corrected-words">
      <span>
        <time>{time}</time> {words}
      </span>
      <button type="button" onClick={close}>
        {say('chart.close')} <kbd aria-hidden="true">Esc</kbd>
      </button>
    </p>
  );
}
