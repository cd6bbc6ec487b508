// What a mark changed in what is believed of a pan, in one short line: strength, litres and finish, each as it was and as it is.
import type { Correction, MarkView, Now, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { degrees, strength, volume } from './amounts.ts';
import { timeOfDay } from './clock.ts';
import { notedWords } from './mark-words.ts';
import { panName } from './pan-words.ts';
import { isTooLittle } from './planned-sap.ts';

/** A smaller change of strength needs its tenths to be seen, °Bx. */
const FINE_BRIX = 2;
/** Widths of a range that print whole degrees and tenths. */
const WHOLE_WIDTH = 4;
const TENTH_WIDTH = 1;

/** What stands behind the figures of a text, such as " °Bx". */
const unitOf = (text: string): string => text.replace(/^[\d.,:−-]+/u, '');

/** "55 → 58 °Bx" between two texts, a unit that they share told once; null where a reader would see no change. */
function step(before: string | null, after: string | null, unknown = say('words.not_known')): string | null {
  if (before === after) return null;
  const shared = before !== null && after !== null && unitOf(before) === unitOf(after) ? unitOf(after) : '';
  const was = before === null ? unknown : before.slice(0, before.length - shared.length);
  return `${was} → ${after ?? unknown}`;
}

/** "55 → 58 °Bx"; null where nobody would see a change. */
export function strengthStep({ before, after }: Correction, settings: Settings): string | null {
  const [was, is] = [before.brix, after.brix];
  const isFine = was !== null && is !== null && Math.abs(was - is) < FINE_BRIX;
  const half = (isFine ? TENTH_WIDTH : WHOLE_WIDTH) / 2;
  const shown = (brix: number | null): string | null =>
    brix === null ? null : strength(brix, brix - half, brix + half, settings);
  return step(shown(was), shown(is), say('correction.strength_not_known'));
}

/** Which way the strength went, for the shape that stands on the curve. */
export function wayOf({ before, after }: Correction): 'up' | 'down' | 'aside' {
  if (before.brix === null || after.brix === null || before.brix === after.brix) return 'aside';
  return after.brix > before.brix ? 'up' : 'down';
}

/** "strength 55 → 58 °Bx, finish 16:40 → 16:28"; null where a reader would see no change. */
export function correctionWords(correction: Correction, now: Now, settings: Settings): string | null {
  const { before, after } = correction;
  const litres = (value: number | null): string | null => (value === null ? null : volume(value, settings));
  const time = (at: number | null): string | null => (at === null ? null : timeOfDay(now, at));
  const steps = [
    [say('correction.strength'), strengthStep(correction, settings)],
    [say('correction.in_the_pan'), step(litres(before.litres), litres(after.litres))],
    [
      say('correction.finish'),
      isTooLittle(now, correction.pan)
        ? null
        : step(time(before.finishAt), time(after.finishAt), say('correction.finish_not_known')),
    ],
  ];
  const thermometer = thermometerStep(correction, settings);
  const said = steps.flatMap(([what, words]) => (words === null ? [] : [`${what} ${words}`]));
  const all = thermometer === null ? said : [thermometer, ...said];
  return all.length === 0 ? null : all.join(', ');
}

/** Of a pan that the mark emptied: what came out, and back into it where the mark was taken back; for nobody knows less of it than before. */
function emptiedWords({ before, after }: Correction, isBack: boolean, settings: Settings): string {
  const { brix, litres } = isBack ? after : before;
  const what = [
    ...(litres === null ? [] : [volume(litres, settings)]),
    ...(brix === null ? [] : [strength(brix, brix - WHOLE_WIDTH / 2, brix + WHOLE_WIDTH / 2, settings)]),
  ].join(', ');
  return say(isBack ? 'correction.in_again' : 'correction.emptied', { what });
}

/** Whether the mark emptied the pan, and what was in it is what the correction tells. */
function tellsEmptied(mark: MarkView['mark'], { pan, before, after }: Correction, isBack: boolean): boolean {
  if (!('all' in mark) || mark.all !== true) return false;
  if ((mark.kind === 'draw-off' ? mark.pan : mark.from) !== pan) return false;
  const empty = isBack ? before : after;
  const full = isBack ? after : before;
  return (empty.litres ?? 0) === 0 && empty.brix === null && (full.litres !== null || full.brix !== null);
}

/** Less is not seen on a card, °C. */
const SEEN_C = 0.05;

/** "its thermometer counts 0.5 °C lower", though nobody read it anew; null where it counts as before. */
function thermometerStep({ before, after }: Correction, settings: Settings): string | null {
  const by = (after.addedC ?? 0) - (before.addedC ?? 0);
  const isKnown = typeof before.addedC === 'number' && typeof after.addedC === 'number';
  if (!isKnown || Math.abs(by) < SEEN_C) return null;
  return say(by > 0 ? 'correction.counts_higher' : 'correction.counts_lower', { by: degrees(Math.abs(by), settings) });
}

/** One correction that a reader can see, with the mark that made it. */
export interface Corrected {
  /** Unlike that of any other, and the same for as long as the mark stands. */
  key: string;
  correction: Correction;
  /** "strength 55 → 58 °Bx, finish 16:40 → 16:28" */
  words: string;
  /** It came of taking the mark back. */
  isBack: boolean;
  /** The mark was taken back since: what it changed counts no more. */
  isUndone: boolean;
  /** It emptied the pan, or that was taken back: no strength was changed by it. */
  isEmptying: boolean;
}

/** What one mark changed; of a mark that was taken back also what that changed. */
export function correctedBy(each: MarkView, now: Now, settings: Settings): Corrected[] {
  return each.corrections.flatMap((correction) => {
    const isBack = each.withdrawn && correction.t > each.t;
    const isEmptying = tellsEmptied(each.mark, correction, isBack);
    const words = isEmptying ? emptiedWords(correction, isBack, settings) : correctionWords(correction, now, settings);
    const key = `${each.mark.id ?? each.t} ${correction.pan} ${correction.t}`;
    return words === null ? [] : [{ key, correction, words, isBack, isUndone: each.withdrawn, isEmptying }];
  });
}

/** What was noted so much later than it happened is told with both times, ms. */
const LATER_MS = 60_000;

/** When that happened, ms of boil time: what a person noted later, as of then; a taking back, when it was taken back. */
export const correctedAt = (each: MarkView, { correction, isBack }: Corrected): number =>
  isBack ? correction.t : each.at;

/** "Density 58 °Bx: strength 55 → 58 °Bx, finish 16:40 → 16:28", for the chart of one pan, behind `correctedAt`. */
export function correctedWords(each: MarkView, corrected: Corrected, now: Now, settings: Settings): string {
  const { words, correction } = corrected;
  const said = { mark: notedWords(each, now, settings), words };
  if (corrected.isBack) return say('correction.by_taken_back', said);
  return correction.t - each.at < LATER_MS
    ? say('correction.by', said)
    : say('correction.by_later', { ...said, time: timeOfDay(now, correction.t) });
}

/** The line under a mark in the list, which has named its own pan already. */
export function correctedLine(each: MarkView, { correction, words, isBack }: Corrected, now: Now): string {
  const own = 'pan' in each.mark ? each.mark.pan : null;
  const what =
    correction.pan === own ? words : say('correction.of_pan', { pan: panName(now.header, correction.pan), words });
  return isBack ? say('correction.back', { time: timeOfDay(now, correction.t), what }) : what;
}
