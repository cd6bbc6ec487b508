// Sap to syrup of a boil that was broken off: only the sap of what was finished counts.
import { expect, test } from 'vitest';
import type { Header } from '../../../src/core/boil/entries.ts';
import type { Batch } from '../../../src/core/season/boil-facts.ts';
import { balanceOf, boilFigures } from '../../../src/core/season/boil-figures.ts';
import { seasonTotals } from '../../../src/core/season/season.ts';
import { factsOfEntries } from './fold-facts.ts';

const header: Header = {
  recording: 'panwarden',
  version: 1,
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow (invented)' },
  pans: [
    { id: 'front', sap: 'maple' },
    { id: 'back', sap: 'maple' },
  ],
};
const poured = factsOfEntries(header, [
  { t: 0, mark: { kind: 'top-up', pan: 'front', litres: 40, brix: 2 } },
  { t: 0, mark: { kind: 'top-up', pan: 'back', litres: 40, brix: 2 } },
]);

const batch = (pan: string, litres: number, brix: number): Batch => ({
  at: 60_000,
  pan,
  litres,
  litresSigma: 0.02 * litres,
  brix,
  brixSigma: 0.02 * brix,
  measured: false,
  burnt: false,
  unfinished: false,
});

/** 40 L of 2 °Bx hold 0.805 kg of sugar (ICUMSA): 0.92 L of 66 °Bx, or 7.75 L of 10 °Bx. */
const finished = batch('front', 0.92, 66);
const thin = batch('back', 7.75, 10);

test('what stayed thin in another pan is no sap of the syrup', () => {
  const broken = boilFigures({ ...poured, leftUntold: [], left: [finished, thin] }, {}, []);
  expect(broken.sap_litres?.value).toBeCloseTo(80, 6);
  expect(broken.ratio?.value).toBeCloseTo(40 / 0.92, 0);
  const season = seasonTotals([{ started: header.started, figures: broken }], []);
  expect(season.ratio?.value).toBeCloseTo(broken.ratio!.value, 6);
});

test('nothing stayed thin: all of the sap counts', () => {
  const both = [finished, batch('back', 0.92, 66)];
  expect(boilFigures({ ...poured, leftUntold: [], left: both }, {}, []).ratio?.value).toBeCloseTo(80 / 1.84, 6);
});

test('sap of a strength that nobody knows, or more sugar than went in: not known', () => {
  const facts = { ...poured, leftUntold: [], left: [finished, thin] };
  const strange = { ...facts, saps: [], pours: facts.pours.map((pour) => ({ ...pour, brix: null })) };
  expect(boilFigures(strange, {}, []).ratio).toBeNull();
  // 1.84 L were bottled: what the pan showed as thin was finished in the kitchen.
  expect(boilFigures(facts, { syrup: { litres: 1.84, brix: 66 } }, []).ratio).toBeNull();
});

test('what was drawn off thin and finished outside is the syrup: all pours of sap over it, and no pour between pans counts', () => {
  const marks = [
    { kind: 'top-up', pan: 'front', litres: 40, brix: 2 },
    { kind: 'top-up', pan: 'back', litres: 30, brix: 2 },
    { kind: 'transfer', from: 'front', to: 'back', litres: 12 },
    { kind: 'top-up', pan: 'front', litres: 10 },
    { kind: 'transfer', from: 'back', to: 'front', all: true },
    { kind: 'draw-off', pan: 'front', litres: 5, brix: 30 },
  ] as const;
  const facts = {
    ...factsOfEntries(
      header,
      marks.map((mark, index) => ({ t: 1000 * index, mark })),
    ),
    left: [],
    leftUntold: [],
    takenUntold: [],
  };
  // 80 L of 2 °Bx hold 1.61 kg, 5 L of 30 °Bx 1.69 kg, 1.84 L of 66 °Bx 1.61 kg (ICUMSA).
  const figures = boilFigures(facts, { syrup: { litres: 1.84, brix: 66 } }, []);
  expect(figures.sap_litres?.value).toBeCloseTo(80, 6);
  expect(figures.ratio?.value).toBeCloseTo(80 / 1.84, 6);
  expect(balanceOf(figures)).toBe('closes');
  // Half of it was bottled only: the rest was drawn off thin, and stayed so.
  const other = boilFigures(
    { ...facts, taken: [{ ...facts.taken[0]!, litres: 2.5 }] },
    { syrup: { litres: 0.92, brix: 66 } },
    [],
  );
  expect(other.ratio?.value).toBeLessThan(0.6 * (80 / 0.92));
});
