// The one clock: what this machine's clocks say, and boil time made from them, which never steps back.
import { performance } from 'node:perf_hooks';
import { uptime } from 'node:os';
import type { Timekeeper } from '../ingest/source.ts';

/** This machine's clocks and timers; a test hands in its own. */
export interface MachineClock {
  /** Milliseconds since 1970: what the clock on the wall says. It may be stepped. */
  wallMs(): number;
  /** Milliseconds since some moment; runs on through sleep and is never stepped. */
  monotonicMs(): number;
  /** Calls back once, after so many milliseconds; returns the way to call it off. */
  after(milliseconds: number, call: () => void): () => void;
}

/** The monotonic clock of some systems stands still while the machine sleeps; a difference this great to its uptime was sleep. */
const SHORTEST_SLEEP_MS = 2000;
/** The system is asked for its uptime so often at most, ms of running time: asking takes longer than reading a line. */
const UPTIME_EVERY_MS = 50;

/**
 * A monotonic clock that counts sleep: `steadyMs` for the running time, `uptimeMs` (coarse) for what it slept through,
 * which it knows within 50 ms of running time.
 */
export function sleepCountingClock(steadyMs: () => number, uptimeMs: () => number): () => number {
  let offsetMs = uptimeMs() - steadyMs();
  let sleptMs = 0;
  let askedMs = Number.NEGATIVE_INFINITY;
  return () => {
    const steady = steadyMs();
    if (steady - askedMs < UPTIME_EVERY_MS) return steady + sleptMs;
    askedMs = steady;
    const moreMs = uptimeMs() - steady - offsetMs;
    if (moreMs >= SHORTEST_SLEEP_MS) {
      sleptMs += moreMs;
      offsetMs += moreMs;
    }
    return steady + sleptMs;
  };
}

/** The clocks of this machine. */
export function systemClock(): MachineClock {
  return {
    wallMs: () => Date.now(),
    monotonicMs: sleepCountingClock(
      () => performance.now(),
      () => uptime() * 1000,
    ),
    after(milliseconds, call) {
      const timer = setTimeout(call, milliseconds);
      return () => clearTimeout(timer);
    },
  };
}

/** Boil time: whole milliseconds from a given start, at a given speed, whatever the wall clock does meanwhile. */
export class BoilClock implements Timekeeper {
  readonly #machine: MachineClock;
  #fromT: number;
  #fromMs: number;
  #speed: number;

  /** `startT` is the boil time now, ms; `speed` is boil time over real time. */
  constructor(machine: MachineClock, startT: number, speed = 1) {
    this.#machine = machine;
    this.#fromT = startT;
    this.#fromMs = machine.monotonicMs();
    this.#speed = speed;
  }

  now(): number {
    const passedMs = Math.max(0, this.#machine.monotonicMs() - this.#fromMs);
    return Math.floor(this.#fromT + passedMs * this.#speed);
  }

  after(milliseconds: number, call: () => void): () => void {
    return this.#machine.after(milliseconds, call);
  }

  get speed(): number {
    return this.#speed;
  }

  /** Changes how fast boil time runs from now on. */
  setSpeed(speed: number): void {
    this.goTo(this.now());
    this.#speed = speed;
  }

  /** Sets boil time; a live boil's is never set. */
  goTo(t: number): void {
    this.#fromMs = this.#machine.monotonicMs();
    this.#fromT = t;
  }
}

/** Boil time at which a boil goes on after a restart: its last kept t, or the wall clock's distance from its start if greater. */
export function resumedT(lastKeptT: number, started: string, wallMs: number): number {
  const distanceMs = Math.floor(wallMs - Date.parse(started));
  return Number.isFinite(distanceMs) ? Math.max(lastKeptT, distanceMs) : lastKeptT;
}

/** The moment as ISO 8601 with this machine's offset from UTC, to the second. */
export function isoWithOffset(wallMs: number): string {
  const moment = new Date(Math.floor(wallMs / 1000) * 1000);
  const offsetMinutes = -moment.getTimezoneOffset();
  const local = new Date(moment.getTime() + offsetMinutes * 60_000).toISOString().slice(0, 19);
  const absolute = Math.abs(offsetMinutes);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${local}${offsetMinutes < 0 ? '-' : '+'}${two(Math.floor(absolute / 60))}:${two(absolute % 60)}`;
}
