// A depth that was noted and is shown as another: both are told, while that says something.
import { expect, test } from 'vitest';
import type { MarkView, Now } from '../../../src/screen/client/types.ts';
import { notedAndCounted } from '../../../src/screen/words/depth-words.ts';
import { american, metric, moment } from '../moment.ts';

const noted = (mm: number, takenMm: number, over: Partial<MarkView> = {}): MarkView => ({
  t: moment.t - 60_000,
  at: moment.t - 60_000,
  mark: { kind: 'depth', pan: 'p1', mm },
  withdrawn: false,
  questioned: false,
  doubt: null,
  corrections: [],
  cameTo: null,
  takenC: null,
  depths: { countedMm: 96, takenMm },
  ...over,
});
const said = (marks: MarkView[], over: Partial<Now> = {}, units = metric): string | null =>
  notedAndCounted({ ...moment, marks, ...over }, 'p1', units)?.replaceAll('\u00a0', ' ') ?? null;

test('both are told where what is shown is another number than was noted', () => {
  expect(said([noted(80, 81.2)])).toBe('you noted 80 mm at 07:59; the count said 96 mm');
  expect(said([noted(80, 80.3)])).toBeNull();
  // To a tenth of an inch.
  expect(said([noted(63.5, 68)], {}, american)).toBe('you noted 2.5 in at 07:59; the count said 3.8 in');
  expect(said([noted(63.5, 64)], {}, american)).toBeNull();
});

test('what a practice noted by itself nobody is told to have noted', () => {
  const header = { ...moment.header!, practice: true as const };
  const byPractice = noted(80, 81.2, { mark: { kind: 'depth', pan: 'p1', mm: 80, id: 'hand-1' } });
  expect(said([byPractice], { header })).toBe('the practice noted 80 mm at 07:59; the count said 96 mm');
  expect(said([noted(80, 81.2)], { header })).toBe('you noted 80 mm at 07:59; the count said 96 mm');
});

test('not where it was left out, is long ago, or the contents were changed since', () => {
  const poured: MarkView = { ...noted(0, 0), mark: { kind: 'top-up', pan: 'p1', litres: 2 } };
  const { depths: _, ...plain } = noted(80, 81.2);
  expect(said([plain])).toBeNull();
  expect(said([noted(80, 81.2, { questioned: true })])).toBeNull();
  expect(said([noted(80, 81.2)], { t: moment.t + 20 * 60_000 })).toBeNull();
  expect(said([noted(80, 81.2), poured])).toBeNull();
  expect(said([noted(80, 81.2), { ...poured, withdrawn: true }])).not.toBeNull();
  expect(said([noted(80, 81.2), { ...poured, mark: { kind: 'top-up', pan: 'p2', litres: 2 } }])).not.toBeNull();
});
