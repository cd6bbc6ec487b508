// Invented boils at Tarn Hollow for the tests of the fold: headers, lines as a board sends them, and a pan under steady heat.
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import type { Entry, Header, Mark, Sap } from '../../../src/core/boil/entries.ts';
import { advance, applyEntry, type BoilState, panReadings, startBoil } from '../../../src/core/boil/fold.ts';
import type { FoldTools } from '../../../src/core/boil/line-reading.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';
import { saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import { readLine } from '../../../src/ingest/read-line.ts';
import { checkHeader } from '../../../src/protocol/header-schema.ts';

/** The tools that the program itself gives to the fold. */
export const tools: FoldTools = { readLine, checkHeader };

/** Two pots with a probe each behind one board; `over` replaces whole fields. */
export function tarnHollow(over: Partial<Header> = {}): Header {
  return {
    recording: 'panwarden',
    version: 1,
    name: 'Invented for a test',
    started: '2027-04-18T07:30:00-07:00',
    site: { name: 'Tarn Hollow', altitude_m: 0 },
    ports: [{ id: 'A' }],
    probes: [
      { id: 'A/1', port: 'A', channel: 'T1' },
      { id: 'A/2', port: 'A', channel: 'T2' },
    ],
    pans: [
      { id: 'p1', name: 'Back pot', probe: 'A/1' },
      { id: 'p2', name: 'Front pot', probe: 'A/2' },
    ],
    ...over,
  };
}

/** One pot of a sap with one probe. */
export function onePot(sap: Sap = 'maple', finish?: { brix: number }): Header {
  return tarnHollow({
    probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
    pans: [{ id: 'p1', name: 'Back pot', sap, probe: 'A/1', ...(finish && { finish }) }],
  });
}

/** Lines from `from` (ms, included) to `to` (excluded), one a second; a channel that gives null is left out. */
export function lines(from: number, to: number, channels: Record<string, (t: number) => number | null>): Entry[] {
  const entries: Entry[] = [];
  for (let t = from; t < to; t += 1000) {
    const pairs = Object.entries(channels).flatMap(([name, at]) => {
      const celsius = at(t);
      return celsius === null ? [] : [`${name}=${celsius.toFixed(2)}C`];
    });
    if (pairs.length > 0) entries.push({ t, port: 'A', line: pairs.join(' ') });
  }
  return entries;
}

export const mark = (t: number, what: Mark): Entry => ({ t, mark: what });

/** Puts entries of several makers in order of t; equal ones stay in the order given. */
export const inOrder = (...lists: Entry[][]): Entry[] => lists.flat().sort((a, b) => a.t - b.t);

export interface Folded {
  state: BoilState;
  transitions: AlarmTransition[];
}

/** Folds all entries, then lets time run to `until` (ms). `advanceAt` are moments at which time is run as a caller may. */
export function foldAll(header: Header, entries: Entry[], until: number, advanceAt: number[] = []): Folded {
  return foldOn(startBoil(header), entries, until, advanceAt);
}

export function foldOn(state: BoilState, entries: Entry[], until: number, advanceAt: number[] = []): Folded {
  const folded: Folded = { state, transitions: [] };
  const cuts = [...advanceAt, until].sort((a, b) => a - b);
  const runTo = (t: number): void => {
    folded.state = advance(folded.state, t);
    folded.transitions.push(...folded.state.fresh);
  };
  for (const entry of entries) {
    while (cuts[0] !== undefined && cuts[0] < entry.t) runTo(cuts.shift()!);
    folded.state = applyEntry(folded.state, entry, tools);
    folded.transitions.push(...folded.state.fresh);
  }
  for (const cut of cuts) runTo(cut);
  return folded;
}

export function readingAt(state: BoilState, pan: string, t: number): PanReading {
  const found = panReadings(state, t).find((reading) => reading.pan === pan);
  if (found === undefined) throw new Error(`no pan ${pan}`);
  return found;
}

/** `p1 finish raised` and the like, in order. */
export const told = (transitions: AlarmTransition[]): string[] =>
  transitions.map(({ pan, port, alarm, event }) => `${pan ?? port ?? 'all'} ${alarm} ${event}`);

export const waterCelsius = (pressureHpa: number): number => saturationTemperatureCelsius(pressureHpa)!;

/** Temperature of a boiling pan of a strength, °C. */
export function boilingAt(brix: number, sap: Sap, pressureHpa = 1013.25): number {
  return waterCelsius(pressureHpa) + riseFromStrength(brix, sugarShares(sap), pressureHpa)!;
}

/** A pan under steady heat: water per sugar falls by `k` a second from that of `fromBrix` at `start` (ms). */
export interface SteadyPan {
  fromBrix: number;
  k: number;
  start: number;
  sap: Sap;
}

export function steadyBrix(pan: SteadyPan, t: number): number {
  return 100 / (100 / pan.fromBrix - (pan.k * Math.max(0, t - pan.start)) / 1000);
}

/** When a steady pan has a strength, ms. */
export function steadyWhen(pan: SteadyPan, brix: number): number {
  return pan.start + ((100 / pan.fromBrix - 100 / brix) / pan.k) * 1000;
}

export const steadyCelsius = (pan: SteadyPan, t: number): number => boilingAt(steadyBrix(pan, t), pan.sap);
