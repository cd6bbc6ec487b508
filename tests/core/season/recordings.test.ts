// The figures of the recordings that stand among the fixtures: sugar adds up where somebody noted it, and is not known where nobody did.
import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import type { Header } from '../../../src/core/boil/entries.ts';
import type { BoilFacts } from '../../../src/core/season/boil-facts.ts';
import { balanceOf, boilFigures } from '../../../src/core/season/boil-figures.ts';
import { parseEntry } from '../../../src/protocol/recording.ts';
import { factsOfEntries } from './fold-facts.ts';

/** Whole days of entries are folded. */
vi.setConfig({ testTimeout: 60_000 });

function factsOf(name: string): BoilFacts {
  const path = new URL(`../../../fixtures/recordings/${name}.boil.jsonl`, import.meta.url);
  const [header = '', ...lines] = readFileSync(path, 'utf8').trim().split('\n');
  const entries = lines.flatMap((line) => {
    const parsed = parseEntry(line);
    return parsed.ok ? [parsed.entry] : [];
  });
  return factsOfEntries(JSON.parse(header) as Header, entries);
}

test.each([
  'birch-one-pan',
  'maple-on-wood',
  'passing-front',
  'three-pots-poured-together',
  'pulled-cable',
  'lost-probe',
])('%s: marks are right, and sugar in and out part by less than three in a hundred', (name) => {
  const figures = boilFigures(factsOf(name), {}, []);
  expect(Math.abs(figures.gap_sugar_kg!.value) / figures.sap_sugar_kg!.value).toBeLessThan(0.03);
  expect(balanceOf(figures)).toBe('closes');
});

test('a day of many pours, some of which only their dips tell of, is counted with them', () => {
  const facts = factsOf('topped-up-day');
  expect(facts.pours.filter(({ from }) => from === 'seen').length).toBeGreaterThan(3);
  const figures = boilFigures(facts, {}, []);
  expect(figures.sap_litres!.from).toBe('marks-and-seen');
  expect(balanceOf(figures)).toBe('closes');
  // Over twelve hours at a boil, and the water that left in them.
  expect(figures.boiling_hours!.value).toBeGreaterThan(12);
  expect(figures.water_off_l_per_h!.value).toBeCloseTo(
    figures.water_off_litres!.value / figures.boiling_hours!.value,
    6,
  );
});

test('where nobody noted what was filled in, sap and balance are not known, and the pans are named', () => {
  const facts = factsOf('reference-pot');
  expect(facts.unnoted).toEqual(['Front pot', 'Back pot']);
  const figures = boilFigures(facts, {}, []);
  for (const name of ['sap_litres', 'sap_sugar_kg', 'water_off_litres', 'ratio', 'gap_sugar_kg'] as const) {
    expect(figures[name], name).toBeNull();
  }
  expect(balanceOf(figures)).toBeNull();
  const told = boilFigures(facts, { sap: { litres: 60, brix: 2.6 }, syrup: { kg: 2.3, brix: 66.9 } }, []);
  expect(told.sap_litres).toMatchObject({ value: 60, from: 'page' });
  expect(told.ratio!.value).toBeCloseTo(60 / (2.3 / 1.328), 0);
  // What is still in the back pot nobody knows.
  expect(told.gap_sugar_kg).toBeNull();
});

test('what became of a boil is told by its calls', () => {
  expect(factsOf('scorched').outcomes).toEqual(['finished', 'past-finish', 'scorch-risk', 'burnt']);
  expect(factsOf('batch-too-small').outcomes).toEqual(['finished']);
});

test('what stood at over two hundred degrees and was thrown away is no syrup, and is none left in the pan', () => {
  const facts = factsOf('scorched');
  expect(facts.taken).toMatchObject([{ litres: 2.42, burnt: true }]);
  const figures = boilFigures(facts, {}, []);
  expect(figures.syrup_litres).toMatchObject({ value: 0 });
  expect([figures.ratio, figures.syrup_brix, figures.left_sugar_kg?.value ?? 0]).toEqual([null, null, 0]);
  // Somebody who weighed what could be saved is believed.
  expect(boilFigures(facts, { syrup: { kg: 0.4 } }, []).syrup_kg).toMatchObject({ value: 0.4, from: 'page' });
});

test('a pot that nobody looked at for hours may hold sap or sugar: what is left in it is not known', () => {
  const header: Header = {
    recording: 'panwarden',
    version: 1,
    started: '2027-04-18T07:30:00Z',
    site: { altitude_m: 640 },
    pans: [
      {
        id: 'p1',
        name: 'Front pot',
        sap: 'birch',
        vessel: { shape: 'round', diameter_mm: 250 },
        heat: { kind: 'electric', power_w: 2000 },
      },
    ],
  };
  const facts = factsOfEntries(header, [
    { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 4, brix: 1.2 } },
    { t: 30 * 60_000, mark: { kind: 'reading', pan: 'p1', celsius: 98 } },
    { t: 190 * 60_000, run: 'ended' },
  ]);
  expect(facts.leftUntold).toEqual(['Front pot']);
  expect(boilFigures(facts, {}, []).syrup_brix).toBeNull();
});
