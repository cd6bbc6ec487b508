// A thick pan that climbs fast, is poured into, or gets its tip back: what is called, in which order, and what is not.
import { expect, test } from 'vitest';
import { listAlarms } from '../../../src/core/alarms/engine.ts';
import type { Entry } from '../../../src/core/boil/entries.ts';
import {
  boilingAt,
  foldAll,
  inOrder,
  lines,
  mark,
  readingAt,
  steadyCelsius,
  steadyWhen,
  tarnHollow,
  waterCelsius,
} from './tarn-hollow.ts';

const WATER_C = waterCelsius(1013.25);
const flatPan = (sap: 'maple' | 'birch') =>
  tarnHollow({
    probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
    pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1', sap, vessel: { shape: 'round', diameter_mm: 300 } }],
  });
/** No probe gives the same digits all the time. */
const wander = (t: number): number => 0.02 * Math.sin(t);

const calls = (header: ReturnType<typeof flatPan>, entries: Entry[], until: number, from = 0) =>
  foldAll(header, entries, until).transitions.filter(({ t, event }) => event === 'raised' && t >= from);

/** What is called of a pan that climbs so, up to 20 s after its thermometer stands where it burns, and when that was. */
function climbed(sap: 'maple' | 'birch', perMinute: number, from: number) {
  const climbs = (t: number): number => WATER_C + from + (Math.max(0, t - 600_000) / 60_000) * perMinute + wander(t);
  const burns = 600_000 + ((boilingAt(75, sap) - WATER_C - from) / perMinute) * 60_000;
  const until = burns + 20_000;
  return { burns, raised: calls(flatPan(sap), lines(0, until, { T1: climbs }), until) };
}

test.each([
  ['maple', 0.5, 1],
  ['maple', 0.5, 3],
  ['maple', 1, 3],
  ['birch', 0.5, 1],
  ['birch', 1, 3],
] as const)(
  '%s that climbs by %d °C/min from a rise of %d °C is at its finish before it is about to burn',
  (sap, pace, from) => {
    const raised = climbed(sap, pace, from).raised.map(({ alarm }) => alarm);
    expect(raised).toContain('scorch-risk');
    expect(raised.indexOf('finish')).toBeGreaterThanOrEqual(0);
    expect(raised.indexOf('finish')).toBeLessThan(raised.indexOf('scorch-risk'));
  },
);

test.each([
  ['maple', 1, 1],
  ['birch', 1, 1],
] as const)(
  '%s that climbs by %d °C/min from a rise of %d °C is called a minute and a half before it burns',
  (sap, pace, from) => {
    const { burns, raised } = climbed(sap, pace, from);
    const call = raised.find(({ alarm }) => alarm === 'scorch-risk');
    expect(call?.t).toBeLessThanOrEqual(burns - 90_000);
  },
);

test.each([
  ['maple', 66, 0.7],
  ['maple', 66, 1],
  ['birch', 66, 1],
] as const)(
  '%s that stood at %d °Bx for 20 min and then climbs by %d °C/min is called a minute and a half before it burns',
  (sap, brix, pace) => {
    const stood = 1_200_000;
    const from = boilingAt(brix, sap);
    const climbs = (t: number): number => from + (Math.max(0, t - stood) / 60_000) * pace + wander(t);
    const burns = stood + ((boilingAt(75, sap) - from) / pace) * 60_000;
    const raised = calls(flatPan(sap), lines(0, burns, { T1: climbs }), burns).map(
      ({ alarm, t }) => [alarm, t] as const,
    );
    const at = (name: string): number => raised.find(([alarm]) => alarm === name)?.[1] ?? Infinity;
    expect(at('scorch-risk')).toBeLessThanOrEqual(burns - 90_000);
    expect(at('scorch-risk')).toBeGreaterThan(stood);
    expect(at('finish')).toBeLessThan(at('scorch-risk'));
  },
);

test('once the thermometer is at the mark where it burns no time is left, and the call is as old as that', () => {
  const pan = { fromBrix: 30, k: 0.001, start: 0, sap: 'maple' as const };
  const burns = Math.ceil(steadyWhen(pan, 75) / 5000) * 5000;
  const heard = lines(0, burns + 6000, { T1: (t) => steadyCelsius(pan, t) + 0.05 });
  const { state } = foldAll(flatPan('maple'), heard, burns + 6000);
  expect(readingAt(state, 'p1', burns + 6000).scorch_in_s).toBe(0);
  const call = listAlarms(state.book).find(({ alarm }) => alarm === 'scorch-risk')!;
  expect(call.since).toBeLessThan(burns - 60_000);
  expect(Math.abs(call.cameAt! - burns)).toBeLessThanOrEqual(10_000);
});

const slow = { fromBrix: 30, k: 0.0001, start: 0, sap: 'maple' as const };

test.each([
  [65, 0.5, 2.7, 0.25],
  [65, 1, 2.1, 0.22],
  [73, 0.5, 4, 0.2],
])('at %d °Bx a pour of %d L that is noted, and warmed up to a rise of %d °C, calls nothing', (...of) => {
  const [brix, litres, boilsAtC, perSecond] = of;
  const poured = 1000 * Math.round(steadyWhen(slow, brix) / 1000);
  const before = steadyCelsius(slow, poured);
  const shown = (t: number): number => {
    if (t < poured) return steadyCelsius(slow, t) + wander(t);
    const s = (t - poured) / 1000;
    const target = Math.min(WATER_C + boilsAtC, before - 20 * litres - 4 + perSecond * s);
    return target + (before - target) * Math.exp(-s / 8) + wander(t);
  };
  const until = poured + 300_000;
  const noted = mark(poured, { kind: 'top-up', pan: 'p1', litres, brix: 2 });
  const entries = inOrder(lines(0, until, { T1: shown }), [noted]);
  expect(calls(flatPan('maple'), entries, until, poured).filter(({ alarm }) => alarm === 'scorch-risk')).toEqual([]);
});

test.each([
  [20, -0.3, 0.1],
  [60, -0.3, 3],
  [60, 0.3, 3],
  [60, -1.5, 7],
])('a tip that hung in the steam for %d s, at %d °C, and is put back into thick syrup is no climb', (...of) => {
  const [seconds, steamC, lagS] = of;
  const out = 1000 * Math.round(steadyWhen(slow, 65) / 1000);
  const back = out + seconds * 1000;
  const shown = (t: number): number => {
    const syrup = steadyCelsius(slow, t);
    const steam = WATER_C + steamC;
    if (t < out) return syrup + wander(t);
    if (t < back) return steam + (syrup - steam) * Math.exp((out - t) / 1000 / lagS) + wander(t);
    return syrup + (steam - syrup) * Math.exp((back - t) / 1000 / lagS) + wander(t);
  };
  const until = back + 150_000;
  const raised = calls(flatPan('maple'), lines(0, until, { T1: shown }), until, back);
  expect(raised.filter(({ alarm }) => alarm === 'scorch-risk')).toEqual([]);
});

test('a pan that burns dry climbs on, and is called by that', () => {
  const dry = (t: number): number => WATER_C + 0.3 + (Math.max(0, t - 600_000) / 60_000) * 6 + wander(t);
  const { transitions } = foldAll(flatPan('birch'), lines(0, 680_000, { T1: dry }), 680_000);
  const call = transitions.find(({ alarm }) => alarm === 'scorch-risk');
  expect(call?.why).toMatch(/^rises too fast/);
});
