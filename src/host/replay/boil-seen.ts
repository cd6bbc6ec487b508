// What is seen while a whole boil is folded: looks at its pans, its calls, its gaps, and when each pan was finished.
import type { Entry } from '../../core/boil/entries.ts';
import type { BoilState } from '../../core/boil/fold.ts';
import { panLimits } from '../../core/boil/view.ts';
import { Calls } from '../../core/compare/calls.ts';
import type { Finished } from '../../core/compare/finishes.ts';
import { finishesOf } from '../../core/compare/finishes.ts';
import type { PanReading } from '../../core/pan/reading.ts';
import { panTruths } from '../../core/tuning/truth.ts';
import { gapStart } from '../folding.ts';
import { LOOK_MS, Looks } from './looks.ts';

export class BoilSeen {
  readonly looks = new Looks();
  readonly calls = new Calls();
  /** While the program did not run, ms. */
  readonly gaps: { from: number; to: number }[] = [];

  /** At every whole LOOK_MS. */
  look(t: number, readings: readonly PanReading[], state: BoilState): void {
    this.looks.take(t, readings, (pan) => panLimits(state, pan).finish_c);
  }

  /** After it has been folded. */
  note(entry: Entry): void {
    if ('called' in entry) this.calls.takeCalled(entry.t, entry.called);
    if ('run' in entry && entry.run === 'gap') this.gaps.push({ from: gapStart(entry), to: entry.t });
  }

  /** What instruments tell is known only at the boil's end, when `isWhole`. */
  finishes(state: BoilState, isWhole: boolean): Finished[] {
    const called = this.calls.all.filter(({ alarm }) => alarm === 'finish');
    const truths = isWhole ? panTruths(state, this.looks.strengths()) : [];
    return finishesOf(state, called, truths, (pan, t) => this.looks.at(pan, 'brix', Math.floor(t / LOOK_MS)));
  }
}
