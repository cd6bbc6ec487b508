// After sap was added the form keeps what is likely the same, and nothing that was measured of the last.
import { expect, test } from 'vitest';
import { newSap, nextSap } from '../../../src/screen/notebook/store-draft.ts';
import type { SapTyped } from '../../../src/screen/notebook/store-draft.ts';

test('how much, how strong and how cold it was are asked anew; day, kind and place stay', () => {
  const typed: SapTyped = {
    ...newSap('2027-04-02'),
    ...{ day: '2027-04-01', litres: '40', brix: '2', celsius: '2', trees: 'the old row', stored: 'snow bank' },
    sap: 'birch',
  };
  expect(nextSap('2027-04-02', typed)).toEqual({
    ...{ day: '2027-04-01', sap: 'birch', stored: 'snow bank' },
    ...{ litres: '', brix: '', celsius: '', trees: '' },
  });
});
