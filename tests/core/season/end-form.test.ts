// What is offered at the end of a boil: of one that was broken off, no syrup that nobody has seen.
import { expect, test } from 'vitest';
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import type { BoilFacts } from '../../../src/core/season/boil-facts.ts';
import { balanceOf, boilFigures } from '../../../src/core/season/boil-figures.ts';
import { type EndForm, endForm } from '../../../src/core/season/end-form.ts';
import { factsOfEntries } from './fold-facts.ts';

const header: Header = {
  recording: 'panwarden',
  version: 1,
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow (invented)', altitude_m: 0 },
  ports: [{ id: 'A' }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
  pans: [{ id: 'p1', name: 'Back pot', sap: 'maple', probe: 'A/1' }],
};
const filled: Entry = { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 38, brix: 2 } };
const jarsBefore = { jars: [{ litres: 0.25, count: 4 }] };

const formOf = (facts: BoilFacts): EndForm => endForm(facts, boilFigures(facts, {}, []), jarsBefore);

/** One line a second of a pan that stands at `celsius`. */
const warm = (celsius: number, seconds: number): Entry[] =>
  Array.from({ length: seconds }, (_, second) => ({ t: 1000 * second, port: 'A', line: `T1=${celsius}` }));

test('a boil that was broken off while it warmed offers no syrup, no strength and no jars, and says that it was', () => {
  const facts = factsOfEntries(header, [filled, ...warm(60, 300)]);
  expect(boilFigures(facts, {}, []).expected_syrup_litres!.value).toBeGreaterThan(0.8);
  expect(formOf(facts)).toMatchObject({ syrup_litres: null, syrup_brix: null, jars: null, broken_off: true });
});

const thin = {
  at: 0,
  pan: 'p2',
  litres: 9,
  litresSigma: 1,
  brix: 12,
  brixSigma: 1,
  measured: false,
  burnt: false,
  unfinished: false,
};

test('one pan called and another left thin: not all of the sap became syrup', () => {
  const facts = factsOfEntries(header, [filled]);
  const called = { ...facts, left: [thin], leftUntold: [], outcomes: ['finished' as const] };
  expect(formOf(called)).toMatchObject({ syrup_litres: null, broken_off: true });
});

test('once the finish was called and nothing stands in the pans, what the sap can give is offered', () => {
  const facts = factsOfEntries(header, [filled]);
  const form = formOf({ ...facts, left: [], leftUntold: [], outcomes: ['finished'] });
  // 38 L of 2 °Bx at 66.9 °Bx: 38 × 1.0060 × 2 / (1.328 × 66.9), densities after ICUMSA.
  expect(form.syrup_litres).toBeCloseTo(0.86, 2);
  expect(form).toMatchObject({ syrup_brix: 66.9, jars: { litres: 0.25, count: 3 }, broken_off: false });
});

test('what was measured and drawn off as syrup leads over what the sap could give', () => {
  const facts = factsOfEntries(header, [filled]);
  const batch = { ...thin, pan: 'p1', litres: 0.9, brix: 66, measured: true };
  const drawn = { ...facts, taken: [batch], left: [], leftUntold: ['Back pot'], outcomes: ['finished' as const] };
  expect(boilFigures(drawn, {}, []).syrup_litres).toBeNull();
  expect(formOf(drawn)).toMatchObject({ syrup_litres: 0.9, jars: { litres: 0.25, count: 3 } });
  // Thin liquid is no syrup, and what the program reckoned is no measurement.
  expect(formOf({ ...drawn, taken: [{ ...batch, brix: 20 }] }).syrup_litres).toBeNull();
  expect(formOf({ ...drawn, taken: [{ ...batch, measured: false }] }).syrup_litres).toBeNull();
});

test('the density of the sap is not offered as the syrup’s: only one of syrup is, or the finish that was called', () => {
  const facts = factsOfEntries(header, [filled]);
  const byHand = { ...facts, boilingSeconds: null, left: [], leftUntold: [], takenUntold: ['p1'] };
  const offered = (brix: number): number | null => formOf({ ...byHand, density: { brix, sigma: 0.5 } }).syrup_brix;
  expect(offered(0.9)).toBeNull();
  expect(formOf(byHand).syrup_brix).toBeNull();
  expect(offered(66)).toBe(66);
  const birch = { ...byHand, finishBrix: 60, density: { brix: 58, sigma: 0.5 } };
  expect(formOf(birch).syrup_brix).toBe(58);
});

test('what was measured is told from what is guessed: a density goes before the pan model and the finish', () => {
  const facts = factsOfEntries(header, [filled]);
  const gone = { ...facts, left: [], leftUntold: [], outcomes: ['finished' as const] };
  expect(formOf(gone)).toMatchObject({ syrup_brix: 66.9, measured: { syrup: false, brix: false } });
  const batch = { ...thin, pan: 'p1', litres: 0.9, brix: 66.9, brixSigma: 2.7, measured: true };
  const drawn = { ...gone, taken: [batch] };
  expect(formOf(drawn)).toMatchObject({ syrup_litres: 0.9, measured: { syrup: true, brix: false } });
  expect(formOf({ ...drawn, taken: [{ ...batch, brixSigma: 1 }] }).measured.brix).toBe(true);
  const read = formOf({ ...drawn, density: { brix: 64.2, sigma: 0.5 } });
  expect(read).toMatchObject({ syrup_brix: 64.2, measured: { brix: true } });
  expect(formOf({ ...drawn, taken: [{ ...batch, measured: false }] }).measured.syrup).toBe(false);
});

test('the last density of syrup counts, by when it was read, though the sap of another pan was measured after it', () => {
  const two = { ...header, pans: [...header.pans!, { id: 'p2', name: 'Front pot', sap: 'maple' as const }] };
  const read = (pan: string, brix: number, at: number): Entry => ({
    t: 9000,
    mark: { kind: 'density', pan, brix, instrument: 'refractometer', happened: at, sure: true },
  });
  const density = (...marks: Entry[]): number | undefined => factsOfEntries(two, [filled, ...marks]).density?.brix;
  expect(density(read('p1', 66, 7000), read('p2', 10, 8000))).toBeCloseTo(66, 0);
  expect(density(read('p1', 66, 8000), read('p1', 60, 7000))).toBeCloseTo(66, 0);
  // That syrup was thinned again.
  expect(density(read('p1', 66, 7000), read('p1', 10, 8000))).toBeCloseTo(10, 0);
});

test('what stands in its pan short of the finish is not syrup out, however thick; once it is called it is', () => {
  const thick: Entry = { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 6, brix: 60 } };
  // Maple of 60 °Bx boils some 3 °C over water.
  const leftOf = (finishBrix: number): ReturnType<typeof boilFigures> => {
    const pans = [{ ...header.pans![0]!, finish: { brix: finishBrix } }];
    return boilFigures(factsOfEntries({ ...header, pans }, [thick, ...warm(103.1, 600)]), {}, []);
  };
  const unfinished = leftOf(66.9);
  expect(unfinished).toMatchObject({ syrup_litres: null, syrup_brix: null, ratio: null });
  // 6 L of 60 °Bx hold 6 × 1.2865 × 0.6 = 4.6 kg of sugar (density after ICUMSA).
  expect(unfinished.left_sugar_kg!.value).toBeCloseTo(4.6, 0);
  const finished = leftOf(58);
  expect(finished.syrup_litres!.value).toBeGreaterThan(4);
});

test('how long it boiled, and the water an hour, is not known of a boil whose fire was lit before it was watched', () => {
  const waited = 7_200_000;
  const later = warm(103.1, 3600).map((entry) => ({ ...entry, t: entry.t + waited }));
  const gap = { t: waited, run: 'gap', seconds: waited / 1000 } as const;
  const figures = (entries: Entry[]) =>
    boilFigures(factsOfEntries(header, entries), { syrup: { litres: 0.86, brix: 66.9 } }, []);
  expect(figures([gap, ...later])).toMatchObject({ boiling_hours: null, water_off_l_per_h: null });
  // The program takes a few ms to start.
  const started = { ...gap, seconds: waited / 1000 - 0.037 };
  expect(figures([started, ...later])).toMatchObject({ boiling_hours: null, water_off_l_per_h: null });
  expect(figures([gap, ...later]).hours!.value).toBeCloseTo(3, 1);
  expect(figures(warm(103.1, 3600)).boiling_hours!.value).toBeCloseTo(1, 1);
});

test('of a boil of minutes the water an hour is not known', () => {
  const facts = factsOfEntries(header, [filled]);
  const rate = (minutes: number): number | null =>
    boilFigures({ ...facts, left: [], leftUntold: [], boilingSeconds: 60 * minutes }, page, []).water_off_l_per_h
      ?.value ?? null;
  const page = { syrup: { litres: 0.86, brix: 66.9 } };
  expect(rate(6)).toBeNull();
  expect(rate(60)).toBeCloseTo(37, 0);
});

test('of a boil that was broken off what was drawn off as syrup is told, and not where one drawing-off is unknown', () => {
  const facts = factsOfEntries(header, [filled]);
  const syrup = { ...thin, pan: 'p1', litres: 0.4, brix: 67 };
  const called = { ...facts, taken: [syrup], left: [], leftUntold: ['Front pot'], outcomes: ['finished' as const] };
  expect(formOf(called)).toMatchObject({ broken_off: true, drawn_litres: 0.4 });
  expect(formOf({ ...called, takenUntold: ['Back pot'] }).drawn_litres).toBeNull();
  expect(formOf({ ...called, taken: [thin] }).drawn_litres).toBeNull();
});

test('of several kinds of sap a draw-off is asked for where none was noted, and of one kind none', () => {
  const facts = factsOfEntries(header, [filled]);
  expect(formOf(facts).asks_draw_off).toBe(false);
  const two = { ...facts, saps: ['maple', 'birch'] as BoilFacts['saps'] };
  expect(formOf(two).asks_draw_off).toBe(true);
  expect(formOf({ ...two, taken: [thin] }).asks_draw_off).toBe(false);
});

test('more syrup than the sap has sugar for begins where the page of the boil would say so', () => {
  const facts = { ...factsOfEntries(header, [filled]), left: [], leftUntold: [], outcomes: ['finished' as const] };
  const { most_syrup: most } = formOf(facts);
  const balance = (litres: number) => balanceOf(boilFigures(facts, { syrup: { litres, brix: most!.brix } }, []));
  expect(most!.litres).toBeGreaterThan(0.86);
  expect(balance(1.05 * most!.litres)).toBe('too-much');
  expect(balance(0.86)).not.toBe('too-much');
});

test('of a density that nobody told the question takes the least that the finish lets expect, and of sap that is asked for each litre', () => {
  const told = formOf(factsOfEntries(header, [filled])).most_syrup!;
  // The finish, 66.9 °Bx, is known to 1.5 °Bx: the low end of its middle 80 %.
  expect(told).toMatchObject({ aimed: true, brix: expect.closeTo(65, 0) as number });
  expect(told.each_litre_of_sap).toBeUndefined();
  const untold = formOf({ ...factsOfEntries(header, [filled]), pours: [] }).most_syrup!;
  expect(untold.each_litre_of_sap).toBe(true);
  // Maple sap as usual, 2 °Bx known to 40 %: 0.03 kg of sugar a litre at the most, and syrup holds 0.86 kg a litre.
  expect(untold.litres).toBeGreaterThan(0.02);
  expect(untold.litres).toBeLessThan(0.05);
});

test('of a boil by hand that nobody knows to have boiled, how long is not known; a probe that saw none shows none', () => {
  const byHand: Header = { ...header, probes: [], pans: [{ id: 'p1', name: 'Back pot', sap: 'maple' }] };
  const read: Entry = { t: 60_000, mark: { kind: 'reading', pan: 'p1', celsius: 40 } };
  const later: Entry = { t: 600_000, mark: { kind: 'note', text: 'left it to the neighbour' } };
  const hours = (of: Header, entries: Entry[]) => boilFigures(factsOfEntries(of, entries), {}, []).boiling_hours;
  expect(hours(byHand, [filled, read, later])).toBeNull();
  expect(hours(header, [filled, ...warm(60, 300)])!.value).toBe(0);
});

test('of what had mostly been boiled before it was poured in, no ratio to syrup is told', () => {
  const thick: Entry = { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 2, brix: 48 } };
  const ratio = (litres: number, ...entries: Entry[]) => {
    const facts = { ...factsOfEntries(header, entries), left: [], leftUntold: [] };
    return boilFigures(facts, { syrup: { litres, brix: 66.9 } }, []).ratio;
  };
  expect(ratio(1.3, thick)).toBeNull();
  expect(ratio(0.86, filled)!.value).toBeCloseTo(44, 0);
  expect(ratio(1.3, { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 10, brix: 2 } }, thick)).toBeNull();
});
