// A density that is noted of a pan that does not boil: it is the pan's strength, whatever the thermometer shows.
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import { explain } from '../../../src/core/boil/explain.ts';
import { foldAll, mark, readingAt, tarnHollow } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const header = tarnHollow({ probes: [], pans: [{ id: 'p1', name: 'Back pot', sap: 'birch' }] });
const at = (minutes: number, what: Mark): Entry => mark(minutes * MINUTE_MS, what);
const poured = at(0, { kind: 'top-up', pan: 'p1', litres: 60 });
const cold = at(1, { kind: 'reading', pan: 'p1', celsius: 12 });
const density = at(2, { kind: 'density', pan: 'p1', brix: 0.9, celsius: 15.56 });
const after = (...entries: Entry[]) => {
  const { state } = foldAll(header, entries, 3 * MINUTE_MS);
  return { state, now: readingAt(state, 'p1', 3 * MINUTE_MS) };
};

test('a cold pan’s thermometer says nothing of its strength, so that nothing is asked', () => {
  const { state } = after(poured, cold, density);
  expect(state.marks.at(-1)).toMatchObject({ questioned: false, evidence: null });
});

test('it is how strong the pan is, with the range of the instrument, and says so', () => {
  const { state, now } = after(poured, cold, density);
  expect(Math.abs(now.brix! - 0.9)).toBeLessThan(0.1);
  expect(now.brix_low!).toBeLessThan(0.8);
  expect(now.brix_high!).toBeGreaterThan(1);
  const parts = explain(state, 'p1', 'strength', 3 * MINUTE_MS)!.parts;
  expect(parts.map(({ kind }) => kind)).toEqual(['density-reading']);
});

test('it stands though nobody told how much is in it, and when somebody does', () => {
  expect(after(cold, density).now.brix!).toBeCloseTo(0.9, 6);
  const then = after(cold, density, at(2.5, { kind: 'top-up', pan: 'p1', litres: 60 })).now;
  expect(Math.abs(then.brix! - 0.9)).toBeLessThan(0.05);
  expect(then.litres!).toBeGreaterThan(55);
});

test('of an emptied pan it says nothing', () => {
  const { now } = after(poured, cold, density, at(2.5, { kind: 'draw-off', pan: 'p1', all: true }));
  expect(now.brix).toBeNull();
});
