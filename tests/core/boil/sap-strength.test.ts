// Checks which strength sap is taken to have that was poured in without one: as typed before, as planned, else as usual.
import { expect, test } from 'vitest';
import { applyEntry, startBoil } from '../../../src/core/boil/fold.ts';
import { sapBrix, sapOfPan } from '../../../src/core/boil/sap-strength.ts';
import { mark, onePot, tools } from './tarn-hollow.ts';

/** Usual strength of birch sap, °Bx: common practice. */
const USUAL_BIRCH = 1;

const planned = (plan: unknown) => startBoil({ ...onePot('birch'), ...{ plan } });

test('what the plan says of its sap holds until somebody types another strength', () => {
  expect(sapBrix(planned({ litres: 140, brix: 0.9 }), 'p1')).toEqual({ brix: 0.9, guessed: false });
  const typed = mark(0, { kind: 'top-up', pan: 'p1', litres: 5, brix: 1.2 });
  expect(sapBrix(applyEntry(planned({ litres: 140, brix: 0.9 }), typed, tools), 'p1').brix).toBe(1.2);
});

test.each([[undefined], [null], [{}], [{ brix: 'thin' }], [{ brix: 0 }], [{ brix: 900 }]])(
  'a plan of %j tells nothing: the usual strength is a guess',
  (plan) => {
    expect(sapBrix(planned(plan), 'p1')).toEqual({ brix: USUAL_BIRCH, guessed: true });
  },
);

test('water that rinses a pan is no sap of which a batch could be made', () => {
  const water = mark(0, { kind: 'top-up', pan: 'p1', litres: 1, brix: 0 });
  expect(sapOfPan(applyEntry(planned({ brix: 0.9 }), water, tools), 'p1')).toEqual({ brix: 0.9, from: 'planned' });
});

test('what had been boiled before tells nothing of the sap that is poured after it', () => {
  const half = mark(0, { kind: 'top-up', pan: 'p1', litres: 8, brix: 40 });
  expect(sapBrix(applyEntry(planned(null), half, tools), 'p1')).toEqual({ brix: USUAL_BIRCH, guessed: true });
});
