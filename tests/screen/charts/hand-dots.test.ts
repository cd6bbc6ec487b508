// Dots of what was read by hand lie where the curve lies, and only of what stands.
import { expect, test } from 'vitest';
import type { MarkView, Now } from '../../../src/screen/client/types.ts';
import { handDots } from '../../../src/screen/charts/hand-dots.ts';

const read = (change: Partial<MarkView> = {}): MarkView => ({
  ...{ t: 60_000, at: 50_000, withdrawn: false, questioned: false, doubt: null, corrections: [], cameTo: null },
  mark: { kind: 'reading', pan: 'p1', celsius: 103 },
  takenC: 101.7,
  ...change,
});
const dots = (...marks: MarkView[]) => handDots({ marks } as Pick<Now, 'marks'>, 'p1');

test('a dot stands where it was read, at what the program took it for rather than as it was typed', () => {
  expect(dots(read())).toEqual([{ x: 50_000, y: 101.7 }]);
});

test('what was taken back or read in another pan has no dot', () => {
  const elsewhere = read({ mark: { kind: 'reading', pan: 'p2', celsius: 103 } });
  const filled = read({ mark: { kind: 'top-up', pan: 'p1', litres: 2 }, takenC: null });
  expect(dots(read({ withdrawn: true }), elsewhere, filled)).toEqual([]);
});
