// Whether what is poured into a pan fills it or tops it up, so that form, list, chart and paper have one word for it.
import type { Mark } from '../core/boil/entries.ts';
import { counts, empties, poursInto } from '../core/boil/mark-flow.ts';
import type { BoilView } from '../core/boil/view.ts';

type Noted = Pick<BoilView['marks'][number], 'mark' | 't' | 'at' | 'withdrawn' | 'questioned'>;

/** 'in' where a mark puts something into the pan or tells that something is in it, 'out' where it empties it, else null. */
function turn(mark: Mark, pan: string): 'in' | 'out' | null {
  if (poursInto(mark, pan) || (mark.kind === 'depth' && mark.pan === pan)) return 'in';
  return empties(mark, pan) ? 'out' : null;
}

const isBefore = (one: { at: number; t: number }, moment: { at: number; t: number }): boolean =>
  one.at < moment.at || (one.at === moment.at && one.t < moment.t);

/**
 * True where nothing that stands among the marks was in the pan at a moment: nothing was put in before, or all of it went
 * out again. `at` is when it happened and `t` when it was noted, ms of boil time.
 */
export function isEmptyAt(pan: string, moment: { at: number; t: number }, marks: readonly Noted[]): boolean {
  let last: { at: number; t: number; turned: 'in' | 'out' } | null = null;
  for (const { mark, at, t } of marks.filter(counts)) {
    const turned = turn(mark, pan);
    if (turned === null || !isBefore({ at, t }, moment)) continue;
    if (last === null || !isBefore({ at, t }, last)) last = { at, t, turned };
  }
  return last?.turned !== 'in';
}

/** Whether this mark is a pour into an empty pan. */
export const isFirstPour = ({ mark, at, t }: Pick<Noted, 'mark' | 'at' | 't'>, marks: readonly Noted[]): boolean =>
  mark.kind === 'top-up' && isEmptyAt(mark.pan, { at, t }, marks);
