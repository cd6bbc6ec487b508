// States of a fold put by along a boil, packed, so that any moment is reached from one shortly before it.
import type { BoilState } from '../../core/boil/fold.ts';
import { packState, unpackState } from './packed-state.ts';

/** A state, and the place of the text that comes after it. */
export interface Keyframe {
  /** ms of boil time */
  t: number;
  next: number;
  state: BoilState;
}

interface Packed {
  t: number;
  next: number;
  bytes: Buffer;
}

/** From one to the next about so far, ms of boil time times pans: a minute of eight pans folds in a few hundredths of a second. */
const FIRST_EVERY_PAN_MS = 8 * 60_000;
const FIRST_EVERY_ENTRIES = 1000;
/** All of one replay together are no larger than this. 14 h of eight pans take 67 MB. */
export const MOST_BYTES = 72_000_000;

export class Keyframes {
  #all: Packed[] = [];
  #bytes = 0;
  #everyPanMs = FIRST_EVERY_PAN_MS;
  #everyEntries = FIRST_EVERY_ENTRIES;
  #mostBytes: number;

  constructor(mostBytes = MOST_BYTES) {
    this.#mostBytes = mostBytes;
  }

  /** What all of them take, bytes. */
  get bytes(): number {
    return this.#bytes;
  }

  /** Puts the state by where the last one lies far enough back. Call in order of t, never inside a gap. */
  offer(t: number, next: number, state: BoilState): void {
    const last = this.#all.at(-1);
    const pans = Math.max(1, Object.keys(state.pans).length);
    const isDue = (t - (last?.t ?? 0)) * pans >= this.#everyPanMs || next - (last?.next ?? 0) >= this.#everyEntries;
    if (!isDue) return;
    const bytes = packState(state);
    this.#all.push({ t, next, bytes });
    this.#bytes += bytes.length;
    this.limit(this.#mostBytes);
  }

  /** From now on they take no more than this, bytes: where they would, every second one goes. */
  limit(mostBytes: number): void {
    this.#mostBytes = mostBytes;
    while (this.#bytes > mostBytes && this.#all.length > 1) this.#thinOut();
  }

  /** The last at or before t, ms; null where the start is nearer. Each call gives a state of its own. */
  before(t: number): Keyframe | null {
    const found = this.#all.findLast((one) => one.t <= t);
    if (found === undefined) return null;
    return { t: found.t, next: found.next, state: unpackState(found.bytes) };
  }

  /** When the last at or before t was put by, ms; null where there is none. */
  timeBefore(t: number): number | null {
    return this.#all.findLast((one) => one.t <= t)?.t ?? null;
  }

  #thinOut(): void {
    this.#all = this.#all.filter((_, index) => index % 2 === 1);
    this.#bytes = this.#all.reduce((sum, { bytes }) => sum + bytes.length, 0);
    this.#everyPanMs *= 2;
    this.#everyEntries *= 2;
  }
}
