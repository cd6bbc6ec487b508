// Signed numbers for the cards, and typed numbers that are never guessed.
import { expect, test } from 'vitest';
import {
  celsiusOf,
  litresOf,
  metresOf,
  metresShown,
  mmOf,
  signedRate,
  signedRise,
  typedNumber,
} from '../../../src/screen/words/amounts.ts';
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
