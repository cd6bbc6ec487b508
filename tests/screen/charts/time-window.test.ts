// Zooming keeps the moment under the pointer; a chart never leaves the boil.
import { HOUR_MS } from '../../../src/core/quantities/time.ts';
import { expect, test } from 'vitest';
import {
  followed,
  lastHour,
  moved,
  shownAhead,
  tickMoments,
  wholeBoil,
  zoomed,
} from '../../../src/screen/charts/time-window.ts';

const end = 6 * HOUR_MS;

test('the last hour ends now, the whole boil begins with it, a young boil gets a quarter of an hour', () => {
  expect(lastHour(end)).toEqual({ from: 5 * HOUR_MS, to: end, follows: true });
  expect(wholeBoil(end)).toEqual({ from: 0, to: end, follows: true });
  expect(lastHour(60_000)).toEqual({ from: 0, to: HOUR_MS / 4, follows: true });
});

test('a zoom keeps the moment under the anchor', () => {
  const before = { from: 2 * HOUR_MS, to: 4 * HOUR_MS, follows: false };
  const after = zoomed(before, 0.5, 0.25, end);
  expect(after.to - after.from).toBe(HOUR_MS);
  expect(after.from + 0.25 * HOUR_MS).toBe(2.5 * HOUR_MS);
});

test('no zoom is wider than the boil or closer than two minutes', () => {
  expect(zoomed(lastHour(end), 1000, 0.5, end)).toMatchObject({ from: 0, to: end });
  const close = zoomed(lastHour(end), 1e-6, 0.5, end);
  expect(close.to - close.from).toBe(120_000);
});

test('a move stops at both ends, and follows only at the right one', () => {
  expect(moved(lastHour(end), 0.5, end)).toEqual(lastHour(end));
  expect(moved(lastHour(end), -0.5, end)).toEqual({ from: 4.5 * HOUR_MS, to: 5.5 * HOUR_MS, follows: false });
  expect(moved(lastHour(end), -50, end)).toMatchObject({ from: 0, to: HOUR_MS });
});

test('time goes on only for a window that follows', () => {
  const later = end + 60_000;
  expect(followed(lastHour(end), later, false)).toEqual(lastHour(later));
  expect(followed(wholeBoil(end), later, true)).toEqual(wholeBoil(later));
  const still = moved(lastHour(end), -0.5, end);
  expect(followed(still, later, false)).toBe(still);
});

test('ticks are round times of day and few enough', () => {
  const minute = 60_000;
  const ticks = tickMoments(7 * HOUR_MS + 3 * minute, 8 * HOUR_MS + 3 * minute, 6);
  expect(ticks.length).toBeLessThanOrEqual(6);
  expect(ticks.map((at) => (at / minute) % 10)).toEqual(ticks.map(() => 0));
  expect(ticks).not.toEqual([]);
});

test('what is expected is shown beside the past, an hour of it at most beside the last hour', () => {
  expect(lastHour(end, 10 * 60_000)).toEqual({ from: 5 * HOUR_MS, to: end + 10 * 60_000, follows: true });
  expect(lastHour(end, 3 * HOUR_MS).to).toBe(end + HOUR_MS);
  // A young boil's is not the coming hour.
  expect(lastHour(20 * 60_000, 3 * HOUR_MS)).toEqual({ from: 0, to: 40 * 60_000, follows: true });
  expect(lastHour(60_000, 3 * HOUR_MS).to).toBe(HOUR_MS / 4);
  expect(shownAhead(end, null)).toBe(0);
  expect(shownAhead(end, end + 2 * HOUR_MS)).toBe(2 * HOUR_MS);
  expect(shownAhead(600_000, 600_000 + 5 * HOUR_MS)).toBe(HOUR_MS);
});

test('a boil that is over ends at its end, however short it was', () => {
  const six = 6 * 60_000;
  expect(wholeBoil(six, true)).toEqual({ from: 0, to: six, follows: true });
  expect(lastHour(six, 0, true)).toEqual({ from: 0, to: six, follows: true });
  expect(zoomed(wholeBoil(six, true), 4, 0.5, six, true)).toMatchObject({ from: 0, to: six });
});
