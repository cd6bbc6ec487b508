// A pan read by hand of which the sums say that all has boiled away: it holds what was noted at the strength that is measured, and is minutes from its end.
import { expect, test } from 'vitest';
import { adviceOn } from '../../../src/core/boil/advice.ts';
import type { Entry, Mark, Sap, Vessel } from '../../../src/core/boil/entries.ts';
import { LEVEL } from '../../../src/core/pan/filter/belief.ts';
import { boilingAt, foldAll, mark, readingAt, tarnHollow, told } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const at = (minutes: number, what: Mark): Entry => mark(minutes * MINUTE_MS, what);
const round = (mm: number): Vessel => ({ shape: 'round', diameter_mm: mm });

const onGas = (sap: Sap, vessel: Vessel, watts: number) =>
  tarnHollow({
    probes: [],
    pans: [
      { id: 'p1', name: 'Front pot', sap, vessel, heat: { kind: 'propane', power_w: watts } },
      { id: 'p2', name: 'Back pot', sap, vessel, heat: { kind: 'propane', power_w: watts } },
    ],
  });

function after(header: ReturnType<typeof onGas>, entries: Entry[], minutes: number, pan = 'p1') {
  const t = minutes * MINUTE_MS;
  const { state, transitions } = foldAll(header, entries, t);
  const now = readingAt(state, pan, t);
  const { readAgainAt } = adviceOn(state, now, t);
  const { course } = state.pans[pan]!;
  return { now, calls: told(transitions), readAgainMin: readAgainAt === null ? null : readAgainAt / MINUTE_MS, course };
}

test('a pan that a reading finds at 50 °Bx after its count ran dry is done in minutes, and is read again soon', () => {
  const header = onGas('maple', round(300), 10_000);
  const filled = at(0, { kind: 'top-up', pan: 'p1', litres: 7, brix: 15 });
  const read = at(102, { kind: 'reading', pan: 'p1', celsius: boilingAt(50, 'maple') });
  const measured = at(102.5, { kind: 'density', pan: 'p1', brix: 50, celsius: 15.56 });
  for (const entries of [
    [filled, read],
    [filled, measured],
    [filled, read, measured],
  ]) {
    const { now, calls, readAgainMin } = after(header, entries, 103);
    expect(now.brix!).toBeGreaterThan(46);
    expect(now.brix!).toBeLessThan(55);
    expect(now.finish_in_s!).toBeLessThan(15 * 60);
    expect(calls).toContain('p1 near-finish raised');
    if (entries.includes(read)) expect(readAgainMin! - 102).toBeLessThanOrEqual(5);
  }
});

test('whenever it is read, no forecast rests on a multiple of what the noted sugar makes', () => {
  const pots = [onGas('maple', round(300), 10_000), onGas('birch', round(400), 15_000)];
  for (const [header, sap] of [
    [pots[0]!, 'maple'],
    [pots[1]!, 'birch'],
  ] as const) {
    for (const brix of [45, 55]) {
      for (const minutes of [20, 40, 60, 80, 120, 180]) {
        const entries = [
          at(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 12 }),
          at(minutes, { kind: 'reading', pan: 'p1', celsius: boilingAt(brix, sap) }),
          at(minutes + 0.5, { kind: 'density', pan: 'p1', brix, celsius: 15.56 }),
        ];
        const { now, course, readAgainMin } = after(header, entries, minutes + 1);
        const made = (10 * 1.05 * 0.12) / (now.brix! / 100);
        // As fast as such a burner can boil the water away that is over.
        const mostS = (4 * made * (1 - now.brix! / 66)) / Math.exp(course.belief!.x[LEVEL]!);
        if (now.finish_in_s !== null) expect(now.finish_in_s).toBeLessThan(Math.max(900, mostS));
        if (now.litres === null) expect(readAgainMin! - minutes).toBeLessThanOrEqual(5);
      }
    }
  }
});

test('more than its vessel holds is in no pan: when that is done is not known', () => {
  const low: Vessel = { shape: 'round-sloped', bottom_diameter_mm: 300, top_diameter_mm: 320, height_mm: 100 };
  const doneIn = (litres: number) => {
    const entries = [
      at(0, { kind: 'top-up', pan: 'p1', litres, brix: 40, celsius: 98 }),
      at(5, { kind: 'reading', pan: 'p1', celsius: boilingAt(41, 'maple') }),
    ];
    return after(onGas('maple', low, 10_000), entries, 6).now.finish_in_s;
  };
  expect(doneIn(6)).not.toBeNull();
  expect(doneIn(30)).toBeNull();
});

test('an amount that nobody knows and is a multiple of what was noted tells no hour', () => {
  const entries = [
    at(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 2 }),
    at(45, { kind: 'reading', pan: 'p1', celsius: boilingAt(50, 'maple') }),
    at(45.5, { kind: 'density', pan: 'p1', brix: 50, celsius: 15.56 }),
  ];
  const { now, readAgainMin } = after(onGas('maple', round(300), 10_000), entries, 46);
  expect(now.litres).toBeNull();
  expect(now.finish_in_s ?? 0).toBeLessThan(15 * 60);
  expect(readAgainMin! - 45).toBeLessThanOrEqual(5);
});

test('a depth of a pan whose count ran dry tells how strong its noted sugar stands there, and what it is poured into stays thick', () => {
  const header = onGas('birch', round(350), 10_000);
  const entries = [
    at(0, { kind: 'top-up', pan: 'p1', litres: 8, brix: 30 }),
    at(1, { kind: 'top-up', pan: 'p2', litres: 3, brix: 45 }),
    at(62, { kind: 'reading', pan: 'p1', celsius: boilingAt(61, 'birch') }),
    at(62.3, { kind: 'density', pan: 'p1', brix: 61, celsius: 15.56 }),
    at(63, { kind: 'depth', pan: 'p2', mm: 30 }),
    at(63.2, { kind: 'reading', pan: 'p2', celsius: boilingAt(43, 'birch') }),
    at(64, { kind: 'transfer', from: 'p2', to: 'p1', all: true }),
  ];
  const back = after(header, entries.slice(0, 6), 63.5, 'p2').now;
  expect(back.brix!).toBeGreaterThan(35);
  expect(back.litres!).toBeGreaterThan(2.4);
  expect(back.litres!).toBeLessThan(3.4);
  const { now, calls } = after(header, entries, 64.5);
  expect(now.brix!).toBeGreaterThan(45);
  expect(calls).toContain('p1 near-finish raised');
  expect(calls).not.toContain('p1 near-finish cleared');
});
