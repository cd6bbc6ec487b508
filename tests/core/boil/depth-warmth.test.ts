// Depth and litres go by how warm the pan is: cold sap stands lower than the same at a boil.
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/core/boil/entries.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { boilingAt, foldAll, mark, readingAt, tarnHollow } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const vessel = { shape: 'rectangular' as const, length_mm: 500, width_mm: 400 };
const flatPan = tarnHollow({ probes: [], pans: [{ id: 'p1', name: 'Flat pan', sap: 'birch', vessel }] });
const poured = mark(0, { kind: 'top-up', pan: 'p1', litres: 20, brix: 1, celsius: 5 });
const read = (minutes: number, celsius: number): Entry =>
  mark(minutes * MINUTE_MS, { kind: 'reading', pan: 'p1', celsius });
const dipped = (minutes: number, mm: number): Entry => mark(minutes * MINUTE_MS, { kind: 'depth', pan: 'p1', mm });

const after = (entries: Entry[], minutes: number) => {
  const { state } = foldAll(flatPan, entries, minutes * MINUTE_MS);
  return { now: readingAt(state, 'p1', minutes * MINUTE_MS), view: boilView(state, minutes * MINUTE_MS) };
};

test('what was poured in cold stands as deep as it does cold', () => {
  expect(after([poured], 0.1).now.depth_mm!).toBeCloseTo(99.9, 0);
});

test('a right dip into cold sap takes nothing away, and agrees with the count', () => {
  const { now, view } = after([poured, read(1, 6.5), dipped(1.5, 100)], 1.6);
  expect(now.litres!).toBeGreaterThan(19.95);
  expect(now.litres!).toBeLessThan(20.05);
  expect(view.marks.at(-1)?.depths?.countedMm).toBeCloseTo(100, 0);
  expect(view.marks.at(-1)?.depths?.takenMm).toBeCloseTo(100, 0);
});

test('a pan of which nobody spoke, dipped and read, holds what it holds cold in either order', () => {
  for (const entries of [
    [dipped(1, 100), read(1.5, 6.5)],
    [read(1, 6.5), dipped(1.5, 100)],
  ]) {
    const { now } = after(entries, 1.6);
    expect(now.litres!).toBeCloseTo(20, 1);
    expect(now.depth_mm!).toBeCloseTo(100, 0);
  }
});

test('at a boil, and where nobody knows how warm it is, it stands 4 % deeper', () => {
  const boiling = after([poured, read(30, boilingAt(1, 'birch'))], 30.1).now;
  expect(boiling.depth_mm! / boiling.litres!).toBeCloseTo(5.2, 3);
  const unknown = after([dipped(1, 100)], 1.1).now;
  expect(unknown.litres!).toBeCloseTo(100 / 5.2, 1);
});
