// The amounts of a sentence in SI come in the units that were chosen; a name, and a word after a number, stay.
import { expect, test } from 'vitest';
import {
  amountInUnits,
  amountsInUnits,
  chosenOfBoth,
  type ChosenUnits,
} from '../../../src/core/quantities/written-amounts.ts';

const american: ChosenUnits = {
  temperature: 'F',
  volume: 'us-gallon',
  length: 'inch',
  pressure: 'inhg',
  mass: 'pound',
  strength: 'brix',
};
const plain = (text: string): string => amountInUnits(text, american).replaceAll('\u00a0', ' ');

// 3.785 L to a gallon, 25.4 mm to an inch, 33.864 hPa to an inch of mercury, 0.3048 m to a foot (computed).
test.each([
  ['4.3 L', '1.1 US gal'],
  ['13 mm', '0.5 in'],
  ['12.7 mm', '0.5 in'],
  ['101.39 °C', '214.5 °F'],
  ['0.5 °C lower', '0.9 °F lower'],
  ['1013.2 hPa', '29.92 inHg'],
  ['304.8 m', '1000 ft'],
])('%s is %s', (written, told) => {
  expect(plain(written)).toBe(told);
});

test('what is no amount as a whole stays', () => {
  for (const text of ['Back pot', '3 minutes', 'Pot of 20 L', '29.92 inHg']) expect(plain(text)).toBe(text);
});

test('within a sentence a number before another word is no amount', () => {
  expect(amountsInUnits('in about 3 min, 4 metres, 2 Leads', american)).toBe('in about 3 min, 4 metres, 2 Leads');
  expect(amountsInUnits('36 mm deep', american)).toBe('1.4\u00a0in deep');
});

test('a text that says its amounts in both is told in the chosen ones alone', () => {
  const both = 'Fill it at 82 to 88 °C (180 to 190 °F), to about 6 mm (¼ in), 0,5 °C (0,9 °F) each 300 m (1000 ft).';
  expect(chosenOfBoth(both, { temperature: 'C', length: 'mm' })).toBe(
    'Fill it at 82 to 88 °C, to about 6 mm, 0,5 °C each 300 m.',
  );
  expect(chosenOfBoth(both, { temperature: 'F', length: 'inch' })).toBe(
    'Fill it at 180 to 190 °F, to about ¼ in, 0,9 °F each 1000 ft.',
  );
});
