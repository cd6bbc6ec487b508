// Sap of one day that hardly any trees give is asked about before it is kept.
import { expect, test } from 'vitest';
import { muchDoubt, newSap, sapTyped } from '../../../src/screen/notebook/store-draft.ts';
import { american, metric } from '../moment.ts';

test('5000 gallons in one day are asked about, in the units that were chosen; 200 L are not', () => {
  expect(muchDoubt(18_927, american)).toMatch(/^5000\sUS gal in one day .* press “Add it” once more\.$/u);
  expect(muchDoubt(200, metric)).toBeNull();
});

test.each([
  ['a store of 900 °C', metric, { celsius: '900' }, /plain number from −40\s°C to 60\s°C/u],
  ['a store of 200 °F', american, { celsius: '200' }, /plain number from −40\s°F to 140\s°F/u],
  ['a lake of sap', metric, { litres: '200000' }, /^More than 100000\sL is no sap of one day/u],
])('%s is refused in words before the notebook sees it', (_, settings, typed, why) => {
  const sap = sapTyped({ ...newSap('2027-04-18'), litres: '40', ...typed }, settings);
  expect(sap).toMatchObject({ why: expect.stringMatching(why) });
});
