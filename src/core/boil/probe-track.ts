// One probe's channel over time: its period, its last value, and whether it is late, lost or broken.
import type { ProbeState } from '../pan/reading.ts';
import { median } from '../pan/robust-statistics.ts';
import { lagOf, noteRecent, type Recent, startRecent } from '../probes/recent.ts';
import type { BrokenBy } from './broken-probe.ts';
import type { Swap } from './probe-doubts.ts';
import { type ProbeDoubt, type ProbeSigns, startProbeSigns } from './probe-signs.ts';
import type { Misfit } from './probe-value.ts';
import { type Beside, startBeside } from './tip-levels.ts';

export interface ProbeTrack {
  port: string;
  /** Last time the channel was named in a line, with a value or as broken, ms; null for never. */
  heardAt: number | null;
  /** Since when it has been waited for: start, port opened, end of a gap, ms. */
  awaitedFrom: number;
  celsius: number | null;
  /** It is broken, since, ms, and by what that is known. */
  brokenSince: number | null;
  brokenBy: BrokenBy | null;
  /** Numbers in a row that no pan can have. */
  impossible: number;
  /** The last few intervals between lines, ms. */
  intervals: number[];
  periodMs: number | null;
  /** What was already said of numbers that do not fit its sensor. */
  said: Misfit[];
  signs: ProbeSigns;
  /** Why what it says cannot be true; null while it may be. */
  doubt: ProbeDoubt | null;
  /** With whom it was swapped, and when it last was, ms; null and -1 for never. */
  swap: Swap | null;
  swappedAt: number;
  /** Its last minutes, as it said them. */
  recent: Recent;
  /** How slowly it follows, s, by the last dip; null while none was seen. */
  lagS: number | null;
  /** How often it was lost and came back, and for how long in all, ms. */
  losses: number;
  lostMs: number;
  /** How it stands to the other tips of its pan. */
  beside: Beside;
}

/** A probe that was not heard yet. */
export function startProbe(port: string, t: number): ProbeTrack {
  return {
    port,
    heardAt: null,
    awaitedFrom: t,
    celsius: null,
    brokenSince: null,
    brokenBy: null,
    impossible: 0,
    intervals: [],
    periodMs: null,
    said: [],
    signs: startProbeSigns(),
    doubt: null,
    swap: null,
    swappedAt: -1,
    recent: startRecent(),
    lagS: null,
    losses: 0,
    lostMs: 0,
    beside: startBeside(),
  };
}

/** The same probe once nothing was known for a while: waited for anew from t (ms), at the pace that it had. */
export function afterGap(probe: ProbeTrack, t: number): ProbeTrack {
  const { port, celsius, periodMs, intervals, said, swap, lagS, losses, lostMs, beside } = probe;
  return { ...startProbe(port, t), celsius, periodMs, intervals, said, swap, lagS, losses, lostMs, beside };
}

/** Late at two periods, lost at five (fault table). */
const LATE_PERIODS = 2;
export const LOST_PERIODS = 5;
/** Before a board's first line, and after one line, a slow board's period is taken, ms. */
const NEVER_HEARD_PERIOD_MS = 6000;
const HEARD_ONCE_PERIOD_MS = 3000;
/** Lines that come faster than this came in a burst after a stall and tell nothing of the period, ms. */
const BURST_MS = 50;
/** Faster boards are judged as if they spoke twice a second, ms: a stalled bus for half a second is no loss. */
const LEAST_PERIOD_MS = 500;
const INTERVALS = 9;
/** The first number of a digital sensor after power-on (trade.md, known bad values), °C. */
const POWER_ON_C = 85;

/**
 * A line named this channel at t (ms), with °C or with why there are none; null: the board says so. Gives the value to be used, or null.
 * 85.000 as the first number after the board was plugged in is a power-on value, not a temperature.
 */
export function probeHears(probe: ProbeTrack, t: number, heard: number | BrokenBy | null): number | null {
  const first = probe.heardAt === null || probe.heardAt < probe.awaitedFrom;
  noteLoss(probe, t);
  noteInterval(probe, t);
  probe.heardAt = t;
  const broken: BrokenBy | null =
    typeof heard !== 'number' ? (heard ?? { by: 'board' }) : first && heard === POWER_ON_C ? { by: 'power-on' } : null;
  probe.brokenBy = broken;
  if (typeof heard !== 'number' || broken !== null) {
    probe.brokenSince ??= t;
    return null;
  }
  probe.brokenSince = null;
  probe.impossible = 0;
  probe.celsius = heard;
  noteRecent(probe.recent, t, heard);
  probe.lagS = lagOf(probe.recent) ?? probe.lagS;
  return heard;
}

/** It was lost, and speaks again. */
function noteLoss(probe: ProbeTrack, t: number): void {
  if (probe.heardAt === null || t < lostAt(probe)) return;
  probe.losses += 1;
  probe.lostMs += t - probe.heardAt;
}

/** So many in a row are no glitch of the bus but what the probe says now. */
const IMPOSSIBLE_IN_A_ROW = 2;

/** A number came that no pan can have. True once that is no glitch: then it means that the probe is broken. */
export function probeSendsImpossible(probe: ProbeTrack): boolean {
  probe.impossible += 1;
  return probe.impossible >= IMPOSSIBLE_IN_A_ROW;
}

function noteInterval(probe: ProbeTrack, t: number): void {
  if (probe.heardAt === null) return;
  const interval = t - probe.heardAt;
  if (interval < BURST_MS || (probe.periodMs !== null && interval > 20 * probe.periodMs)) return;
  const { intervals } = probe;
  intervals.push(interval);
  // A steady board: what comes is what goes, and the middle stays.
  if (intervals.length > INTERVALS && intervals.shift() === interval) return;
  probe.periodMs = median(intervals);
}

/**
 * How often it speaks, ms: as learnt from its lines, else what is supposed until it was heard twice; 500 at the
 * least.
 */
export function periodMs(probe: ProbeTrack): number {
  return Math.max(
    LEAST_PERIOD_MS,
    probe.periodMs ?? (probe.heardAt === null ? NEVER_HEARD_PERIOD_MS : HEARD_ONCE_PERIOD_MS),
  );
}

/** The moment at which it will count as lost if nothing comes, ms. */
export function lostAt(probe: ProbeTrack): number {
  return Math.ceil(Math.max(probe.heardAt ?? 0, probe.awaitedFrom) + LOST_PERIODS * periodMs(probe));
}

/** Whether it is heard at t (ms), whatever is thought of its numbers. */
export function heardState(probe: ProbeTrack, t: number): 'ok' | 'late' | 'lost' | 'broken' {
  if (t >= lostAt(probe)) return 'lost';
  if (probe.brokenSince !== null) return 'broken';
  if (probe.heardAt === null || probe.heardAt < probe.awaitedFrom) return 'late';
  return t - probe.heardAt >= LATE_PERIODS * periodMs(probe) ? 'late' : 'ok';
}

/**
 * Its state at t, ms: by when it was heard last, and where it speaks in time, by whether its numbers can be believed.
 */
export function probeState(probe: ProbeTrack, t: number): ProbeState {
  const heard = heardState(probe, t);
  return heard === 'ok' ? (probe.doubt?.state ?? 'ok') : heard;
}
