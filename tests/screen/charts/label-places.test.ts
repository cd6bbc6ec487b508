// The chart's words touch nothing: each stands beside what it names, and one that has no room is left out.
import { expect, test } from 'vitest';
import {
  besideMark,
  freePlace,
  isFree,
  labelPlaces,
  rowsAt,
  wordsInRow,
} from '../../../src/screen/charts/label-places.ts';
import type { Spot, Taken } from '../../../src/screen/charts/label-places.ts';

const text = (y: number, { width = 100, left = 10, right = 610 } = {}) => ({
  width,
  height: 20,
  rows: [y],
  left,
  right,
});

test('a text stands at the left where the curve leaves it free', () => {
  expect(labelPlaces([text(50)], [{ x: 20, y: 200 }])).toMatchObject([{ x: 10, y: 50 }]);
});

test('a text gets out of the way of the curve', () => {
  expect(labelPlaces([text(50)], [{ x: 20, y: 45 }])).toMatchObject([{ x: 260, y: 50 }]);
});

test('of two that meet the first keeps its place and the other moves along its line', () => {
  expect(labelPlaces([text(50), text(55)], [])).toMatchObject([
    { x: 10, y: 50 },
    { x: 260, y: 55 },
  ]);
});

test('without room for both, the first stays', () => {
  const narrow = { width: 90, left: 0, right: 100 };
  expect(labelPlaces([text(50, narrow), text(55, narrow)], [])).toMatchObject([{ x: 0, y: 50 }, null]);
});

test('where left, middle and right are crossed, a text stands between them', () => {
  const curve = [60, 310, 560].map((x) => ({ x, y: 45 }));
  expect(labelPlaces([text(50)], curve)).toMatchObject([{ x: 135, y: 50 }]);
});

test('a text keeps clear of what stands already, and takes its next row where the first is full', () => {
  const strength = { x: 0, y: 60, width: 120, height: 20 };
  expect(labelPlaces([text(50)], [], [strength])).toMatchObject([{ x: 260, y: 50 }]);
  const all = { x: 0, y: 60, width: 700, height: 20 };
  expect(labelPlaces([{ ...text(50), rows: [50, 90] }], [], [all])).toMatchObject([{ x: 10, y: 90 }]);
});

test('a text that is wider than its line is left out', () => {
  expect(labelPlaces([text(50, { left: 540 })], [])).toEqual([null]);
});

test('the name of a line stands in it, and never covers another line', () => {
  expect(rowsAt(100, 20, [40, 160])).toEqual([110, 95, 125]);
  // 9 px under another: only under it is it its own name.
  expect(rowsAt(100, 20, [91])).toEqual([125]);
  expect(rowsAt(100, 20, [91, 109])).toEqual([]);
});

const row = { y: 200, height: 20, left: 0, right: 610 };

test('the words of marks in a row do not touch each other nor what stands already', () => {
  const marks = [0, 50, 112, 300, 560].map((x) => ({ x, width: 100 }));
  const stands = { x: 320, y: 205, width: 80, height: 20 };
  expect(wordsInRow(marks, row, { curve: [], stands: [stands] })).toEqual([
    { x: 0, y: 200 },
    null,
    { x: 112, y: 200 },
    // Up to their marks from the left.
    null,
    { x: 460, y: 200 },
  ]);
});

test('the words of a mark in a row are not struck through by the curve', () => {
  const climbs = Array.from({ length: 40 }, (_, i) => ({ x: 320, y: 10 * i }));
  const marks = [{ x: 300, width: 100 }];
  expect(wordsInRow(marks, row, { curve: climbs, stands: [] })).toEqual([{ x: 200, y: 200 }]);
  const twice = [...climbs, ...climbs.map(({ y }) => ({ x: 250, y }))];
  expect(wordsInRow(marks, row, { curve: twice, stands: [] })).toEqual([null]);
});

test('a text takes the first place that is free, and the first of all where none is', () => {
  const at = (y: number) => ({ x: 0, y, width: 100, height: 20 });
  expect(freePlace([at(50), at(80)], [at(45)])).toEqual(at(80));
  expect(freePlace([at(50), at(60)], [at(55)])).toEqual(at(50));
});

test('words beside a mark leave the curve free: over it, under it, at its left, then further away', () => {
  const area = { left: 0, right: 400, top: 0, bottom: 200 };
  const size = { width: 100, height: 14 };
  const at = (mark: Spot, curve: Spot[], stands: Taken[] = [], lines: number[] = []) =>
    besideMark(mark, size, area, { curve, stands, lines });
  const flat = (y: number): Spot[] => Array.from({ length: 41 }, (_, i) => ({ x: 10 * i, y }));
  // A curve that ends at the mark climbs to it from the left; nothing is to its right.
  expect(at({ x: 200, y: 100 }, flat(100))).toMatchObject({ x: 218, y: 82 });
  expect(at({ x: 200, y: 100 }, flat(76))).toMatchObject({ x: 218, y: 132 });
  // At the right edge the words move over the curve that climbs to the mark, so they stand under it.
  const climbs = Array.from({ length: 40 }, (_, i) => ({ x: 10 * i, y: 200 - 4 * i }));
  const place = at({ x: 390, y: 44 }, climbs)!;
  for (const { x, y } of climbs)
    expect(x > place.x && x < place.x + 100 && y > place.y - 14 && y < place.y).toBe(false);
  expect(place.x + 100).toBeLessThanOrEqual(400);
  // A limit's line is left free where that can be; the curve always: words that it would strike through are left out.
  expect(at({ x: 200, y: 100 }, flat(100), [], [75])).toMatchObject({ x: 218, y: 132 });
  expect(
    at(
      { x: 200, y: 100 },
      flat(100),
      [],
      Array.from({ length: 20 }, (_, i) => 10 * i + 5),
    ),
  ).not.toBeNull();
  const everywhere = Array.from({ length: 20 }, (_, i) => flat(10 * i)).flat();
  expect(at({ x: 200, y: 100 }, everywhere)).toBeNull();
  // What stands already is never touched, and where nothing is free nothing is said.
  expect(at({ x: 200, y: 100 }, flat(100), [{ x: 0, y: 200, width: 400, height: 200 }])).toBeNull();
});

test('between two texts beside each other there is a gap, and a smaller one between two over each other', () => {
  const one = { x: 200, y: 100, width: 100, height: 20 };
  const at = (x: number, y: number): boolean => isFree({ ...one, x, y }, [one]);
  expect([at(305, 100), at(306, 100), at(95, 100), at(94, 100)]).toEqual([false, true, false, true]);
  expect([at(200, 121), at(200, 122), at(200, 79), at(200, 78)]).toEqual([false, true, false, true]);
});

test('between a text and the curve there is a gap on every side', () => {
  const isMoved = (x: number, y: number): boolean => labelPlaces([text(50)], [{ x, y }])[0]?.x !== 10;
  expect([isMoved(115, 40), isMoved(117, 40), isMoved(5, 40), isMoved(3, 40)]).toEqual([true, false, true, false]);
  expect([isMoved(60, 55), isMoved(60, 57), isMoved(60, 25), isMoved(60, 23)]).toEqual([true, false, true, false]);
});

test('where the curve is everywhere a name stands over it, in its best row', () => {
  const everywhere = Array.from({ length: 80 }, (_, i) => ({ x: 8 * i, y: 45 }));
  expect(labelPlaces([text(50)], everywhere)).toMatchObject([{ x: 10, y: 50 }]);
});

test('the name of a line keeps clear of a line right over or under it', () => {
  expect(rowsAt(100, 20, [89])).toEqual([125]);
  expect(rowsAt(100, 20, [111])).toEqual([95]);
});

test('the words of a mark in a row that have room at neither side are left out', () => {
  const stands = { x: 60, y: 205, width: 540, height: 20 };
  expect(wordsInRow([{ x: 50, width: 100 }], row, { curve: [], stands: [stands] })).toEqual([null]);
});

test('words beside a mark stay within the chart: back from its right edge, under a mark at the top, never outside', () => {
  const area = { left: 0, right: 400, top: 0, bottom: 200 };
  const at = (mark: Spot, stands: Taken[] = []) =>
    besideMark(mark, { width: 100, height: 14 }, area, { curve: [], lines: [], stands });
  const wall = (x: number, width: number, y = 200, height = 200): Taken => ({ x, y, width, height });
  expect(at({ x: 390, y: 100 })).toMatchObject({ x: 300, y: 82 });
  expect(at({ x: 200, y: 10 })).toMatchObject({ x: 218, y: 42 });
  // At its left where something stands at its right, and nowhere where that would pass the edge.
  expect(at({ x: 200, y: 100 }, [wall(210, 190)])).toMatchObject({ x: 82, y: 82 });
  expect(at({ x: 50, y: 100 }, [wall(60, 340)])).toBeNull();
  expect(at({ x: 200, y: 190 }, [wall(0, 400, 180, 180)])).toBeNull();
  // Up to three rows away from it.
  expect(at({ x: 200, y: 100 }, [wall(0, 400, 150, 100)])).toMatchObject({ x: 218, y: 40 });
  expect(at({ x: 200, y: 100 }, [wall(0, 400, 180, 160)])).toBeNull();
});
