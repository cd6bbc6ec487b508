// Checks that a density reading teaches its sap and probe, within what the instrument knows, and that a wild one is asked about.
import { expect, test } from 'vitest';
import type { Entry, Header, Mark } from '../../../src/core/boil/entries.ts';
import { learntOf } from '../../../src/core/boil/learnt.ts';
import { readInstrument } from '../../../src/core/physics/instruments.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';
import { foldAll, inOrder, lines, mark, onePot, readingAt, waterCelsius } from './tarn-hollow.ts';

const HPA = 950;
const READ_MS = 180_000;
const END_MS = 420_000;
const birch = onePot('birch');

/** Acids and minerals raise this invented birch by 5 % over its sugars alone, and its probe shows 0.3 °C too much. */
const MORE = 1.05;
const SHOWS_MORE_C = 0.3;

const truly = (brix: number): number =>
  waterCelsius(HPA) + MORE * riseFromStrength(brix, sugarShares('birch'), HPA)! + SHOWS_MORE_C;

const density = (brix: number, more: Partial<Mark> = {}): Mark => ({
  kind: 'density',
  pan: 'p1',
  brix,
  instrument: 'hydrometer',
  celsius: 15.56,
  ...(more as object),
});

function boil(header: Header, brix: number, marks: Entry[]) {
  const pressure = mark(0, { kind: 'pressure', hpa: HPA });
  const heard = lines(0, END_MS, { T1: () => truly(brix) });
  const { state } = foldAll(header, inOrder([pressure], heard, marks), END_MS);
  return { state, reading: readingAt(state, 'p1', END_MS) };
}

const instrumentSigma = readInstrument({ brix: 62, celsius: 15.56 }, sugarShares('birch'))!.sigma;

test('an unknown birch is off until one density reading, and then within what the instrument knows', () => {
  const before = boil(birch, 62, []).reading;
  expect(before.brix! - 62).toBeGreaterThan(1.5);
  const { reading, state } = boil(birch, 62, [mark(READ_MS, density(62))]);
  expect(Math.abs(reading.brix! - 62)).toBeLessThan(instrumentSigma);
  expect(reading.brix_low).toBeLessThan(62);
  expect(reading.brix_high).toBeGreaterThan(62);
  expect(reading.brix_high! - reading.brix_low!).toBeLessThan(before.brix_high! - before.brix_low!);
  expect(state.notices).toEqual([]);
});

test('the next boil with the same sap and probe starts with what was learnt, a little less sure', () => {
  const first = boil(birch, 62, [mark(READ_MS, density(62))]);
  const learnt = learntOf(first.state)!;
  expect(learnt.names.toSorted()).toEqual(['probe A/1', 'sap birch']);
  const next = boil({ ...birch, learnt }, 64, []).reading;
  expect(Math.abs(next.brix! - 64)).toBeLessThan(2 * instrumentSigma);
  expect(next.brix_high! - next.brix_low!).toBeGreaterThan(first.reading.brix_high! - first.reading.brix_low!);
  const another = boil({ ...onePot('maple'), learnt: { ...learnt, names: ['probe B/1', 'sap birch'] } }, 40, []);
  expect(another.reading).toEqual(boil(onePot('maple'), 40, []).reading);
});

test('a boil in which nothing was measured against water or an instrument teaches nothing', () => {
  expect(learntOf(boil(birch, 62, []).state)).toBeNull();
});

test('76 typed for 67 is asked about and acts on nothing', () => {
  const plain = boil(birch, 66, []).reading;
  const { reading, state } = boil(birch, 66, [mark(READ_MS, density(76))]);
  expect(reading).toEqual(plain);
  expect(state.notices.map(({ sentence }) => sentence)).toEqual([expect.stringContaining('said 76.0 °Bx')]);
  expect(learntOf(state)).toBeNull();
});

test('a wild reading that is said again is meant', () => {
  const twice = [mark(READ_MS, density(56)), mark(READ_MS + 60_000, density(56))];
  const { reading, state } = boil(birch, 66, twice);
  expect(state.notices).toHaveLength(1);
  expect(Math.abs(reading.brix! - 56)).toBeLessThan(1.5);
});

test('of two density readings the one that is taken back teaches nothing, and the other still does', () => {
  const wrong = mark(READ_MS, density(60.5, { id: 'wrong' }));
  const right = mark(READ_MS + 30_000, density(62));
  const back = mark(READ_MS + 60_000, { kind: 'withdraw', id: 'wrong' });
  const alone = boil(birch, 62, [right]);
  const both = boil(birch, 62, [wrong, right]);
  const withdrawn = boil(birch, 62, [wrong, right, back]);
  expect(both.reading.brix!).toBeLessThan(alone.reading.brix! - 0.3);
  expect(Math.abs(withdrawn.reading.brix! - alone.reading.brix!)).toBeLessThan(0.3);
  expect(learntOf(withdrawn.state)!.mean[1]!).toBeCloseTo(learntOf(alone.state)!.mean[1]!, 4);
});

test('a hand reading that is taken back gives way to the one before it', () => {
  const header = { ...birch, probes: [], pans: [{ id: 'p1', name: 'Back pot' }] };
  const read = (t: number, celsius: number, id: string): Entry => mark(t, { kind: 'reading', pan: 'p1', celsius, id });
  const entries = [
    read(60_000, 101, 'first'),
    read(120_000, 110, 'typo'),
    mark(180_000, { kind: 'withdraw', id: 'typo' }),
  ];
  expect(readingAt(foldAll(header, entries, 240_000).state, 'p1', 240_000).temperature_c).toBe(101);
});

/** A pot of 12 L, read by a dial; at this fire they are syrup after about 84 min. */
const byHand: Header = {
  ...onePot('birch'),
  ports: [],
  probes: [],
  pans: [
    {
      id: 'p1',
      name: 'Back pot',
      sap: 'birch',
      vessel: { shape: 'round', diameter_mm: 400 },
      heat: { kind: 'propane', power_w: 16_000 },
    },
  ],
};
const minute = (at: number, what: Mark): Entry => mark(at * 60_000, what);
const dial = (at: number, celsius: number): Entry => minute(at, { kind: 'reading', pan: 'p1', celsius });
/** The dial at which 66 °Bx of birch boil at 1013 hPa. */
const DIAL_C = 100 + riseFromStrength(66, sugarShares('birch'), 1013.25)!;
const end = (at: number): Entry => ({ t: at * 60_000, run: 'ended' });

test.each([
  ['with what went in noted', [minute(0, { kind: 'top-up', pan: 'p1', litres: 12, brix: 1.2 })]],
  ['with nothing noted of what went in', []],
])('a pot read by hand teaches its sap, %s', (_, poured) => {
  const read = [dial(20, 100), dial(50, 100.2), dial(75, 100.7), dial(82, 103.5), dial(84, DIAL_C)];
  const { state } = foldAll(byHand, [...poured, ...read, minute(84.5, density(66)), end(90)], 90 * 60_000);
  expect(learntOf(state)?.names).toContain('sap birch');
});

test('a density that was left out teaches no other boil, nor does it once somebody insists on it against the dial', () => {
  const poured = minute(0, { kind: 'top-up', pan: 'p1', litres: 12, brix: 1.2 });
  const told = [poured, dial(25, 100), dial(29, 100.1), minute(30, density(66))];
  const { state } = foldAll(byHand, [...told, end(40)], 40 * 60_000);
  expect(state.marks.at(-1)?.questioned).toBe(true);
  expect(learntOf(state)).toBeNull();
  const again = foldAll(byHand, [...told, dial(31, 100.1), minute(31.5, density(66)), end(40)], 40 * 60_000).state;
  expect(again.marks.at(-1)?.questioned).toBe(false);
  expect(learntOf(again)?.names ?? []).not.toContain('sap birch');
});
