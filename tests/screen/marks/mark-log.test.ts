// The list of what was noted stands in order of when it was, whenever it was typed. Invented.
import { expect, test } from 'vitest';
import type { MarkView } from '../../../src/screen/client/types.ts';
import { loggedIn } from '../../../src/screen/marks/mark-log.tsx';
import { moment } from '../moment.ts';

const topUp = (t: number, at: number, litres: number): MarkView => ({
  ...{ t, at, withdrawn: false, questioned: false, doubt: null, corrections: [], cameTo: null, takenC: null },
  mark: { kind: 'top-up', pan: 'p1', litres, id: `m${t}` },
});

test('a note that was corrected later stands at the time that it tells of, and the last typed first of one moment', () => {
  const marks = [topUp(1000, 1000, 1), topUp(2000, 2000, 2), topUp(3000, 1000, 3)];
  const litres = loggedIn({ ...moment, powers: [], marks }).map((each) =>
    'mark' in each ? (each.mark.mark as { litres: number }).litres : null,
  );
  expect(litres).toEqual([2, 3, 1]);
});
