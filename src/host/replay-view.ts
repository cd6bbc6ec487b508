// A replay for the screen: a kept or opened boil played, paused and sought, in slices that never hold up a live boil.
import { startBoil } from '../core/boil/fold.ts';
import type { BoilState } from '../core/boil/fold.ts';
import { explain } from '../core/boil/explain.ts';
import { panAhead } from '../core/boil/readings.ts';
import type { Explained, Explanation } from '../core/boil/explanation.ts';
import { boilView } from '../core/boil/view.ts';
import type { Entry, Header } from '../core/boil/entries.ts';
import type { Curve, Now } from '../protocol/messages.ts';
import { parseEntry } from '../protocol/recording.ts';
import { BoilClock } from './clock.ts';
import type { MachineClock } from './clock.ts';
import { BUCKET_MS, CurveStore } from './curve.ts';
import { foldTools } from './fold-tools.ts';
import { Folding, gapStart } from './folding.ts';
import { SLICE_MS } from './slices.ts';

/** What can be replayed: entry texts in their order. */
export interface Replayable {
  boil: string;
  title: string;
  header: Header;
  texts: readonly string[];
}

const PLAY_EVERY_MS = 100;
const CHECKPOINT_EVERY_MS = 10 * 60_000;
const MOST_CHECKPOINTS = 200;
const START_SPEED = 60;
const ENTRIES_A_LOOK = 20;

interface Checkpoint {
  t: number;
  next: number;
  state: BoilState;
}

export class ReplayView {
  readonly #recording: Replayable;
  readonly #machine: MachineClock;
  readonly #changed: (urgent: boolean) => void;
  readonly #clock: BoilClock;
  readonly #curve = new CurveStore();
  readonly #lengthT: number;
  #folding: Folding;
  /** The entry that is applied next. */
  #next = 0;
  #ahead: Entry | null = null;
  /** Everything up to here has been shown. */
  #t = 0;
  #targetT = 0;
  #speed = START_SPEED;
  #isPlaying = true;
  #checkpoints: Checkpoint[] = [];
  #cancelWork: (() => void) | null = null;

  constructor(recording: Replayable, machine: MachineClock, changed: (urgent: boolean) => void) {
    this.#recording = recording;
    this.#machine = machine;
    this.#changed = changed;
    this.#clock = new BoilClock(machine, 0, START_SPEED);
    this.#folding = this.#foldingFrom(startBoil(recording.header));
    this.#lengthT = lastT(recording.texts);
    this.#loadAhead();
    this.#workIn(0);
  }

  play(isPlaying: boolean): void {
    if (isPlaying && this.#targetT >= this.#lengthT) this.seek(0);
    this.#clock.goTo(this.#targetT);
    this.#isPlaying = isPlaying;
    this.#workIn(0);
  }

  setSpeed(speed: number): void {
    this.#clock.setSpeed(speed);
    this.#speed = speed;
    this.#changed(true);
  }

  /** Shows boil time t, ms; going back starts from the last state that was put by before it. */
  seek(t: number): void {
    this.#targetT = Math.min(t, this.#lengthT);
    this.#clock.goTo(this.#targetT);
    if (this.#targetT < this.#t) this.#goBack();
    this.#workIn(0);
  }

  close(): void {
    this.#cancelWork?.();
    this.#isPlaying = false;
  }

  curveBetween(pan: string, from: number, to: number, points: number): Curve {
    const seen = this.#curve.between(pan, from, Math.min(to, this.#t), points);
    return { ...seen, ahead: panAhead(this.#folding.state, pan, this.#t) };
  }

  snapshot(): Omit<Now, 'kind' | 'view' | 'mode' | 'clock'> {
    const { state } = this.#folding;
    const { boil, title } = this.#recording;
    return {
      ...boilView(state, this.#t),
      boil,
      header: state.header,
      t: this.#t,
      speed: this.#speed,
      ended: state.ended,
      kept: null,
      replay: { playing: this.#isPlaying, length: this.#lengthT, title },
    };
  }

  /** What is behind a number at the moment that is shown; null where the pan is not there. */
  explain(pan: string | null, what: Explained): Explanation | null {
    return explain(this.#folding.state, pan, what, this.#t);
  }

  #foldingFrom(state: BoilState): Folding {
    const listener = { alarm: () => this.#changed(true), readings: () => {} };
    return new Folding(state, foldTools, listener, null);
  }

  #goBack(): void {
    const found = this.#checkpoints.findLast(({ t }) => t <= this.#targetT);
    const { header } = this.#recording;
    this.#folding = this.#foldingFrom(found === undefined ? startBoil(header) : structuredClone(found.state));
    this.#t = found?.t ?? 0;
    this.#next = found?.next ?? 0;
    this.#loadAhead();
  }

  #workIn(milliseconds: number): void {
    this.#cancelWork?.();
    this.#cancelWork = this.#machine.after(milliseconds, () => this.#work());
  }

  #work(): void {
    if (this.#isPlaying) this.#targetT = Math.max(this.#targetT, Math.min(this.#clock.now(), this.#lengthT));
    const isThere = this.#foldSlice();
    if (isThere && this.#targetT >= this.#lengthT) this.#isPlaying = false;
    this.#changed(false);
    if (!isThere) this.#workIn(0);
    else if (this.#isPlaying) this.#workIn(PLAY_EVERY_MS);
  }

  /** Goes on to the target for as long as one slice may take; true when it is reached. */
  #foldSlice(): boolean {
    const untilMs = this.#machine.monotonicMs() + SLICE_MS;
    for (let count = 1; this.#ahead !== null && this.#ahead.t <= this.#targetT; count += 1) {
      this.#applyAhead(this.#ahead);
      if (count % ENTRIES_A_LOOK === 0 && this.#machine.monotonicMs() >= untilMs) return false;
    }
    const inGap = this.#ahead !== null && 'seconds' in this.#ahead && gapStart(this.#ahead) < this.#targetT;
    if (inGap && this.#ahead !== null) this.#folding.enterGapOf(this.#ahead);
    this.#folding.reach(this.#targetT);
    this.#t = this.#targetT;
    return true;
  }

  #applyAhead(entry: Entry): void {
    this.#folding.take(entry, '');
    this.#t = entry.t;
    this.#next += 1;
    this.#loadAhead();
    this.#curve.sample(this.#folding.state, entry.t, BUCKET_MS);
    this.#putBy();
  }

  #loadAhead(): void {
    this.#ahead = null;
    for (; this.#ahead === null && this.#next < this.#recording.texts.length;) {
      const parsed = parseEntry(this.#recording.texts[this.#next] ?? '');
      if (parsed.ok) this.#ahead = parsed.entry;
      else this.#next += 1;
    }
  }

  #putBy(): void {
    const last = this.#checkpoints.at(-1);
    if (this.#t < (last?.t ?? 0) + CHECKPOINT_EVERY_MS || this.#checkpoints.length >= MOST_CHECKPOINTS) return;
    this.#checkpoints.push({ t: this.#t, next: this.#next, state: structuredClone(this.#folding.state) });
  }
}

/** Boil time of the last entry, ms. */
function lastT(texts: readonly string[]): number {
  const parsed = parseEntry(texts.at(-1) ?? '');
  return parsed.ok ? parsed.entry.t : 0;
}
