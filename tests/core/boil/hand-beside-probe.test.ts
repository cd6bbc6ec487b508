// A thermometer in the hand beside a probe: what its readings have in common is one error, however often they are noted.
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import { boilingAt, foldAll, inOrder, lines, mark, onePot, readingAt, tarnHollow } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const hand = (minutes: number, celsius: number): Entry =>
  mark(minutes * MINUTE_MS, { kind: 'reading', pan: 'p1', celsius } as Mark);
const boils = (from: number, to: number, celsius: number): Entry[] =>
  lines(from * MINUTE_MS, to * MINUTE_MS, { T1: () => celsius });
const widthAt = (entries: Entry[], minutes: number, header = onePot('birch')): number => {
  const { brix_low: low, brix_high: high } = readingAt(
    foldAll(header, entries, minutes * MINUTE_MS).state,
    'p1',
    minutes * MINUTE_MS,
  );
  return high! - low!;
};

test('beside a silent probe the same number read three times is hardly surer than read once', () => {
  const hot = boilingAt(55, 'birch');
  const readings = [hand(1, hot), hand(1.5, hot), hand(2, hot)];
  const once = widthAt([hand(2, hot)], 2.1);
  expect(widthAt(readings, 2.1)).toBeGreaterThan(0.93 * once);
  // A pan without any probe is as sure as one whose probe says nothing.
  const alone = tarnHollow({ probes: [], pans: [{ id: 'p1', name: 'Back pot', sap: 'birch' }] });
  expect(widthAt(readings, 2.1)).toBeCloseTo(widthAt(readings, 2.1, alone), 0);
});

test('beside a probe that is heard a hand reads once, too, and the probe stays as well known as it was', () => {
  const hot = boilingAt(55, 'birch');
  const heard = boils(0, 8, hot);
  const none = widthAt(heard, 8);
  const once = widthAt(inOrder(heard, [hand(4, hot)]), 8);
  const often = widthAt(
    inOrder(
      heard,
      [4, 4.5, 5, 5.5, 6, 6.5].map((minutes) => hand(minutes, hot)),
    ),
    8,
  );
  expect(once).toBeLessThan(none);
  expect(often).toBeGreaterThan(0.9 * once);
});
