// Syrup that the pans show: only as far as its sugar can have come out of the sap that went in.
import { expect, test } from 'vitest';
import type { Header } from '../../../src/core/boil/entries.ts';
import type { Batch } from '../../../src/core/season/boil-facts.ts';
import { balanceOf, boilFigures } from '../../../src/core/season/boil-figures.ts';
import { endForm } from '../../../src/core/season/end-form.ts';
import { factsOfEntries } from './fold-facts.ts';

const header: Header = {
  recording: 'panwarden',
  version: 1,
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow (invented)' },
  pans: [{ id: 'p1', sap: 'birch' }],
};
const poured = factsOfEntries(header, [{ t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 38, brix: 0.9 } }]);

const inPan = (litres: number): Batch => ({
  at: 60_000,
  pan: 'p1',
  litres,
  litresSigma: 0.05 * litres,
  brix: 66,
  brixSigma: 1,
  measured: false,
  burnt: false,
  unfinished: false,
});

test('a pan cannot hold more sugar than went in: its syrup is not known, and the end asks for what the sap can give', () => {
  const facts = { ...poured, leftUntold: [], left: [inPan(37.76)] };
  const figures = boilFigures(facts, {}, []);
  expect(figures).toMatchObject({ syrup_litres: null, syrup_kg: null, syrup_sugar_kg: null });
  // 38 L × 1.001 kg/L × 0.9 % = 0.342 kg of sugar; syrup of 66 °Bx holds 0.87 kg a litre (ICUMSA densities).
  expect(figures.expected_syrup_litres!.value).toBeCloseTo(0.39, 2);
  expect(endForm(facts, figures, {}).syrup_litres).toBeCloseTo(0.39, 2);
});

test('within what the sap can give, the pans tell it', () => {
  const { syrup_litres: syrup } = boilFigures({ ...poured, leftUntold: [], left: [inPan(0.4)] }, {}, []);
  expect(syrup).toMatchObject({ value: 0.4, from: 'pans' });
});

test('sap of which nobody noted the strength is as strong as the plan of the boil has it, as its pans took it; a pour’s own strength goes before', () => {
  const planned = { ...header, plan: { brix: 0.9, litres: 38, pans: [] } } as Header;
  const sapOf = (brix?: number) =>
    boilFigures(
      factsOfEntries(planned, [
        { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 38, ...(brix === undefined ? {} : { brix }) } },
      ]),
      {},
      [],
    ).sap_brix;
  expect(sapOf()).toMatchObject({ value: 0.9, from: 'plan' });
  expect(sapOf(1.3)).toMatchObject({ value: 1.3, from: 'marks' });
});

test.each([
  ['whose pans were taken away', poured],
  ['that aimed at no finish', { ...poured, finishBrix: null }],
])('syrup without its strength, of a boil %s, has no ratio where it holds more sugar than went in', (_, facts) => {
  // 1.3 L hold 0.79 kg even at 50 °Bx, and 0.36 kg went in.
  const figures = boilFigures(facts, { syrup: { litres: 1.3 } }, []);
  expect([balanceOf(figures), figures.ratio]).toEqual(['too-much', null]);
  const fair = boilFigures(facts, { syrup: { litres: 0.39 } }, []);
  expect([balanceOf(fair), fair.ratio === null]).toEqual([null, false]);
});

test('a boil whose pans were all taken away has the finish that the last of them aimed at', () => {
  const gone = factsOfEntries(header, [
    { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 38, brix: 0.9 } },
    { t: 60_000, set: { pans: [] } },
  ]);
  expect(gone.finishBrix).toBe(67);
  expect(boilFigures(gone, { syrup: { litres: 1.3 } }, [])).toMatchObject({ ratio: null, syrup_brix: { value: 67 } });
});

test('where nothing was drawn off and no syrup came of it the sugar is in the pans still; anything drawn off may have taken some', () => {
  const none = { syrup: { litres: 0 } };
  const figures = boilFigures(poured, none, []);
  expect(poured.leftUntold).toEqual(['p1']);
  expect(figures.left_sugar_kg!.value).toBeCloseTo(figures.sap_sugar_kg!.value, 9);
  expect([figures.gap_sugar_kg, balanceOf(figures)]).toEqual([null, null]);
  expect(boilFigures(poured, { ...none, lost_kg: 0.1 }, []).left_sugar_kg!.value).toBeCloseTo(0.242, 2);
  expect(boilFigures({ ...poured, takenUntold: ['p1'] }, none, []).left_sugar_kg).toBeNull();
  expect(boilFigures(poured, {}, []).left_sugar_kg).toBeNull();
});
