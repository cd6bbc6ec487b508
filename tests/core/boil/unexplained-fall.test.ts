// A thick pan that falls at once with nothing noted: what is said of it agrees, no call ends by itself, and a note ends the doubt.
import { expect, test } from 'vitest';
import { listAlarms } from '../../../src/core/alarms/engine.ts';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import { boilView } from '../../../src/core/boil/view.ts';
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
} from './tarn-hollow.ts';

const header = tarnHollow({
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
  pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1', sap: 'maple', vessel: { shape: 'round', diameter_mm: 300 } }],
});
const pan = { fromBrix: 30, k: 0.0004, start: 0, sap: 'maple' as const };
/** It falls when it is past its finish and about to burn, on a whole second. */
const FALLS = 1000 * Math.round(steadyWhen(pan, 73) / 1000);
const STILL_BOILS_C = boilingAt(20, 'maple') + 0.4;

/** The boil up to so many seconds after the fall, in which the thermometer shows what `after` gives. */
function fallen(seconds: number, after: (s: number) => number, more: Entry[] = []) {
  const until = FALLS + seconds * 1000;
  const shown = (t: number): number => (t < FALLS ? steadyCelsius(pan, t) : after((t - FALLS) / 1000));
  const told = mark(600_000, { kind: 'depth', pan: 'p1', mm: 100 } as Mark);
  const { state } = foldAll(header, inOrder([told], more, lines(0, until, { T1: shown })), until);
  const calls = Object.fromEntries(
    listAlarms(state.book).flatMap(({ alarm, condition, why }) => (condition === 'active' ? [[alarm, why]] : [])),
  );
  return { reading: readingAt(state, 'p1', until), calls, view: boilView(state, until) };
}

/** Steady, but no probe gives the same digits all the time. */
const flat = (s: number): number => STILL_BOILS_C + 0.02 * Math.sin(s);
const FELL = /^fell from 10\d\.\d to 100\.8 °C, and nobody noted why/;

test('before it falls it is past its finish and about to burn', () => {
  const { calls, view } = fallen(0, flat);
  expect(Object.keys(calls)).toEqual(expect.arrayContaining(['past-finish', 'scorch-risk']));
  expect(view.advice[0]?.fellC).toBeNull();
});

test.each([20, 60, 90, 300])(
  '%i s after an unexplained fall no strength is said, and the calls stand and say so',
  (s) => {
    const { reading, calls, view } = fallen(s, flat);
    expect(reading).toMatchObject({ brix: null, finish_in_s: null, scorch_in_s: null, stage: 'unknown' });
    // Nobody knows what was poured in: no amount is said, nor when it runs low.
    expect(reading).toMatchObject({ litres: null, depth_mm: null, top_up_in_s: null });
    expect(view.next).toMatchObject({ what: calls['scorch-risk'] === undefined ? 'look-in' : 'alarm', pan: 'p1' });
    expect(calls['past-finish']).toMatch(FELL);
    expect(calls['scorch-risk']).toMatch(FELL);
    expect(view.advice[0]?.fellC).toBeCloseTo(5.1, 0);
    const call = view.alarms.find(({ alarm }) => alarm === 'past-finish');
    expect(call?.title).toBe('Was past its finish');
    expect(call?.means).not.toContain('stronger');
    expect(call?.todo).toContain('note what was poured in');
  },
);

test('a pour that is noted ends the doubt and the calls', () => {
  const noted = mark(FALLS + 60_000, { kind: 'top-up', pan: 'p1', litres: 2, brix: 2, happened: FALLS } as Mark);
  const { calls, view } = fallen(90, flat, [noted]);
  expect(calls).toEqual({});
  expect(view.advice[0]?.fellC).toBeNull();
});

test('a flame that was turned down explains the fall', () => {
  const turned = mark(FALLS - 10_000, { kind: 'flame', pan: 'p1', level: 0.3 } as Mark);
  expect(fallen(30, flat, [turned]).view.advice[0]?.fellC).toBeNull();
});

test('a tip that was out and is put back shows the strength again, under the same calls', () => {
  const out = (s: number): number => (s < 60 ? STILL_BOILS_C : steadyCelsius(pan, FALLS + s * 1000));
  const { reading, calls } = fallen(130, out);
  expect(reading.brix).toBeGreaterThan(70);
  expect(calls['past-finish']).toContain('finish 66.9');
});

test('what goes on boiling so for a quarter of an hour is believed', () => {
  const { reading, calls } = fallen(900, flat);
  expect(reading.brix).toBeLessThan(60);
  expect(calls).toEqual({});
});

test('a density that is measured after it is said, whatever the thermometer shows', () => {
  const measured = mark(FALLS + 60_000, { kind: 'density', pan: 'p1', brix: 73, sure: true } as Mark);
  const { reading } = fallen(70, flat, [measured]);
  expect(reading.brix).toBeGreaterThan(65);
});

/** Falls at this strength; of its calls those that stand so many seconds later, by name, with why. */
function callsAfter(brix: number, seconds: number, after: (s: number) => number | null, more: Entry[] = []) {
  const falls = 1000 * Math.round(steadyWhen(pan, brix) / 1000);
  const until = falls + seconds * 1000;
  const shown = (t: number): number | null => (t < falls ? steadyCelsius(pan, t) : after((t - falls) / 1000));
  const noted = [
    mark(600_000, { kind: 'depth', pan: 'p1', mm: 100 }),
    ...more.map((one) => ({ ...one, t: falls + one.t })),
  ];
  const { state } = foldAll(header, inOrder(noted, lines(0, until, { T1: shown })), until);
  const active = listAlarms(state.book).filter(({ condition }) => condition === 'active');
  return Object.fromEntries(active.map(({ alarm, why }) => [alarm, why]));
}

test.each([
  [66, 'near-finish'],
  [67.2, 'finish'],
])('at %d °Bx: a probe that is lost after the fall ends no call by a count that nobody believes', (brix, alarm) => {
  const calls = callsAfter(brix, 300, (s) => (s < 25 ? flat(s) : null));
  expect(Object.keys(calls).toSorted()).toEqual([alarm, 'probe-lost'].toSorted());
  expect(calls[alarm]).toMatch(FELL);
});

test('once the tip is back over a lower flame the call says its numbers again, though it is further off than the lead', () => {
  const turned = mark(55_000, { kind: 'flame', pan: 'p1', level: 0.65 });
  const back = (s: number): number => (s < 60 ? flat(s) : boilingAt(58.4, 'maple') + 0.02 * Math.sin(s));
  expect(callsAfter(58.2, 100, back, [turned])['near-finish']).toMatch(/^about 1\d min to 66.9/);
});
