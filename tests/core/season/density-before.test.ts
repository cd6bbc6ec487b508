// A sample of what was poured together or boiled on since says nothing of the syrup that came of it.
import { expect, test } from 'vitest';
import type { Entry, Header, Mark } from '../../../src/core/boil/entries.ts';
import { boilFigures } from '../../../src/core/season/boil-figures.ts';
import { type EndForm, endForm } from '../../../src/core/season/end-form.ts';
import { boilingAt } from '../boil/tarn-hollow.ts';
import { factsOfEntries } from './fold-facts.ts';

const MINUTE_MS = 60_000;
const vessel = { shape: 'round-sloped' as const, bottom_diameter_mm: 300, top_diameter_mm: 320, height_mm: 280 };
const pan = { sap: 'maple' as const, vessel, heat: { kind: 'propane' as const, power_w: 8000 } };
const header: Header = {
  recording: 'panwarden',
  version: 1,
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow (invented)', altitude_m: 0 },
  pans: [
    { id: 'p1', name: 'Back pot', ...pan },
    { id: 'p2', name: 'Front pot', ...pan },
  ],
};
const at = (minutes: number, mark: Mark): Entry => ({ t: minutes * MINUTE_MS, mark });
const filled = at(0, { kind: 'top-up', pan: 'p1', litres: 4, brix: 55 });
const read = (minutes: number, brix: number): Entry =>
  at(minutes, { kind: 'reading', pan: 'p1', celsius: boilingAt(brix, 'maple') });
const sample = (minutes: number, brix: number): Entry =>
  at(minutes, { kind: 'density', pan: 'p1', brix, celsius: 15.56 });
const off = (minutes: number): Entry => at(minutes, { kind: 'flame', pan: 'p1', level: 0 });

function offered(entries: readonly Entry[]): Pick<EndForm, 'syrup_brix' | 'measured'> {
  const facts = factsOfEntries(header, entries);
  return endForm(facts, boilFigures(facts, {}, []), {});
}

test('a sample of what is taken off soon after is what was measured', () => {
  const form = offered([
    filled,
    read(8, 65),
    read(9, 66.5),
    sample(9.5, 66.7),
    off(10.2),
    at(14, { kind: 'note', text: 'x' }),
  ]);
  expect(form.measured.brix).toBe(true);
  expect(form.syrup_brix).toBeCloseTo(66.7, 3);
});

test('a sample that was boiled on is none of the syrup', () => {
  const form = offered([
    filled,
    read(4, 60.5),
    sample(4.5, 61),
    read(8, 65),
    read(10, 66.9),
    off(10.5),
    at(14, { kind: 'note', text: 'x' }),
  ]);
  expect(form.measured.brix).toBe(false);
  expect(form.syrup_brix ?? 66.9).toBeGreaterThan(64);
});

test('nor is one that was taken before another pan was poured in', () => {
  const joined = at(5, { kind: 'transfer', from: 'p2', to: 'p1', all: true });
  const form = offered([filled, read(4, 60.5), sample(4.5, 61), joined, off(5.5), at(14, { kind: 'note', text: 'x' })]);
  expect(form.measured.brix).toBe(false);
});
