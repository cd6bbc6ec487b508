// Two pans whose contents are known are poured together: what comes of it is said at once, and stands until the boil shows it.
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import { explain } from '../../../src/core/boil/explain.ts';
import {
  boilingAt,
  foldAll,
  inOrder,
  lines,
  mark,
  readingAt,
  steadyCelsius,
  tarnHollow,
  told as callsOf,
} from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const POURED_MS = 15 * MINUTE_MS;
const vessel = { shape: 'round' as const, diameter_mm: 300 };
const heat = { kind: 'propane' as const, power_w: 9000 };
const header = tarnHollow({
  pans: [
    { id: 'p1', name: 'Back pot', probe: 'A/1', vessel, heat },
    { id: 'p2', name: 'Front pot', probe: 'A/2', vessel, heat },
  ],
});
const back = { fromBrix: 30, k: 0.0004, start: 0, sap: 'maple' as const };
const front = { fromBrix: 10, k: 0.0006, start: 0, sap: 'maple' as const };

const told: Mark[] = ['p1', 'p2'].flatMap((pan): Mark[] => [
  { kind: 'density', pan, brix: pan === 'p1' ? back.fromBrix : front.fromBrix, celsius: 15.56 },
  { kind: 'depth', pan, mm: 90 },
]);
/** What is poured in cools the front pot, which the fire takes back within a minute and a half. */
const dipped = (t: number): number => {
  const steady = steadyCelsius(front, Math.min(t, POURED_MS));
  return t < POURED_MS ? steady : steady - 3 * Math.exp(-(t - POURED_MS) / 25_000);
};
const heard = inOrder(
  told.map((one) => mark(0, one)),
  lines(1000, 16 * MINUTE_MS, { T1: (t) => steadyCelsius(back, Math.min(t, POURED_MS)), T2: dipped }),
);
const pour = mark(POURED_MS, { kind: 'transfer', from: 'p1', to: 'p2', all: true });

const at = (t: number, ...more: Entry[]) => {
  const entries = inOrder(heard, more).filter((entry) => entry.t <= t);
  return foldAll(header, entries, t).state;
};

test('the strength is the balance of both from the moment that it was noted, with a range of both', () => {
  const before = at(POURED_MS - 1000);
  const [one, other] = ['p1', 'p2'].map((pan) => readingAt(before, pan, POURED_MS - 1000));
  const state = at(POURED_MS + 5000, pour);
  const mixed = readingAt(state, 'p2', POURED_MS + 5000);
  expect(mixed.stage).toBe('warming');
  const share = (litres: number, brix: number): number => litres * (1 + brix * 0.0042) * brix;
  const mass = (litres: number, brix: number): number => litres * (1 + brix * 0.0042);
  const balance =
    (share(one!.litres!, one!.brix!) + share(other!.litres!, other!.brix!)) /
    (mass(one!.litres!, one!.brix!) + mass(other!.litres!, other!.brix!));
  expect(Math.abs(mixed.brix! - balance)).toBeLessThan(0.5);
  const width = ({ brix, brix_low: low, brix_high: high }: typeof mixed): number => (high! - low!) / brix!;
  expect(width(mixed)).toBeGreaterThan(width(one!));
  expect(mixed.brix_low!).toBeGreaterThan(other!.brix!);
  expect(mixed.brix_high!).toBeLessThan(one!.brix!);
});

test('it is told that it comes of what was poured, not of how hot it is', () => {
  const parts = explain(at(POURED_MS + 5000, pour), 'p2', 'strength', POURED_MS + 5000)!.parts;
  expect(parts.map(({ kind, at: when }) => [kind, when])).toEqual([['volume', POURED_MS]]);
});

test('a fall that nobody explained by a pour says no strength', () => {
  const t = POURED_MS + 20_000;
  expect(readingAt(at(t), 'p2', t)).toMatchObject({ stage: 'warming', brix: null });
});

test('what is poured in at its boil boils on, and what cools the pan warms up first', () => {
  const t = POURED_MS + 5000;
  const hot = inOrder(
    told.map((one) => mark(0, one)),
    lines(1000, 16 * MINUTE_MS, { T2: (now) => steadyCelsius(front, Math.min(now, POURED_MS)) }),
    [mark(POURED_MS, { kind: 'top-up', pan: 'p2', litres: 30, brix: 10, celsius: 100 })],
  ).filter((entry) => entry.t <= t);
  expect(readingAt(foldAll(header, hot, t).state, 'p2', t).stage).toBe('boiling');
  expect(readingAt(at(t, pour), 'p2', t).stage).toBe('warming');
});

test('boiling sap poured into a pot whose amount alone was told: it is as strong as both, and boils on', () => {
  const T = 137_000;
  const level = (celsius: number) => (t: number) => (t < 50_000 ? 21 : celsius + 0.02 * Math.sin(t / 800));
  const boils = { T1: level(boilingAt(2, 'maple')), T2: level(boilingAt(3, 'maple')) };
  const entries = inOrder(
    [
      mark(32_000, { kind: 'top-up', pan: 'p1', litres: 34, brix: 2 }),
      mark(48_000, { kind: 'depth', pan: 'p2', mm: 50 }),
      mark(T, { kind: 'transfer', from: 'p1', to: 'p2', litres: 7.6 }),
    ],
    lines(0, 160_000, boils),
  );
  const reading = (t: number) =>
    readingAt(
      foldAll(
        header,
        entries.filter((entry) => entry.t <= t),
        t,
      ).state,
      'p2',
      t,
    );
  const before = reading(T - 1000);
  for (const seconds of [2, 8, 20]) {
    const after = reading(T + seconds * 1000);
    expect(after).toMatchObject({ stage: 'boiling' });
    expect(after.brix!).toBeGreaterThan(1.9);
    expect(after.brix!).toBeLessThan(before.brix!);
    expect(after.brix_high! - after.brix_low!).toBeLessThan(before.brix_high! - before.brix_low!);
  }
});

const two = tarnHollow({
  probes: [],
  pans: ['p1', 'p2'].map((id) => ({
    id,
    name: id === 'p1' ? 'Front pot' : 'Back pot',
    vessel: { shape: 'round' as const, diameter_mm: 350 },
    heat: { kind: 'propane' as const, power_w: 10_000 },
  })),
});
const STRENGTH_CALLS = ['near-finish', 'finish', 'past-finish'];
/** Front pot at a strength, °Bx, read by hand at 70 min; the back pot is poured into it a minute later. Its calls of strength that stand then. */
function standing(brix: number, back: Entry[], later: Mark[] = []): string[] {
  const minutes = (t: number, what: Mark): Entry => mark(t * MINUTE_MS, what);
  const noted = inOrder([
    minutes(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 30 }),
    ...back,
    minutes(70, { kind: 'reading', pan: 'p1', celsius: boilingAt(brix, 'maple'), sure: true }),
    minutes(70.2, { kind: 'density', pan: 'p1', brix, celsius: 15.56, sure: true }),
    minutes(71, { kind: 'transfer', from: 'p2', to: 'p1', all: true }),
    ...later.map((one, i) => minutes(74 + i, one)),
  ]);
  const { transitions } = foldAll(two, noted, (74 + later.length) * MINUTE_MS);
  return STRENGTH_CALLS.filter((call) => {
    const told = callsOf(transitions).filter((one) => one.startsWith(`p1 ${call} `));
    return told.at(-1) === `p1 ${call} raised`;
  });
}
/** By the sums it has long boiled dry, and nobody looked. */
const ranDry = [mark(MINUTE_MS, { kind: 'top-up', pan: 'p2', litres: 2, brix: 45 })];
const thinAndHot = [mark(69 * MINUTE_MS, { kind: 'top-up', pan: 'p2', litres: 9, brix: 2, celsius: 96 })];
const cooler: Mark = { kind: 'reading', pan: 'p1', celsius: boilingAt(25, 'maple'), sure: true };

test.each([62, 67.4])(
  'a call at %s °Bx stands when what is poured in is of any strength, until a reading shows it',
  (brix) => {
    for (const back of [[], ranDry]) {
      expect(standing(brix, back)).not.toEqual([]);
      expect(standing(brix, back, [cooler, cooler])).toEqual([]);
    }
    expect(standing(brix, thinAndHot)).toEqual([]);
  },
);
