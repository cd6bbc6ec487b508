// Checks that a correction (an offset, a boiling check, a pressure) moves what is said of a pan without being taken for a boil.
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/core/boil/entries.ts';
import {
  boilingAt,
  foldAll,
  foldOn,
  inOrder,
  lines,
  mark,
  onePot,
  readingAt,
  steadyCelsius,
  told,
} from './tarn-hollow.ts';
import { startBoil } from '../../../src/core/boil/fold.ts';

const CORRECTED_MS = 300_000;
const probe = { id: 'A/1', port: 'A', channel: 'T1' };

const corrections: [string, Entry[]][] = [
  ['an offset of +0.8 °C', [{ t: CORRECTED_MS, set: { probes: [{ ...probe, offset_c: 0.8 }] } }]],
  [
    'a boiling check that shows the probe 0.8 °C low',
    [mark(CORRECTED_MS, { kind: 'water-check', probe: 'A/1', celsius: 99.17 })],
  ],
  ['a pressure 15 hPa lower', [mark(CORRECTED_MS, { kind: 'pressure', hpa: 998 })]],
];

test.each(corrections)('%s in a steady pan moves the rise, and makes no rate and no call', (_, correction) => {
  const start = mark(0, { kind: 'pressure', hpa: 1013.25 });
  const heard = lines(0, 600_000, { T1: () => boilingAt(54, 'maple') });
  let folded = foldOn(startBoil(onePot()), [], 0);
  const rises: number[] = [];
  for (const entry of inOrder([start], heard, correction)) {
    folded = foldOn(folded.state, [entry], entry.t);
    expect(told(folded.transitions), `at ${entry.t} ms`).toEqual([]);
    const reading = readingAt(folded.state, 'p1', entry.t);
    expect(Math.abs(reading.rate_c_per_min ?? 0), `at ${entry.t} ms`).toBeLessThan(0.15);
    if (reading.rise_c !== null) rises.push(reading.rise_c);
  }
  expect(rises.at(-1)! - rises[0]!).toBeGreaterThan(0.35);
});

test('an offset that is put right an hour and a half before the finish calls nobody', () => {
  const slow = { fromBrix: 40, k: 1.5e-4, start: 0, sap: 'maple' as const };
  const heard = lines(0, 1_200_000, { T1: (t) => steadyCelsius(slow, t) - 0.8 });
  const putRight: Entry = { t: 900_000, set: { probes: [{ ...probe, offset_c: 0.8 }] } };
  expect(told(foldAll(onePot(), inOrder(heard, [putRight]), 1_200_000).transitions)).toEqual([]);
});
