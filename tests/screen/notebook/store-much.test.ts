// Sap of one day that hardly any trees give is asked about before it is kept.
import { expect, test } from 'vitest';
import { muchDoubt } from '../../../src/screen/notebook/store-draft.ts';
import { american, metric } from '../moment.ts';

test('5000 gallons in one day are asked about, in the units that were chosen; 200 L are not', () => {
  expect(muchDoubt(18_927, american)).toMatch(/^5000\sUS gal in one day .* press “Add it” once more\.$/u);
  expect(muchDoubt(200, metric)).toBeNull();
});
