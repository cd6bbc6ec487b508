// What the list of notes says of a note that was corrected, and of the one that stands in its place.
import type { MarkView, Now, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { timeOfDay } from '../words/clock.ts';
import { markWithin, markWords, notedWords, panOfMark } from '../words/mark-words.ts';

/** The note that this one stands in place of; null for one that corrects none. */
const formerOf = ({ mark: { corrects } }: MarkView, now: Now): MarkView | null =>
  corrects === undefined ? null : (now.marks.find(({ mark }) => mark.id === corrects) ?? null);

/** The note that stands in place of this one, which was taken back for it; null for one that nobody corrected. */
const laterOf = ({ mark: { id }, withdrawn }: MarkView, now: Now): MarkView | null =>
  id === undefined || !withdrawn ? null : (now.marks.findLast(({ mark }) => mark.corrects === id) ?? null);

const isSame = (one: MarkView, other: MarkView, now: Now, settings: Settings): boolean =>
  one.at === other.at && markWords(one.mark, now.header, settings) === markWords(other.mark, now.header, settings);

/** Whether a note stands again as it was, word for word, in another one: then there is nothing to tell of it. */
export function standsAgain(each: MarkView, now: Now, settings: Settings): boolean {
  const later = laterOf(each, now);
  return later !== null && isSame(each, later, now, settings);
}

/** "corrected 10:42" of a note that another one took the place of; null for any other. */
export function correctedAtWords(each: MarkView, now: Now): string | null {
  const later = laterOf(each, now);
  return later === null ? null : say('marks.corrected_at', { time: timeOfDay(now, later.t) });
}

/** "corrected 10:42, was: Top-up 3.0 L" of a note that took another's place; null for any other. */
export function correctedWasWords(each: MarkView, now: Now, settings: Settings): string | null {
  const former = formerOf(each, now);
  if (former === null || isSame(former, each, now, settings)) return null;
  const isOfPan = panOfMark(former.mark) === panOfMark(each.mark);
  const was = (isOfPan ? markWithin : notedWords)(former, now, settings);
  const moved = former.at === each.at ? was : say('marks.was_at', { what: was, time: timeOfDay(now, former.at) });
  return say('marks.corrected_was', { time: timeOfDay(now, each.t), was: moved });
}
