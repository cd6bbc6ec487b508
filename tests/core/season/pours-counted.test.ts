// What went into the pans, as a season counts it: an amount that is asked about, and sap after something that had been boiled before.
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/core/boil/entries.ts';
import { onePot, wholeBoil } from '../simulation/one-pot.ts';
import { factsOfEntries } from './fold-facts.ts';

const MINUTE_MS = 60_000;
const POURED_AT = 50 * MINUTE_MS;
const UNTIL = 72 * MINUTE_MS;

const pot = onePot({
  endsAt: 120 * MINUTE_MS,
  probe: { noiseCelsius: 0.05 },
  deeds: [
    { when: { at: POURED_AT }, acts: [{ act: 'pour', pan: 'p1', litres: 3, brix: 2, celsius: 5 }], forgotten: 1 },
  ],
});
const pressure: Entry = { t: 0, mark: { kind: 'pressure', hpa: 940 } };
const filled: Entry = { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 10, brix: 20, celsius: 95 } };
const boil = wholeBoil(pot).entries.filter((entry) => !('run' in entry) && entry.t <= UNTIL);

/** The litres that are counted as poured in, in order, of a boil in which so much was noted for 3 L. */
function counted(litres: number): number[] {
  const note: Entry = { t: POURED_AT + 30_000, mark: { kind: 'top-up', pan: 'p1', litres, brix: 2, celsius: 5 } };
  const entries = [pressure, filled, ...boil, note].sort((a, b) => a.t - b.t);
  return factsOfEntries(pot.header, entries).pours.map((pour) => pour.litres);
}

test('an amount that its dip contradicts counts in the sap as it counts in the pan, not as nothing', () => {
  expect(counted(3)).toEqual([10, 3]);
  const [first, asked] = counted(10.5);
  expect(first).toBe(10);
  expect(asked).toBeGreaterThan(2);
  expect(asked).toBeLessThan(7);
});

test('what had been boiled before gives its strength to no sap that is poured after it', () => {
  const half: Entry = { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 8, brix: 40 } };
  const sap = (t: number, brix?: number): Entry => ({
    t,
    mark: { kind: 'top-up', pan: 'p1', litres: 20, ...(brix && { brix }) },
  });
  const strengths = (...entries: Entry[]): (number | null)[] =>
    factsOfEntries(pot.header, entries).pours.map(({ brix }) => brix);
  expect(strengths(half, sap(600_000), sap(1_200_000, 2), sap(1_800_000))).toEqual([40, 2, 2, 2]);
  expect(strengths(half, sap(600_000))).toEqual([40, null]);
  const { pours } = factsOfEntries(pot.header, [half, sap(600_000)]);
  expect(pours.map(({ boiledBefore }) => boiledBefore)).toEqual([true, undefined]);
});
