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

test('a plan says of each size what is left', () => {
  const plan = {
    syrup_litres: 0.65,
    jars: [
      { litres: 0.1, count: 6 },
      { litres: 0.25, count: 2 },
    ],
  } as Parameters<typeof jarsFigure>[0];
  expect(jarsFigure(plan, settings.value)).toEqual({
    main: '2 x 250 mL and 0.15\u00a0L left',
    range: 'or 6 x 100 mL and 0.05\u00a0L left; filled hot, with a little room',
  });
  expect(jarsFigure({ ...plan, syrup_litres: 0.5, jars: [{ litres: 0.5, count: 1 }] }, settings.value).main).toBe(
    '1 x 500 mL',
  );
});

test('heat is told by what it does to water', () => {
  expect(heatUnitWords(settings.value)).toContain('about 3\u00a0L of water from 20\u00a0°C to a boil');
});
