// Which pours fill an empty pan, and that form, list and correction have one word for them. Invented, Tarn Hollow.
import { expect, test } from 'vitest';
import type { Mark } from '../../src/core/boil/entries.ts';
import { isEmptyAt, isFirstPour } from '../../src/protocol/first-pour.ts';

const noted = (at: number, mark: Mark, change: { t?: number; withdrawn?: boolean; questioned?: boolean } = {}) => ({
  ...{ at, mark, t: at, withdrawn: false, questioned: false },
  ...change,
});
const pour = (at: number, pan = 'p1', change = {}) => noted(at, { kind: 'top-up', pan, litres: 5 }, change);
const firsts = (marks: ReturnType<typeof noted>[]): boolean[] => marks.map((each) => isFirstPour(each, marks));

test('the first pour of each pan fills it, in the order in which they happened', () => {
  expect(firsts([pour(1), pour(2), pour(3, 'p2')])).toEqual([true, false, true]);
  // What was noted later and happened before is the first.
  expect(firsts([pour(20), pour(10, 'p1', { t: 30 })])).toEqual([false, true]);
  expect(firsts([pour(5), pour(5, 'p1', { t: 6 })])).toEqual([true, false]);
});

test('what was taken back or is not believed filled nothing', () => {
  expect(firsts([pour(1, 'p1', { withdrawn: true }), pour(2)])).toEqual([true, true]);
  expect(firsts([pour(1, 'p1', { questioned: true }), pour(2)])[1]).toBe(true);
});

test('a pan that was emptied is filled anew, and one that was dipped or poured into is not', () => {
  const out: Mark = { kind: 'draw-off', pan: 'p1', all: true };
  const over: Mark = { kind: 'transfer', from: 'p1', to: 'p2', all: true };
  expect(firsts([pour(1), noted(2, out), pour(3), pour(4)])).toEqual([true, false, true, false]);
  expect(firsts([pour(1), noted(2, over), pour(3), pour(4, 'p2')])).toEqual([true, false, true, false]);
  expect(firsts([noted(1, { kind: 'depth', pan: 'p1', mm: 40 }), pour(2)])[1]).toBe(false);
  expect(firsts([pour(1), noted(2, { kind: 'draw-off', pan: 'p1', litres: 2 }), pour(3)])[2]).toBe(false);
  expect(isEmptyAt('p1', { at: 9, t: 9 }, [pour(1), noted(2, out)])).toBe(true);
});
