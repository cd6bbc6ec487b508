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
  const season = seasonTotals([{ started: header.started, figures: broken, saps: ['maple'] }], []);
  expect(season.ratio?.value).toBeCloseTo(broken.ratio!.value, 6);
});

test('nothing stayed thin: all of the sap counts', () => {
  const both = [finished, batch('back', 0.92, 66)];
  expect(boilFigures({ ...poured, leftUntold: [], left: both }, {}, []).ratio?.value).toBeCloseTo(80 / 1.84, 6);
});

test('sap of a strength that nobody knows, or more sugar than went in: not known', () => {
  const facts = { ...poured, leftUntold: [], left: [finished, thin] };
  const strange = { ...facts, saps: [], pours: facts.pours.map((pour) => ({ ...pour, brix: null })) };
  const both = [{ pans: ['front', 'back'], saps: ['maple'] }];
  expect(boilFigures({ ...strange, joined: both }, {}, []).ratio).toBeNull();
  // Nothing was poured between the two: what became syrup is known without its strength.
  expect(boilFigures(strange, {}, []).ratio?.value).toBeCloseTo(40 / 0.92, 6);
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

const three: Header = {
  ...header,
  pans: [
    { id: 'p1', sap: 'birch' },
    { id: 'p2', sap: 'birch' },
    { id: 'p3', sap: 'birch' },
    { id: 'p4', sap: 'maple' },
  ],
};

/** 94 L of birch sap in two pans that were poured together, 8 L of concentrate alone in a third, 21 L of maple in a fourth. */
const mixed = {
  ...factsOfEntries(three, [
    { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 45, brix: 0.9 } },
    { t: 0, mark: { kind: 'top-up', pan: 'p2', litres: 41, brix: 0.9 } },
    { t: 0, mark: { kind: 'top-up', pan: 'p3', litres: 8, brix: 12 } },
    { t: 0, mark: { kind: 'top-up', pan: 'p4', litres: 21, brix: 2.1 } },
    { t: 1000, mark: { kind: 'transfer', from: 'p2', to: 'p1', all: true } },
  ]),
  left: [batch('p1', 17.3, 4.4), batch('p4', 6.2, 6.1)],
  leftUntold: [],
  taken: [batch('p3', 1.08, 67)],
};

test('the syrup came out of one pan: its own sap over it, by the balance and by the rules too', () => {
  const figures = boilFigures(mixed, { syrup: { litres: 1.1, brix: 67 } }, []);
  expect(figures.sap_litres?.value).toBeCloseTo(115, 6);
  expect(figures.ratio?.value).toBeCloseTo(8 / 1.1, 6);
  expect(figures.exact_ratio?.value).toBeCloseTo(7.1, 1);
  const season = seasonTotals([{ started: header.started, figures, saps: ['maple'] }], []);
  expect(season.ratio?.value).toBeCloseTo(8 / 1.1, 6);
  expect(season.ratio?.high).toBeCloseTo(figures.ratio!.high!, 2);
  // A sum that was typed afterwards is shared out as the pours were.
  const more = boilFigures(mixed, { syrup: { litres: 1.1, brix: 67 }, sap: { litres: 120 } }, []);
  expect(more.ratio?.value).toBeCloseTo((120 * 8) / 115 / 1.1, 6);
});

test('kinds of sap are never mixed: of syrup from a pan of each, and of both in pans that gave none, nothing is told', () => {
  const both = { ...mixed, left: [mixed.left[0]!], taken: [...mixed.taken, batch('p4', 0.5, 66)] };
  const page = { syrup: { litres: 1.6, brix: 66 } };
  expect(boilFigures(both, page, [])).toMatchObject({ ratio: null, exact_ratio: null });
  const none = { ...mixed, taken: [] };
  expect(boilFigures(none, page, [])).toMatchObject({ ratio: null, exact_ratio: null });
  const untold = { ...mixed, leftUntold: ['p1'], left: [] };
  expect(boilFigures(untold, page, []).ratio).toBeNull();
  // All that was drawn off is syrup, and as much as is told of: it came from there, whatever is left in the others.
  const drawn = untold.taken.reduce((sum, { litres }) => sum + litres, 0);
  expect(boilFigures(untold, { syrup: { litres: drawn, brix: 66 } }, []).ratio?.value).toBeCloseTo(8 / drawn, 1);
});
