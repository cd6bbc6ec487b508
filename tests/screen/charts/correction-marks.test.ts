// The steps on a pan's curve: one whose mark was taken back since keeps its place, and gives up its words.
import { expect, test } from 'vitest';
import { SIMULATED_HAND } from '../../../src/core/boil/practice-marks.ts';
import { correctionsOf, stepsOf } from '../../../src/screen/charts/correction-marks.tsx';
import type { Correction, MarkView } from '../../../src/screen/client/types.ts';
import { moment } from '../moment.ts';

const changed = (t: number, was: number, is: number): Correction => ({
  t,
  pan: 'p1',
  before: { brix: was, litres: null, finishAt: null },
  after: { brix: is, litres: null, finishAt: null },
});
const density = (t: number, brix: number, corrections: Correction[], withdrawn = false): MarkView => ({
  t,
  at: t,
  mark: { kind: 'density', pan: 'p1', brix, id: `m${t}` },
  withdrawn,
  questioned: false,
  doubt: null,
  corrections,
  cameTo: null,
  takenC: null,
});

test('a density that was taken back has no words on the curve unless it is the chosen one', () => {
  const counts = density(1000, 30, [changed(1000, 54, 30)]);
  const undone = density(2000, 44, [changed(2000, 50, 44), changed(3000, 44, 60)], true);
  const corrections = correctionsOf({ ...moment, marks: [undone, counts] }, 'p1');
  const words = (shown: string | null): (string | null)[] =>
    stepsOf(corrections, shown).map(({ word }) => word?.replaceAll('\u00a0', ' ') ?? null);
  expect(words(null)).toEqual(['54 → 30 °Bx', null, null]);
  expect(words(corrections[1]!.key)).toEqual(['54 → 30 °Bx', '50 → 44 °Bx', null]);
});

test('what the practice pours by itself has its mark on the curve, and words only while it is the chosen one', () => {
  const pour = density(1000, 30, [changed(1000, 10.7, 9.8)]);
  const own = { ...pour, mark: { kind: 'top-up', pan: 'p1', litres: 0.5, id: `${SIMULATED_HAND}1` } } as MarkView;
  const practice = { ...moment.header!, practice: true } as unknown as typeof moment.header;
  const corrections = correctionsOf({ ...moment, header: practice, marks: [own] }, 'p1');
  expect(stepsOf(corrections, null).map(({ word }) => word)).toEqual([null]);
  expect(stepsOf(corrections, corrections[0]!.key)[0]!.word).toContain('10.7');
});
