// The figures of the report have the digits that their ranges allow, and a range where it says more than the value.
import { expect, test } from 'vitest';
import type { BoilFigures, Figure, FigureName } from '../../../src/core/season/figures.ts';
import { FIGURES } from '../../../src/core/season/figures.ts';
import { figureLines } from '../../../src/host/export/figure-words.ts';
import { languages } from '../../../src/host/languages.ts';
import { settingsSchema } from '../../../src/protocol/messages.ts';

const settings = settingsSchema.parse({});
const nothing = Object.fromEntries(Object.keys(FIGURES).map((name) => [name, null])) as BoilFigures;
const [english, french] = ['en', 'fr'].map((language) => languages().tongue(language));

/** What the report says of one figure of a boil. */
function said(name: FigureName, figure: Omit<Figure, 'from'>, tongue = english!): string {
  const figures = { ...nothing, [name]: { ...figure, from: 'worked-out' } };
  const lines = figureLines({ figures, settings, unnoted: [] }, tongue).filter(({ isKnown }) => isKnown);
  expect(lines).toHaveLength(1);
  return lines[0]!.value.replaceAll('\u00a0', ' ');
}

test.each<[FigureName, number, number | null, number | null, string]>([
  ['ratio', 43.62, 42.9, 44.4, '43.6 : 1 (42.9 to 44.4)'],
  ['ratio', 43.62, 38, 50, '44 : 1 (38 to 50)'],
  ['ratio', 43.62, 43.6, 43.64, '43.6 : 1'],
  ['syrup_litres', 3.214, 3.19, 3.24, '3.21 L (3.19 to 3.24)'],
  ['sap_litres', 140.4, 131, 149, '140 L (131 to 149)'],
  ['water_off_l_per_h', 12.34, 11.8, 12.9, '12.3 L/h (11.8 to 12.9)'],
  ['cost', 12.5, null, null, '12.50'],
  ['jars', 4, null, null, '4'],
  ['fuel_cords', 0.254, null, null, '0.25 cords'],
  ['hours', 8.25, 8.2, 8.3, '8 h 15 min'],
])('%s of %d', (name, value, low, high, words) => {
  expect(said(name, { value, low, high })).toBe(words);
});

test('in French the digits have a comma', () => {
  expect(said('ratio', { value: 43.62, low: 42.9, high: 44.4 }, french)).toBe('43,6 : 1 (de 42,9 à 44,4)');
});

test('the rules of thumb stand as on the page of the boil: each where it reaches, neither as not known', () => {
  const titles = (figures: BoilFigures): string[] =>
    figureLines({ figures, settings, unnoted: [] }, english!).map(({ title }) => title);
  expect(titles(nothing).some((title) => title.includes('rule'))).toBe(false);
  const newer = { ...nothing, ratio_by_revised_86: { value: 3.1, low: null, high: null, from: 'worked-out' as const } };
  expect(titles(newer).filter((title) => title.includes('rule'))).toEqual(['… by the newer rule']);
});
