// The sap store tells birch and maple apart. Invented, Tarn Hollow.
import { expect, test } from 'vitest';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import { collectionShown } from '../../../src/core/season/store.ts';
import type { Collection } from '../../../src/protocol/season-messages.ts';
import { areMixed, inStore, storedWords } from '../../../src/screen/notebook/store-kinds.ts';
import { metric } from '../moment.ts';

const stored = (...ones: Omit<Collection, 'id'>[]) =>
  ones.map((one, index) => collectionShown({ id: String(index), ...one }, '2027-04-20'));
const words = (...of: Parameters<typeof storedWords>): string => storedWords(...of).replaceAll('\u00a0', ' ');

test('each kind of sap has a sum of its own, and its own last good day', () => {
  const both = stored(
    { day: '2027-04-20', litres: 60, sap: 'birch' },
    { day: '2027-04-17', litres: 25 },
    { day: '2027-04-17', litres: 5, sap: 'birch' },
    { day: '2027-04-16', litres: 40, sap: 'maple', boil: 'run-1' },
  );
  expect(words(both, metric, sapKinds)).toBe('65.0 L of birch, 25.0 L of maple');
  expect(words(both, metric, sapKinds, 'use-now')).toBe('5.0 L of birch');
  expect(words(both, metric, sapKinds, 'past')).toBe('');
});

test('of one kind alone it is named once, whatever was boiled before', () => {
  const one = stored({ day: '2027-04-20', litres: 60 }, { day: '2027-04-20', litres: 9, sap: 'birch', boil: 'run-1' });
  expect(words(one, metric, sapKinds)).toBe('60.0 L of maple');
  expect(words(stored({ day: '2027-04-10', litres: 60 }), metric, sapKinds, 'past')).toBe('60.0 L');
  expect(areMixed(one, sapKinds)).toBe(true);
  expect(areMixed(inStore(one), sapKinds)).toBe(false);
});
