// Runs entries through the fold and says, in order of t, what it calls and what it reads: the one way for replay and live alike.
import type { AlarmTransition } from '../core/alarms/alarm.ts';
import type { Entry } from '../core/boil/entries.ts';
import { advance, applyEntry, enterGap, panReadings } from '../core/boil/fold.ts';
import type { BoilState } from '../core/boil/fold.ts';
import type { FoldTools } from '../core/boil/line-reading.ts';
import type { PanReading } from '../core/pan/reading.ts';

export interface FoldingListener {
  /** A change of an alarm; those made before an entry's t come before `took` is told of the entry, the others after it. */
  alarm(transition: AlarmTransition): void;
  /** The readings at a whole multiple of the interval, after all entries up to that t. */
  readings?(t: number, readings: PanReading[]): void;
  /** The state at the same moments, for who wants less than whole readings; it goes on behind this call. */
  reached?(t: number, state: BoilState): void;
  /** The entry has its place here in the order of the record. */
  took?(entry: Entry, text: string): void;
}

export class Folding {
  #state: BoilState;
  readonly #tools: FoldTools;
  readonly #listener: FoldingListener;
  readonly #everyMs: number;
  /** The next multiple of the interval that is due; infinite when no readings are asked for. */
  #nextT: number;
  /** While a gap is passed, time is not run: what falls due in it would depend on the interval. */
  #isInGap = false;

  /** `everyMs` is the interval of readings in ms of boil time, or null for none; `fromT` is where they start. */
  constructor(state: BoilState, tools: FoldTools, listener: FoldingListener, everyMs: number | null, fromT = 0) {
    this.#state = state;
    this.#tools = tools;
    this.#listener = listener;
    this.#everyMs = everyMs ?? 0;
    this.#nextT = everyMs === null ? Number.POSITIVE_INFINITY : Math.ceil(fromT / everyMs) * everyMs;
  }

  get state(): BoilState {
    return this.#state;
  }

  /** Applies an entry whose t is not less than any before it; `text` is how it stands in the record. */
  take(entry: Entry, text: string): void {
    this.enterGapOf(entry);
    this.#readingsBefore(entry.t);
    this.#isInGap = false;
    this.#state = applyEntry(this.#state, entry, this.#tools);
    const fresh = this.#state.fresh;
    for (const transition of fresh) if (transition.t < entry.t) this.#listener.alarm(transition);
    this.#listener.took?.(entry, text);
    for (const transition of fresh) if (transition.t >= entry.t) this.#listener.alarm(transition);
  }

  /** When the entry is a gap: what came before it is done, and from there on to its t nothing is known. */
  enterGapOf(entry: Entry): void {
    if (this.#isInGap || !('run' in entry) || entry.run !== 'gap') return;
    const fromT = gapStart(entry);
    this.#readingsBefore(fromT + 1);
    this.#state = enterGap(this.#state, fromT);
    this.#isInGap = true;
    for (const transition of this.#state.fresh) this.#listener.alarm(transition);
  }

  /** Time has reached t; the caller promises that no later entry has its t at or before it. */
  reach(t: number): void {
    this.#readingsBefore(t + 1);
    if (!this.#isInGap) this.#advance(t);
  }

  #readingsBefore(t: number): void {
    while (this.#nextT < t && !this.#state.ended) {
      if (!this.#isInGap) this.#advance(this.#nextT);
      this.#listener.readings?.(this.#nextT, panReadings(this.#state, this.#nextT));
      this.#listener.reached?.(this.#nextT, this.#state);
      this.#nextT += this.#everyMs;
    }
  }

  #advance(t: number): void {
    this.#state = advance(this.#state, t);
    for (const transition of this.#state.fresh) this.#listener.alarm(transition);
  }
}

/** Boil time, ms, from which on nothing is known. */
export function gapStart(gap: { t: number; seconds: number }): number {
  return Math.max(0, gap.t - Math.round(gap.seconds * 1000));
}
