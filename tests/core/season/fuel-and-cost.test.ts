// Fuel by weighing, by cord and by meter, and what a jar costs; what is not known of one fuel is not known of all.
import { expect, test } from 'vitest';
import type { Header, Mark } from '../../../src/core/boil/entries.ts';
import { boilFigures } from '../../../src/core/season/boil-figures.ts';
import type { BoilPage } from '../../../src/core/season/records.ts';
import { factsOfEntries } from './fold-facts.ts';

const header: Header = {
  recording: 'panwarden',
  version: 1,
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow (invented)' },
  pans: [{ id: 'p1' }],
};
const weigh = (t: number, kg: number): { t: number; mark: Mark } => ({ t, mark: { kind: 'fuel', pan: 'p1', kg } });
const entries = [weigh(0, 10), weigh(60_000, 8.5), weigh(120_000, 11), weigh(180_000, 9.5)];
const facts = factsOfEntries(header, entries);
const figures = (page: BoilPage) => boilFigures(facts, page, []);

test('weighings of one cylinder after another tell what was burned', () => {
  // 1.5 kg of the first, 1.5 kg of the second.
  expect(figures({}).fuel_kg).toMatchObject({ value: 3, from: 'marks' });
  expect(figures({}).fuel_mj!.value).toBeCloseTo(3 * 46.35, 6);
  expect(boilFigures(factsOfEntries(header, [weigh(0, 10)]), {}, []).fuel_kg).toBeNull();
});

test('the person’s own word stands over the weighings', () => {
  const page: BoilPage = { fuel: [{ kind: 'propane', before_kg: 12, after_kg: 7 }] };
  expect(figures(page).fuel_kg).toMatchObject({ value: 5, from: 'page' });
});

test('a cord is 15.3 million Btu (extension services, read) and a kilowatt-hour 3.6 MJ', () => {
  expect(figures({ fuel: [{ kind: 'wood', cords: 0.5 }] }).fuel_mj!.value).toBeCloseTo(8071, 0);
  const both = figures({
    fuel: [
      { kind: 'electric', kwh: 10 },
      { kind: 'wood', cords: 0.1 },
    ],
  });
  expect(both.fuel_mj!.value).toBeCloseTo(36 + 1614.2, 0);
  expect(both.fuel_kg).toBeNull();
  expect(both.fuel_kg_per_l).toBeNull();
});

test('a fuel of which nobody says how much makes all of it not known; a price that is missing makes the cost so', () => {
  const page: BoilPage = {
    fuel: [{ kind: 'propane', kg: 4, price: 10 }, { kind: 'wood' }],
    jars: [{ litres: 0.25, count: 8 }],
  };
  expect(figures(page)).toMatchObject({ fuel_kg: null, fuel_mj: null, cost: null, cost_a_jar: null });
  const paid = figures({ ...page, fuel: [{ kind: 'propane', kg: 4, price: 10 }], other_costs: 6 });
  expect(paid.cost).toMatchObject({ value: 16, low: 16, high: 16 });
  expect(paid.cost_a_jar!.value).toBe(2);
});

test('alarms of no use are counted once, whether said during the boil or after it', () => {
  const name = { alarm: 'low-level', pan: 'p1', port: null, raised: 60_000 };
  const told = { ...facts, raised: 3, noUse: [name] };
  const after: BoilPage = { no_use: [name, { ...name, raised: 90_000 }] };
  expect(boilFigures(told, after, [])).toMatchObject({ alarms: { value: 3 }, alarms_no_use: { value: 2 } });
});
