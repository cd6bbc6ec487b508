// Checks that the water point and a rise say what they rest on, and that what is said of each part adds up.
import { expect, test } from 'vitest';
import type { Mark } from '../../../src/core/boil/entries.ts';
import { explainRise, explainSap, explainWater } from '../../../src/core/boil/baseline-view.ts';
import { foldAll, inOrder, lines, mark, onePot } from './tarn-hollow.ts';

const END_MS = 3_600_000;

function after(...marks: Mark[]) {
  const heard = lines(0, END_MS, { T1: () => 103 });
  const noted = marks.map((one, i) => mark(120_000 + 1000 * i, one));
  return foldAll(onePot('birch'), inOrder(heard, noted), END_MS).state;
}

const kinds = (measured: { origins: readonly { kind: string }[] } | null): string[] =>
  (measured?.origins ?? []).map(({ kind }) => kind);

test('from the altitude alone', () => {
  const state = after();
  expect(kinds(explainWater(state))).toEqual(['altitude']);
  expect(kinds(explainRise(state, 'p1'))).toEqual(['probe', 'altitude', 'assumed']);
  expect(explainSap(state, 'p1')).toBeNull();
});

test('a check, an hour of weather and the probe make the rise, and their parts make up its uncertainty', () => {
  const rise = explainRise(after({ kind: 'water-check', probe: 'A/1', celsius: 99.5 }), 'p1')!;
  expect(kinds(rise)).toEqual(['probe', 'boiling-check', 'weather']);
  const sum = Math.hypot(...rise.origins.map(({ sigma }) => sigma));
  expect(Math.abs(sum / rise.sigma - 1)).toBeLessThan(0.1);
  expect(rise.origins[1]!.at).toBe(120_000);
});

test('a pressure makes the water point; the probe that nobody checked is the rest of the rise', () => {
  const state = after({ kind: 'pressure', hpa: 1000 });
  expect(kinds(explainWater(state))).toEqual(['pressure', 'weather']);
  const rise = explainRise(state, 'p1')!;
  expect(kinds(rise)).toEqual(['probe', 'pressure', 'weather', 'assumed']);
  const largest = rise.origins.toSorted((a, b) => b.sigma - a.sigma)[0]!;
  expect(largest.kind).toBe('assumed');
  expect(largest.of).toBe('A/1');
});

test('a density reading is said of the sap', () => {
  const density: Mark = { kind: 'density', pan: 'p1', brix: 50, celsius: 20, instrument: 'refractometer' };
  expect(kinds(explainSap(after({ kind: 'pressure', hpa: 1013 }, density), 'p1'))).toEqual(['density-reading']);
});

test('with nothing known of water there is nothing to say', () => {
  const { state } = foldAll({ ...onePot(), site: {} }, lines(0, 60_000, { T1: () => 103 }), 60_000);
  expect(explainWater(state)).toBeNull();
  expect(explainRise(state, 'p1')).toBeNull();
});
