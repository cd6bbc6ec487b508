// Signed numbers for the cards, and typed numbers that are never guessed.
import { afterEach, expect, test } from 'vitest';
import { problemIn } from '../../../src/screen/marks/mark-form.ts';
import { language } from '../../../src/screen/language/language.ts';
import {
  celsiusOf,
  litresOf,
  metresOf,
  metresShown,
  mmOf,
  noNumber,
  showsRise,
  signedRate,
  signedRise,
  typedNumber,
} from '../../../src/screen/words/amounts.ts';
import type { Reading } from '../../../src/screen/client/types.ts';
import { american, metric } from '../moment.ts';

test('a rise has its sign, tenths near a boil and whole degrees far from it', () => {
  expect([3.94, 0.04, 0, -0.04, -2.31, -56.3].map((rise) => signedRise(rise, metric))).toEqual([
    '+3.9',
    '0.0',
    '0.0',
    '0.0',
    '−2.3',
    '−56',
  ]);
  expect(signedRise(3.94, american)).toBe('+7.1');
});

test('a rate is in the chosen degrees', () => {
  expect([signedRate(0.15, metric), signedRate(-1.44, metric)]).toEqual(['+0.15 °C/min', '−1.4 °C/min']);
  expect(signedRate(0.15, american)).toBe('+0.27 °F/min');
});

test('what is typed goes back to SI', () => {
  expect(celsiusOf(212, american)).toBeCloseTo(100, 9);
  expect(litresOf(2, american)).toBeCloseTo(7.570824, 5);
  expect(mmOf(1.5, american)).toBeCloseTo(38.1, 9);
  expect(metresShown(metresOf(2100, american), american)).toBeCloseTo(2100, 9);
});

test('a comma is a point; a slip of the finger is no number', () => {
  expect([' 12,5 ', '−3', '67'].map(typedNumber)).toEqual([12.5, -3, 67]);
  expect(['', ' ', '0x1F', '1e3', '12.', '1.2.3', 'Infinity', 'NaN', '12 L'].map(typedNumber)).toEqual(
    Array(9).fill(null),
  );
});

afterEach(() => void (language.value = 'en'));

test('in English a comma with three digits behind it marks thousands, in French it is a point', () => {
  const typed = ['60,000', '1,250', '1,250.5', '-1,200', '1,234,567', '12,5', '1250,5'];
  expect(typed.map(typedNumber)).toEqual([60_000, 1250, 1250.5, -1200, 1_234_567, 12.5, 1250.5]);
  language.value = 'fr';
  expect(typed.map(typedNumber)).toEqual([60, 1.25, null, -1.2, null, 12.5, 1250.5]);
  expect(['1 250', '1\u00a0250,5', '60\u202f000', '1 234 567'].map(typedNumber)).toEqual([
    1250, 1250.5, 60_000, 1_234_567,
  ]);
  expect(['1 25', '12 3456', '1234 567', '1  250'].map(typedNumber)).toEqual(Array(4).fill(null));
});

test('what could be either of two numbers is refused, and both are said', () => {
  expect(typedNumber('0,900')).toBeNull();
  expect(noNumber('Depth', '0,900')).toBe('Depth: “0,900” could be 900 or 0.9. Please type it without the comma.');
  const field = { name: 'brix', label: 'Depth', unit: 'mm', least: 0, greatest: 1000 };
  expect(problemIn({ brix: '0,900' }, [field])).toBe(noNumber('Depth', '0,900'));
  expect(noNumber('Depth', '1.2.3')).toContain('is no plain number');
  language.value = 'fr';
  expect(typedNumber('0,900')).toBe(0.9);
});

test('a fraction is read as on a ruler', () => {
  expect(['14 1/2', '2-1/2', '1/2', '¾', '14½', '2 3/16'].map(typedNumber)).toEqual([
    14.5, 2.5, 0.5, 0.75, 14.5, 2.1875,
  ]);
  expect(['3/2', '1/0', '1/7', '1/', '14 1/2 1/2', '1 250 1/2'].map(typedNumber)).toEqual(Array(6).fill(null));
});

test('the large number is a rise only of a pan that boils, or nearly does', () => {
  const shows = (stage: Reading['stage'], rise_c: number | null) => showsRise({ stage, rise_c });
  expect([shows('warming', -56), shows('unknown', -2), shows('off', 2), shows('boiling', null)]).not.toContain(true);
  expect([shows('boiling', -0.2), shows('warming', 0), shows('warming', -0.9), shows('thickening', 2)]).not.toContain(
    false,
  );
});
