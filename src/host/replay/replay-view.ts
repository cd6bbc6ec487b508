// A replay for the screen: a kept or opened boil played, paused, stepped and sought, in slices that never hold up a live boil.
import { startBoil } from '../../core/boil/fold.ts';
import type { BoilState } from '../../core/boil/fold.ts';
import { explain } from '../../core/boil/explain.ts';
import { panAhead } from '../../core/boil/readings.ts';
import type { Explained, Explanation } from '../../core/boil/explanation.ts';
import { boilView } from '../../core/boil/view.ts';
import type { Entry, Header } from '../../core/boil/entries.ts';
import type { Curve, Now } from '../../protocol/messages.ts';
import { parseEntry } from '../../protocol/recording.ts';
import type { PanKnown, ReplayDifferences, ReplayStrip } from '../../protocol/replay-messages.ts';
import { BoilClock } from '../clock.ts';
import type { MachineClock } from '../clock.ts';
import { foldTools } from '../fold-tools.ts';
import { Folding, gapStart } from '../folding.ts';
import { SLICE_MS } from '../slices.ts';
import { MOST_BYTES } from './keyframes.ts';
import { differencesOf, stripOf } from './strip.ts';
import { type Replayable, WholeBoil } from './whole-boil.ts';

const PLAY_EVERY_MS = 100;
/** So often it is looked whether the boil is read as far as somebody wants to be. */
const WAIT_MS = 10;
const START_SPEED = 60;
const ENTRIES_A_LOOK = 20;
/** Further than this on, the way from a keyframe is shorter, ms. */
const SHORT_WAY_MS = 60_000;

export class ReplayView {
  readonly #recording: Replayable;
  readonly #machine: MachineClock;
  readonly #changed: (urgent: boolean) => void;
  readonly #clock: BoilClock;
  readonly #asItWas: WholeBoil;
  /** Other choices over the header, and the boil read with them. */
  #other: { patch: Record<string, unknown>; whole: WholeBoil } | null = null;
  #folding: Folding;
  /** The entry that is applied next. */
  #next = 0;
  #ahead: Entry | null = null;
  /** Everything up to here has been shown. */
  #t = 0;
  #targetT = 0;
  #speed = START_SPEED;
  #isPlaying = true;
  /** What is shown was not folded with the choices that hold now. */
  #isOutdated = false;
  #cancelWork: (() => void) | null = null;

  /** Plays from the start; with `at` (ms of boil time) it is paused there. */
  constructor(recording: Replayable, machine: MachineClock, changed: (urgent: boolean) => void, at?: number) {
    this.#recording = recording;
    this.#machine = machine;
    this.#changed = changed;
    this.#clock = new BoilClock(machine, 0, START_SPEED);
    this.#asItWas = this.#read(recording.header);
    this.#folding = this.#foldingFrom(startBoil(recording.header));
    this.#loadAhead();
    if (at === undefined) this.#workIn(0);
    else {
      this.#isPlaying = false;
      this.seek(at);
    }
  }

  play(isPlaying: boolean): void {
    if (isPlaying && this.#targetT >= this.#whole.length) this.seek(0);
    this.#clock.goTo(this.#targetT);
    this.#isPlaying = isPlaying;
    this.#workIn(0);
  }

  setSpeed(speed: number): void {
    this.#clock.setSpeed(speed);
    this.#speed = speed;
    this.#changed(true);
  }

  /** Shows boil time t, ms, from the keyframe before it; beyond what is read yet, as soon as it is. */
  seek(t: number): void {
    this.#targetT = Math.min(t, this.#whole.length);
    this.#clock.goTo(this.#targetT);
    this.#workIn(0);
  }

  /** So many ms on or back, within the boil, from the moment that was asked for last. */
  seekBy(ms: number): void {
    this.seek(Math.max(0, this.#targetT + ms));
  }

  /** To the next or previous mark or raising, where it pauses; false where none is known there. */
  step(forward: boolean, to: 'mark' | 'alarm' | 'either'): boolean {
    const whole = this.#whole;
    const marks = to === 'alarm' ? [] : whole.marks.map(({ t }) => t);
    const calls = to === 'mark' ? [] : whole.calls.map(({ raised }) => raised);
    const times = [...marks, ...calls].filter((t) => (forward ? t > this.#targetT : t < this.#targetT));
    if (times.length === 0) return false;
    this.#isPlaying = false;
    this.seek(times.reduce((best, t) => (forward ? Math.min(best, t) : Math.max(best, t))));
    return true;
  }

  /** The moment that somebody wants to see is shown. */
  get isThere(): boolean {
    return this.#t === this.#targetT && !this.#isOutdated;
  }

  /** What is put by to seek from, bytes. */
  get keptBytes(): number {
    return this.#asItWas.keyframes.bytes + (this.#other?.whole.keyframes.bytes ?? 0);
  }

  get headerAsItWas(): Header {
    return this.#recording.header;
  }

  /** Shows the boil under another header, made with this patch; null shows it as it was. */
  lay(other: { patch: Record<string, unknown>; header: Header } | null): void {
    this.#other?.whole.close();
    this.#other = other === null ? null : { patch: other.patch, whole: this.#read(other.header) };
    for (const whole of [this.#asItWas, this.#other?.whole])
      whole?.keyframes.limit(this.#other === null ? MOST_BYTES : MOST_BYTES / 2);
    this.#isOutdated = true;
    this.#workIn(0);
  }

  close(): void {
    this.#cancelWork?.();
    this.#isPlaying = false;
    this.#asItWas.close();
    this.#other?.whole.close();
  }

  curveBetween(pan: string, from: number, to: number, points: number): Curve {
    const seen = this.#whole.curve.between(pan, from, Math.min(to, this.#t), points);
    const { state } = this.#folding;
    // Of a boil that was ended nothing is to come.
    return { ...seen, ahead: state.ended ? null : panAhead(state, pan, this.#t) };
  }

  strip(points: number): ReplayStrip {
    return stripOf(this.#whole, points);
  }

  known(t: number): PanKnown[] {
    return this.#whole.known(t);
  }

  /** null while no other choices are laid over it. */
  differences(points: number): ReplayDifferences | null {
    return this.#other === null ? null : differencesOf(this.#asItWas, this.#other.whole, points);
  }

  snapshot(): Omit<Now, 'kind' | 'view' | 'mode' | 'clock'> {
    const { state } = this.#folding;
    const { boil, title, header } = this.#recording;
    const whole = this.#whole;
    return {
      ...boilView(state, this.#t),
      boil,
      header: state.header,
      t: this.#t,
      speed: this.#speed,
      ended: state.ended,
      endedAt: null,
      kept: null,
      replay: {
        playing: this.#isPlaying,
        length: whole.length,
        title,
        started: header.started,
        readUntil: whole.readUntil,
        choices: this.#other?.patch ?? null,
        known: whole.known(this.#t),
      },
    };
  }

  /** What is behind a number at the moment that is shown; null where the pan is not there. */
  explain(pan: string | null, what: Explained): Explanation | null {
    return explain(this.#folding.state, pan, what, this.#t);
  }

  /** The boil as it is shown. */
  get #whole(): WholeBoil {
    return this.#other?.whole ?? this.#asItWas;
  }

  #read(header: Header): WholeBoil {
    return new WholeBoil(this.#recording, header, this.#machine, () => this.#changed(false));
  }

  #foldingFrom(state: BoilState): Folding {
    const listener = { alarm: () => this.#changed(true), readings: () => {} };
    return new Folding(state, foldTools, listener, null);
  }

  #workIn(milliseconds: number): void {
    this.#cancelWork?.();
    this.#cancelWork = this.#machine.after(milliseconds, () => this.#work());
  }

  #work(): void {
    const { length } = this.#whole;
    if (this.#isPlaying) this.#targetT = Math.max(this.#targetT, Math.min(this.#clock.now(), length));
    if (!this.#jumpNearer()) return this.#workIn(WAIT_MS);
    const isThere = this.#foldSlice();
    if (isThere && this.#targetT >= length) this.#isPlaying = false;
    this.#changed(false);
    if (!isThere) this.#workIn(0);
    else if (this.#isPlaying) this.#workIn(PLAY_EVERY_MS);
  }

  /** Takes the keyframe before the target where that is the shorter way; false where it is not read so far yet. */
  #jumpNearer(): boolean {
    const isBack = this.#targetT < this.#t;
    if (!isBack && !this.#isOutdated && this.#targetT - this.#t <= SHORT_WAY_MS) return true;
    const { keyframes, readUntil, isWhole, header } = this.#whole;
    if (!isWhole && readUntil < this.#targetT) return false;
    const isNearer = (keyframes.timeBefore(this.#targetT) ?? 0) > this.#t;
    if (!isBack && !this.#isOutdated && !isNearer) return true;
    const found = keyframes.before(this.#targetT);
    this.#folding = this.#foldingFrom(found?.state ?? startBoil(header));
    this.#t = found?.t ?? 0;
    this.#next = found?.next ?? 0;
    this.#isOutdated = false;
    this.#loadAhead();
    return true;
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
  }

  #loadAhead(): void {
    this.#ahead = null;
    for (; this.#ahead === null && this.#next < this.#recording.texts.length;) {
      const parsed = parseEntry(this.#recording.texts[this.#next] ?? '');
      if (parsed.ok) this.#ahead = parsed.entry;
      else this.#next += 1;
    }
  }
}
