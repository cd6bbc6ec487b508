// Lines laid over each other: round ticks, paths with gaps, and names at their ends that do not touch.
import { expect, test } from 'vitest';
import { apartFrom, extentOf, lastSeen, linePath, placeIn, seenOf } from '../../../src/screen/charts/lines-scale.ts';
import { niceTicks, tickNumbers } from '../../../src/screen/charts/nice-ticks.ts';

test('ticks are round and few', () => {
  expect(niceTicks(-5.7, 0.4, 7)).toEqual([-5, -4, -3, -2, -1, 0]);
  expect(niceTicks(0, 103, 5)).toEqual([0, 50, 100]);
  expect(niceTicks(1.31, 1.34, 4)).toEqual([1.31, 1.32, 1.33, 1.34]);
  expect(niceTicks(7, 7, 5)).toEqual([7]);
  // One alone is no scale: where two are allowed, two stand, however narrow the chart.
  expect(niceTicks(-0.9, -0.1, 2)).toEqual([-0.8, -0.2]);
  expect(niceTicks(-0.9, -0.1, 1)).toHaveLength(0);
});

test('a line is lifted where nothing is known', () => {
  const same = (value: number): number => value;
  const points = [
    { x: 0, y: 1 },
    { x: 1, y: null },
    { x: 2, y: 3 },
    { x: 3, y: 4 },
  ];
  expect(linePath(points, same, same)).toBe('M0.0 1.0M2.0 3.0L3.0 4.0');
  expect(extentOf(points.map(({ y }) => y))).toEqual({ least: 1, greatest: 4 });
  expect(extentOf([null])).toBeNull();
  expect(placeIn({ least: 90, greatest: 110 }, 400, 0)(100)).toBe(200);
});

test('names beside each other stand apart, and those elsewhere stay at their lines', () => {
  const heights = apartFrom(
    [
      { x: 500, y: 100 },
      { x: 505, y: 104 },
      { x: 100, y: 102 },
    ],
    20,
    0,
    300,
  );
  expect(heights).toEqual([84, 104, 102]);
  expect(apartFrom([{ x: 0, y: 900 }], 20, 0, 300)).toEqual([300]);
});

test('names that have no room over their lines come down from the top, and still stand apart', () => {
  const ends = [40, 42, 38, 41].map((y) => ({ x: 500, y }));
  expect(apartFrom(ends, 20, 34, 300)).toEqual([54, 94, 34, 74]);
});

test('what burns or has cooled leaves the chart, unless nothing else is there', () => {
  const boils = { least: 90, greatest: 115 };
  expect(seenOf([5, 91, null, 98, 114, 247], boils)).toEqual({ least: 91, greatest: 114 });
  expect(seenOf([97, 103], boils)).toEqual({ least: 97, greatest: 103 });
  expect(seenOf([5, 20], boils)).toEqual({ least: 5, greatest: 20 });
  expect(seenOf([5, 247], undefined)).toEqual({ least: 5, greatest: 247 });
  expect(seenOf([null], boils)).toBeNull();
});

test('a pan that is kept below a boil is in sight, though it once got hot; one that only warms up draws nothing down', () => {
  const boils = { least: 90, greatest: 115 };
  expect(seenOf([20, 84, 86, 85, 87, 98], boils)).toEqual({ least: 84, greatest: 98 });
  expect(seenOf([20, 84, 97, 98, 99], boils)).toEqual({ least: 97, greatest: 99 });
});

test('the number of a line stands where the line was last in sight', () => {
  const points = [98, 103, null, 22, 21].map((y, x) => ({ x, y }));
  expect(lastSeen(points, { least: 90, greatest: 115 })).toEqual({ x: 1, y: 103 });
  expect(lastSeen(points, { least: 0, greatest: 115 })).toEqual({ x: 4, y: 21 });
  expect(lastSeen(points, { least: 200, greatest: 300 })).toEqual({ x: 4, y: 21 });
  expect(lastSeen([{ x: 0, y: null }], { least: 0, greatest: 1 })).toBeNull();
});

test('the numbers of one axis have as many decimals as the one that needs most', () => {
  expect(tickNumbers(niceTicks(5.19, 5.31, 3))).toEqual(['5.20', '5.25', '5.30']);
  expect(tickNumbers([-5, 0, 5])).toEqual(['−5', '0', '5']);
  expect(tickNumbers([-0.5, 0])).toEqual(['−0.5', '0.0']);
});
