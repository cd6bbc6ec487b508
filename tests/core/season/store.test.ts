// Sap in store: its age over months and leap days, how long it keeps by how cold it is, and how much of it there is.
import { expect, test } from 'vitest';
import type { Collection } from '../../../src/core/season/records.ts';
import { collectionShown, daysBetween, keepsDays, storeLevel } from '../../../src/core/season/store.ts';

const sap = (day: string, more: Partial<Collection> = {}): Collection => ({
  ...{ id: `${day} ${JSON.stringify(more)}`, day, litres: 50, brix: 2, sap: 'maple', store_celsius: 3 },
  ...more,
});

test('days are counted over the ends of months and years and over leap days, as the calendar does', () => {
  const days = [
    '2026-12-31',
    '2027-01-01',
    '2027-02-28',
    '2027-03-01',
    '2028-02-28',
    '2028-02-29',
    '2028-03-01',
    '2100-02-28',
    '2100-03-01',
  ];
  for (const from of days) {
    for (const to of days) expect(daysBetween(from, to)).toBe((Date.parse(to) - Date.parse(from)) / 86_400_000);
  }
});

test('birch keeps two to three days in the cold, maple longer, and both for less the warmer they are', () => {
  expect(keepsDays('birch', 3)).toBe(3);
  expect(keepsDays('maple', 3)).toBe(5);
  for (const kind of ['birch', 'maple'] as const) {
    const keeps = [0, 3, 6, 9, 15].map((celsius) => keepsDays(kind, celsius));
    expect(keeps).toEqual(keeps.toSorted((a, b) => b - a));
    expect(keepsDays(kind, null)).toBe(keepsDays(kind, 4));
  }
});

test('sap is fresh, on its last good day, or past it; what was boiled or poured away is not asked about', () => {
  const state = (day: string, more: Partial<Collection> = {}) =>
    collectionShown(sap(day, { sap: 'birch', ...more }), '2027-04-20').keeping?.state;
  expect(state('2027-04-18')).toBe('fresh');
  expect(state('2027-04-17')).toBe('use-now');
  expect(state('2027-04-16')).toBe('past');
  expect(state('2027-04-16', { boil: 'run-1' })).toBeUndefined();
  expect(state('2027-04-16', { spoilt: true })).toBeUndefined();
});

test('the store holds what came in less what was boiled or poured away; its sugar is not known where one strength is not', () => {
  const all = [
    sap('2027-04-18'),
    sap('2027-04-19'),
    sap('2027-04-19', { boil: 'run-1' }),
    sap('2027-04-10', { spoilt: true }),
  ];
  const level = storeLevel(all, '2027-04-20');
  expect(level).toMatchObject({ collections: 2, litres: 100, oldest_days: 2, past_litres: 0 });
  // 100 L of 2 °Bx at 1.006 kg/L (CRC, read).
  expect(level.sugar_kg).toBeCloseTo(2.012, 2);
  expect(storeLevel([...all, sap('2027-04-20', { brix: undefined })], '2027-04-20').sugar_kg).toBeNull();
  expect(storeLevel([], '2027-04-20')).toEqual({
    ...{ collections: 0, litres: 0, sugar_kg: 0, oldest_days: null, use_now_litres: 0, past_litres: 0 },
  });
});
