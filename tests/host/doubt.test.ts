// A mark that can hardly be meant is asked about before it is noted: it is tried on a copy, and the boil stays as it was.
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../src/core/boil/entries.ts';
import { panReadings } from '../../src/core/boil/fold.ts';
import { doubtAbout } from '../../src/host/doubt.ts';
import { formOf } from '../../src/language/host-words.ts';
import { boilingAt, foldAll, mark, tarnHollow } from '../core/boil/tarn-hollow.ts';

const MINUTE_MS = 60_000;
const NOW = 6 * MINUTE_MS;
const vessel = { shape: 'round-sloped' as const, bottom_diameter_mm: 300, top_diameter_mm: 320, height_mm: 280 };
const header = tarnHollow({
  probes: [],
  pans: [
    { id: 'p1', name: 'Back pot', sap: 'birch', vessel, heat: { kind: 'propane', power_w: 9000 } },
    { id: 'p2', name: 'Front pot', sap: 'maple', vessel },
    { id: 'p3', name: 'Side pot', sap: { sucrose: 0.9, glucose: 0.05, fructose: 0.05 } },
  ],
});
const poured: Entry[] = ['p1', 'p2', 'p3'].map((pan) => mark(0, { kind: 'top-up', pan, litres: 10, brix: 2 }));
const boiled = mark(MINUTE_MS, { kind: 'reading', pan: 'p1', celsius: boilingAt(2, 'birch') });

/** What is asked about a mark after ten litres in each pan and what else was noted; each sentence is known to the catalogue. */
function asked(what: Mark, ...more: Entry[]): string | null {
  const { state } = foldAll(header, [...poured, boiled, ...more], NOW);
  const before = JSON.stringify([state.marks, panReadings(state, NOW)]);
  const sentence = doubtAbout(what, state, NOW);
  expect(JSON.stringify([state.marks, panReadings(state, NOW)])).toBe(before);
  if (sentence !== null) expect(formOf(sentence)).not.toBeNull();
  return sentence;
}

test('a depth, a density and a reading that what went in contradicts', () => {
  expect(asked({ kind: 'depth', pan: 'p1', mm: 40 })).toBe('Back pot: 40 mm is far from what went in and boiled away.');
  expect(asked({ kind: 'depth', pan: 'p1', mm: 300 })).toContain('deeper than the vessel itself, which is 280 mm high');
  expect(asked({ kind: 'density', pan: 'p1', brix: 66 })).toContain('66.0 °Bx is far from what went in');
  expect(asked({ kind: 'reading', pan: 'p1', celsius: 104 })).toContain(
    '104.0 °C was read; by what was noted of it, this thermometer should show about 100.0 °C',
  );
});

test('a depth that is a fifth off the count is asked about, one that is a tenth off is not', () => {
  const counted = panReadings(foldAll(header, [...poured, boiled], NOW).state, NOW)[0]!.depth_mm!;
  const measured = (share: number) => asked({ kind: 'depth', pan: 'p1', mm: Math.round(counted * share) });
  expect(measured(0.78)).toContain('is far from what went in and boiled away');
  expect(measured(1.25)).toContain('is far from what went in and boiled away');
  expect(measured(0.9)).toBeNull();
  expect(measured(1.1)).toBeNull();
});

test('a reading that no sap on a fire has, or that the pan cannot have come to', () => {
  const read = (celsius: number, ...more: Entry[]) => asked({ kind: 'reading', pan: 'p1', celsius }, ...more);
  expect(read(-6)).toBe('Back pot: -6.0 °C is below freezing, and no sap on a fire is so cold.');
  expect(read(130)).toBe('Back pot: 130.0 °C is hotter than any syrup boils.');
  expect(read(21)).toMatch(
    /^Back pot: 21\.0 °C is far colder than the \d+\.\d °C that it showed, and nothing was poured in since\.$/u,
  );
  expect(read(21, mark(2 * MINUTE_MS, { kind: 'top-up', pan: 'p1', litres: 5 }))).toBeNull();
  expect(asked({ kind: 'reading', pan: 'p1', celsius: 21, happened: 0 })).toBeNull();
  expect(asked({ kind: 'reading', pan: 'p2', celsius: 21 })).toBeNull();
});

test('what fits is noted without a question', () => {
  expect(asked({ kind: 'depth', pan: 'p1', mm: 138 })).toBeNull();
  expect(asked({ kind: 'density', pan: 'p1', brix: 2.1, celsius: 20 })).toBeNull();
  expect(asked({ kind: 'reading', pan: 'p1', celsius: 100.2 })).toBeNull();
  expect(asked({ kind: 'top-up', pan: 'p1', litres: 5 })).toBeNull();
  expect(asked({ kind: 'draw-off', pan: 'p1', litres: 3 })).toBeNull();
  expect(asked({ kind: 'flame', pan: 'p1', level: 1 })).toBeNull();
});

test('more than fits, with what is in it already, and more than is there', () => {
  expect(asked({ kind: 'top-up', pan: 'p1', litres: 15 })).toBe(
    'Back pot: that is more than fits. It holds about 21.1 L up to its rim.',
  );
  expect(asked({ kind: 'draw-off', pan: 'p1', litres: 20 })).toMatch(/more than is in it, about (9|10)\.\d L\.$/u);
});

test('taking from a pan that was emptied, unless it was before that', () => {
  const gone = mark(3 * MINUTE_MS, { kind: 'draw-off', pan: 'p1', all: true });
  const empty = 'Back pot is empty: all of it was noted as taken out.';
  expect(asked({ kind: 'draw-off', pan: 'p1', litres: 1 }, gone)).toBe(empty);
  expect(asked({ kind: 'transfer', from: 'p1', to: 'p2', all: true }, gone)).toBe(empty);
  expect(asked({ kind: 'draw-off', pan: 'p1', litres: 1, happened: 2 * MINUTE_MS }, gone)).toBeNull();
  const anew = mark(4 * MINUTE_MS, { kind: 'top-up', pan: 'p1', litres: 8, brix: 2 });
  expect(asked({ kind: 'draw-off', pan: 'p1', litres: 1 }, gone, anew)).toBeNull();
});

test('maple into birch is asked about; a late maple into an early one is not', () => {
  const all = { kind: 'transfer', all: true } as const;
  expect(asked({ ...all, from: 'p2', to: 'p1' })).toContain('Front pot and Back pot hold different saps');
  expect(asked({ ...all, from: 'p2', to: 'p3' })).toBeNull();
});

test('a check that no boiling water shows; one that is likely, or was read in a thick pan, is not asked about', () => {
  const checked = (celsius: number) => asked({ kind: 'water-check', celsius });
  expect(checked(0)).toBe('A check in boiling water needs plain water, and 0.0 °C is far from where water boils here.');
  expect(checked(160)).toContain('160.0 °C is far from where water boils here.');
  expect(checked(99.1)).toBeNull();
});

test('a note that corrects another is tried without the one that it corrects', () => {
  const all = mark(2 * MINUTE_MS, { kind: 'draw-off', pan: 'p3', all: true, id: 'slip' });
  const some: Mark = { kind: 'draw-off', pan: 'p3', litres: 2 };
  expect(asked(some, all)).toBe('Side pot is empty: all of it was noted as taken out.');
  expect(asked({ ...some, corrects: 'slip' }, all)).toBeNull();
  expect(asked({ ...some, corrects: 'never noted' }, all)).toContain('is empty');
});
