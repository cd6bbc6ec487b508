// Which units a first start proposes, by the languages that the browser prefers.
import { expect, test } from 'vitest';
import { METRIC, US, usualUnits } from '../../../src/screen/client/unit-sets.ts';

test.each([
  [['en-US', 'en'], US],
  [['es-US'], US],
  [['en', 'en-US'], US],
  [['en-GB', 'en-US'], METRIC],
  [['en-CA', 'fr-CA'], METRIC],
  [['fr-CA', 'en-US'], METRIC],
  [['en'], METRIC],
  [['no tag at all', 'en-US'], US],
  [[], METRIC],
])('%j', (preferred, units) => {
  expect(usualUnits(preferred)).toEqual(units);
});
