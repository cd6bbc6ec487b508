// Which units a first start proposes, by the languages that the browser prefers.
import { expect, test } from 'vitest';
import {
  METRIC,
  US,
  usualClock,
  usualMetric,
  usualMonthFirst,
  usualUnits,
} from '../../../src/screen/client/unit-sets.ts';

/** Weather in Canada is told in kilopascals (Environment Canada's hourly reports). */
const CANADA = { ...METRIC, pressure: 'kpa' };

test.each([
  [['en-US', 'en'], US],
  [['es-US'], US],
  [['en', 'en-US'], US],
  [['en-GB', 'en-US'], METRIC],
  [['en-CA', 'fr-CA'], CANADA],
  [['fr-CA', 'en-US'], CANADA],
  [['fr-FR', 'fr-CA'], METRIC],
  [['en'], METRIC],
  [['no tag at all', 'en-US'], US],
  [[], METRIC],
])('%j', (preferred, units) => {
  expect(usualUnits(preferred)).toEqual(units);
});

test('metric after another choice is what metric first meant there', () => {
  expect(usualMetric(['fr-CA', 'en-US'])).toEqual(CANADA);
  expect(usualMetric(['en-GB'])).toEqual(METRIC);
  expect(usualMetric(['en-US', 'en-CA'])).toEqual(METRIC);
});

test.each([
  [['en-US', 'en'], '12'],
  [['en', 'en-US'], '12'],
  [['en-GB', 'en-US'], '24'],
  [['fr-CA', 'en-CA'], '24'],
  [['fr-FR'], '24'],
  [['en'], '24'],
  [['no tag at all', 'en-US'], '12'],
  [[], '24'],
] as const)('the clock of %j', (preferred, clock) => {
  expect(usualClock(preferred)).toBe(clock);
});

test('the month stands before its day where the region of the browser has it so, in the language that is spoken', () => {
  expect(usualMonthFirst('en', ['en-US', 'fr-CA'])).toBe(true);
  expect(usualMonthFirst('en', ['en', 'fr-FR'])).toBe(false);
  expect(usualMonthFirst('en', ['en-GB', 'en-US'])).toBe(false);
  expect(usualMonthFirst('fr', ['en-US'])).toBe(false);
  expect(usualMonthFirst('en', ['en'])).toBe(false);
});
