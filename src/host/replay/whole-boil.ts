// Reads a whole boil in the background, in slices: keyframes to seek by, and what its strip, its curve and its steps show.
import { startBoil } from '../../core/boil/fold.ts';
import type { BoilState } from '../../core/boil/fold.ts';
import type { Header } from '../../core/boil/entries.ts';
import type { Call } from '../../core/compare/calls.ts';
import type { Finished } from '../../core/compare/finishes.ts';
import type { PanReading } from '../../core/pan/reading.ts';
import { parseEntry } from '../../protocol/recording.ts';
import type { PanKnown } from '../../protocol/replay-messages.ts';
import type { MachineClock } from '../clock.ts';
import { CurveStore } from '../curve.ts';
import { type FoldStep, foldSteps } from '../fold-steps.ts';
import { foldTools } from '../fold-tools.ts';
import { Folding } from '../folding.ts';
import { SLICE_MS } from '../slices.ts';
import { BoilSeen } from './boil-seen.ts';
import { Keyframes } from './keyframes.ts';
import { knownAt } from './known.ts';
import { LOOK_MS, type Looks } from './looks.ts';

/** What can be replayed: entry texts in their order. */
export interface Replayable {
  boil: string;
  title: string;
  header: Header;
  texts: readonly string[];
}

/** So often it is told how far it is read, ms. */
const TELL_EVERY_MS = 250;

export class WholeBoil {
  readonly header: Header;
  readonly keyframes = new Keyframes();
  readonly curve = new CurveStore();
  /** Boil time of the last entry, ms. */
  readonly length: number;
  readonly #seen = new BoilSeen();
  readonly #machine: MachineClock;
  readonly #folding: Folding;
  readonly #steps: Iterator<FoldStep>;
  readonly #changed: () => void;
  #finishes: Finished[] = [];
  #readUntil = 0;
  #isWhole = false;
  #toldMs: number;
  #cancelWork: () => void;

  /** `header` is the recording's own, or that with other choices. `changed` is called after each slice. */
  constructor(recording: Replayable, header: Header, machine: MachineClock, changed: () => void) {
    this.header = header;
    this.length = lastT(recording.texts);
    this.#machine = machine;
    this.#changed = changed;
    this.#folding = new Folding(
      startBoil(header),
      foldTools,
      {
        alarm: (transition) => this.#seen.calls.take(transition),
        readings: (t, readings) => this.#look(t, readings),
      },
      LOOK_MS,
    );
    this.#steps = foldSteps(recording.texts, this.#folding);
    this.#toldMs = machine.monotonicMs();
    this.#cancelWork = machine.after(0, () => this.#readOn());
  }

  /** Everything up to here is known, ms. */
  get readUntil(): number {
    return this.#readUntil;
  }

  get isWhole(): boolean {
    return this.#isWhole;
  }

  get calls(): readonly Call[] {
    return this.#seen.calls.all;
  }

  get looks(): Looks {
    return this.#seen.looks;
  }

  /** While the program did not run, ms. */
  get gaps(): BoilSeen['gaps'] {
    return this.#seen.gaps;
  }

  get finishes(): readonly Finished[] {
    return this.#finishes;
  }

  get marks(): BoilState['marks'] {
    return this.#folding.state.marks.filter(({ withdrawn }) => !withdrawn);
  }

  /** What was known of each pan at t (ms), and what came later. */
  known(t: number): PanKnown[] {
    return knownAt(this.looks, this.#finishes, t);
  }

  close(): void {
    this.#cancelWork();
  }

  #readOn(): void {
    const untilMs = this.#machine.monotonicMs() + SLICE_MS;
    for (;;) {
      const step = this.#steps.next();
      if (step.done === true) return this.#readAll();
      this.#take(step.value);
      if (this.#machine.monotonicMs() >= untilMs) break;
    }
    this.#tellNow(false);
    this.#cancelWork = this.#machine.after(0, () => this.#readOn());
  }

  #readAll(): void {
    this.#readUntil = this.length;
    this.#isWhole = true;
    this.#tellNow(true);
  }

  #tellNow(atOnce: boolean): void {
    const now = this.#machine.monotonicMs();
    if (!atOnce && now - this.#toldMs < TELL_EVERY_MS) return;
    this.#toldMs = now;
    this.#finishes = this.#seen.finishes(this.#folding.state, this.#isWhole);
    this.#changed();
  }

  #take({ t, next, entry, inGap }: FoldStep): void {
    this.#readUntil = t;
    if (!inGap) this.keyframes.offer(t, next, this.#folding.state);
    if (entry !== null) this.#seen.note(entry);
  }

  #look(t: number, readings: PanReading[]): void {
    const { state } = this.#folding;
    this.#seen.look(t, readings, state);
    this.curve.take(state, t, readings);
  }
}

/** Boil time of the last entry, ms. */
function lastT(texts: readonly string[]): number {
  for (let index = texts.length - 1; index >= 0; index -= 1) {
    const parsed = parseEntry(texts[index]!);
    if (parsed.ok) return parsed.entry.t;
  }
  return 0;
}
