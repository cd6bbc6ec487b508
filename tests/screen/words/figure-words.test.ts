// What is said beside the figures of a boil and of a plan: what fills no jar, and what a unit of heat is.
import { expect, test } from 'vitest';
import { settings } from '../../../src/screen/client/store.ts';
import { heatUnitWords, leftOverWords } from '../../../src/screen/words/figure-words.ts';
import { jarsFigure } from '../../../src/screen/words/plan-words.ts';

const syrup = (value: number, from: 'page' | 'pans' | 'jars') => ({ value, low: null, high: null, from });
const four = [{ litres: 0.25, count: 4 }];
const left = (...[jars, figure]: [Parameters<typeof leftOverWords>[0], Parameters<typeof leftOverWords>[1]]) =>
  leftOverWords(jars, figure, settings.value);

test('syrup that was measured and fills no jar is told, what is reckoned or counted in the jars is not', () => {
  expect(left(four, syrup(1.15, 'page'))).toBe('and 0.15\u00a0L left over');
  expect(left(four, syrup(1.01, 'page'))).toBe('');
  expect(left(four, syrup(0.9, 'page'))).toBe('');
  expect(left(four, syrup(1.15, 'pans'))).toBe('');
  expect(left(four, syrup(1, 'jars'))).toBe('');
  expect([left([], syrup(1.15, 'page')), left(undefined, syrup(1.15, 'page')), left(four, null)]).toEqual(['', '', '']);
});

test.each([
  // Of 0.65 L: 2 x 0.25 and 6 x 0.1; of 16 US fl oz (0.473176 L) one, and 0.17682 L are 6 fl oz of 0.0295735 L; 8 fl oz twice.
  ['litre', '2 x 250 mL and 0.15 L left', 'or 6 x 100 mL and 0.05 L left; 1 x 500 mL and 0.15 L left; '],
  ['us-gallon', '1 x 1 pt and 6 fl oz left', 'or 2 x 8 fl oz and 6 fl oz left; '],
  ['imperial-gallon', '1 x 1 pt and 3 fl oz left', 'or 2 x 10 fl oz and 3 fl oz left; '],
] as const)('a plan says what its syrup fills of the sizes that go with a %s', (volume, main, others) => {
  const said = jarsFigure({ syrup_litres: 0.65 } as Parameters<typeof jarsFigure>[0], { ...settings.value, volume });
  expect(said.main.replaceAll('\u00a0', ' ')).toBe(main);
  expect(said.range.replaceAll('\u00a0', ' ')).toBe(`${others}filled hot, with a little room`);
});

test('a plan of less syrup than the usual jar holds says the smaller one, and of less than that none', () => {
  const figure = (syrup_litres: number) =>
    jarsFigure({ syrup_litres } as Parameters<typeof jarsFigure>[0], settings.value);
  expect([figure(0.1).main, figure(0.09).main]).toEqual(['1 x 100 mL', 'Less than one small jar']);
});

test('heat is told by what it does to water', () => {
  expect(heatUnitWords(settings.value)).toContain('about 3\u00a0L of water from 20\u00a0°C to a boil');
});
