// What can hardly be meant: such a mark is kept, acts on nothing and is asked about, and counts when it is said again.
import type { BoilState, KeptMark } from './state.ts';

/** The same wild reading again within this is meant, ms, if the two agree to this, °Bx or °C. */
const AGAIN_WITHIN_MS = 20 * 60_000;
const AGAIN_ALIKE = 1.5;

/** Keeps a mark from acting, and asks about it at t (ms). */
export function question(state: BoilState, kept: KeptMark, t: number, sentence: string): void {
  kept.withdrawn = true;
  kept.questioned = true;
  state.notices.push({ t, sentence });
}

/** Somebody who was questioned and says the same again means it; `apart` is how far two marks are from saying the same. */
export function saidAgain(state: BoilState, kept: KeptMark, apart: (other: KeptMark) => number): boolean {
  return state.marks.some(
    (one) =>
      one !== kept &&
      one.questioned &&
      Math.abs(kept.at - one.at) <= AGAIN_WITHIN_MS &&
      Math.abs(apart(one)) <= AGAIN_ALIKE,
  );
}
