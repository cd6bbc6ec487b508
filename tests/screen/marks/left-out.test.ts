// What was left out says why, and may be insisted on until the same is measured anew.
import { expect, test } from 'vitest';
import type { Mark, MarkView, Now } from '../../../src/screen/client/types.ts';
import { canInsist, lastLeftOut, leftOutWords, saidOf } from '../../../src/screen/marks/left-out.ts';
import { moment } from '../moment.ts';

const noted = (at: number, mark: Mark, change: Partial<MarkView> = {}): MarkView => ({
  t: at,
  at,
  mark,
  withdrawn: false,
  questioned: false,
  doubt: null,
  corrections: [],
  cameTo: null,
  takenC: null,
  ...change,
});
const far = { questioned: true, doubt: 'Front pot: 40 mm is far from what went in and boiled away.' };
const wrong = noted(1_500_000, { kind: 'depth', pan: 'p1', mm: 40 }, far);
const withMarks = (...marks: MarkView[]): Now => ({ ...moment, marks });

test('the reason stands beside the mark, and none beside one that counts or was taken back', () => {
  expect(leftOutWords(wrong)).toBe('left out: Front pot: 40\u00a0mm is far from what went in and boiled away.');
  expect(leftOutWords({ ...wrong, questioned: false, doubt: null })).toBeNull();
  expect(leftOutWords({ ...wrong, withdrawn: true })).toBeNull();
});

test('what was noted and left out is said once, and not as done', () => {
  const doubt =
    'A check in boiling water needs plain water: 88.8 °C is far from where water boils here, so it was left out.';
  const left = noted(1_600_000, { kind: 'water-check', celsius: 88.8, id: 'c' }, { questioned: true, doubt });
  const done = { good: true, sentence: 'Check in boiling water: 88.8 °C: noted.', mark: 'c' };
  expect(saidOf(done, withMarks())).toBe(done);
  expect(saidOf(done, { ...withMarks(left), notices: [doubt] })).toEqual({
    good: false,
    sentence: doubt,
    notice: doubt,
  });
  expect(saidOf(done, withMarks({ ...left, withdrawn: true }))).toBe(done);
  expect(saidOf(done, withMarks({ ...left, questioned: false }))).toBe(done);
});

test('an amount that counts otherwise is not called left out', () => {
  const twice = 'The same was noted twice within two minutes and counts once. If it happened twice, note it once more.';
  const pour = noted(0, { kind: 'top-up', pan: 'p1', litres: 2 }, { questioned: true, doubt: twice });
  expect(leftOutWords(pour)).toBe(twice);
  expect(canInsist(pour, withMarks(pour))).toBe(false);
});

test('the card of its own pan says it for a while, and a press may make it count', () => {
  const now = withMarks(wrong);
  expect(canInsist(wrong, now)).toBe(true);
  expect(lastLeftOut(now, 'p1')).toBe(wrong);
  expect(lastLeftOut(now, 'p2')).toBeNull();
  expect(lastLeftOut({ ...now, t: wrong.t + 21 * 60_000 }, 'p1')).toBeNull();
});

test('once the same is measured anew it is over; another pan or a mark taken back changes nothing', () => {
  const anew = noted(1_600_000, { kind: 'depth', pan: 'p1', mm: 120 });
  expect(lastLeftOut(withMarks(wrong, anew), 'p1')).toBeNull();
  expect(lastLeftOut(withMarks(wrong, { ...anew, withdrawn: true }), 'p1')).toBe(wrong);
  expect(lastLeftOut(withMarks(wrong, noted(1_600_000, { kind: 'depth', pan: 'p2', mm: 120 })), 'p1')).toBe(wrong);
  // Insisted on, it stands at the same moment.
  const insisted = noted(wrong.at, { kind: 'depth', pan: 'p1', mm: 40 }, { t: 1_550_000 });
  expect(lastLeftOut(withMarks(wrong, insisted), 'p1')).toBeNull();
});
