// What was noted and acts on nothing: why, in words, and how a person says that it is so.
import { type Said, tell } from '../client/store.ts';
import type { MarkKind, MarkView, Now, Settings } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { notedWords } from '../words/mark-words.ts';

/** Measurements, which count at once when somebody stands by them. */
const MEASURED: ReadonlySet<MarkKind> = new Set(['density', 'depth', 'pressure']);

/** "left out: Back pot: 40 mm is far from what went in and boiled away." Null for a mark that counts. */
export function leftOutWords({ mark, withdrawn, questioned, doubt }: MarkView): string | null {
  if (withdrawn || !questioned) return null;
  if (doubt === null) return say('marks.left_out');
  return MEASURED.has(mark.kind) ? say('marks.left_out_why', { why: hostWords(doubt) }) : hostWords(doubt);
}

/**
 * What the line of the last deed says: of a mark that the host left out, why, and not that it is done; `notice` is the
 * sentence that it thereby says, so that it is said once.
 */
export function saidOf(
  last: Said | null,
  now: Now | null,
): { good: boolean; sentence: string; notice?: string } | null {
  const mark = last?.mark === undefined ? undefined : now?.marks.find((each) => each.mark.id === last.mark);
  const leftOut = mark === undefined ? null : leftOutWords(mark);
  if (last === null || leftOut === null) return last;
  const doubt = mark?.doubt ?? null;
  const notice = doubt === null ? undefined : now?.notices.find((sentence) => sentence.startsWith(doubt));
  return notice === undefined ? { good: false, sentence: leftOut } : { good: false, sentence: notice, notice };
}

const panOf = (mark: MarkView['mark']): string | null => ('pan' in mark ? (mark.pan ?? null) : null);

/** Whether a press may make it count: not once the same was measured anew. */
export function canInsist(each: MarkView, now: Now): boolean {
  const { mark, at } = each;
  if (leftOutWords(each) === null || !MEASURED.has(mark.kind)) return false;
  return !now.marks.some(
    (other) =>
      other !== each &&
      !other.withdrawn &&
      other.mark.kind === mark.kind &&
      panOf(other.mark) === panOf(mark) &&
      (other.at > at || (other.at === at && other.t > each.t)),
  );
}

/** On a card it is said so long after it was noted, ms. */
const ON_CARD_MS = 20 * 60_000;

/** The latest measurement of a pan that was left out a short while ago and was not measured anew; null for none. */
export const lastLeftOut = (now: Now, pan: string): MarkView | null =>
  now.marks.findLast((each) => panOf(each.mark) === pan && now.t - each.t <= ON_CARD_MS && canInsist(each, now)) ??
  null;

/** It is noted once more, for the same moment, by somebody who stands by it. */
export function insist(each: MarkView, now: Now, settings: Settings): void {
  const { mark, at } = each;
  const what = notedWords(each, now, settings);
  const again = { ...mark, id: `screen-${crypto.randomUUID()}`, happened: at, sure: true };
  void tell({ mark: again }, say('pans.noted', { what }));
}
