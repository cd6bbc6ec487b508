// The chart's line names: the one that warns of burning is never the one that is left out.
import { expect, test } from 'vitest';
import { besideMark, freePlace, labelPlaces, wordsInRow } from '../../../src/screen/charts/label-places.ts';
import type { Spot, Taken } from '../../../src/screen/charts/label-places.ts';

const text = (y: number, width = 100) => ({ width, height: 20, y });

test('a text stands at the left where the curve leaves it free', () => {
  expect(labelPlaces([text(50)], [{ x: 20, y: 200 }], 10, 610)).toEqual([{ x: 10, y: 50 }]);
});

test('a text gets out of the way of the curve', () => {
  expect(labelPlaces([text(50)], [{ x: 20, y: 45 }], 10, 610)).toEqual([{ x: 260, y: 50 }]);
});

test('of two that meet the first keeps its place and the other moves along its line', () => {
  const [burns, done] = labelPlaces([text(50), text(55)], [], 10, 610);
  expect(burns).toEqual({ x: 10, y: 50 });
  expect(done).toEqual({ x: 260, y: 55 });
});

test('without room for both, the first stays', () => {
  expect(labelPlaces([text(50, 90), text(55, 90)], [], 0, 100)).toEqual([{ x: 0, y: 50 }, null]);
});

test('where left, middle and right are crossed, a text stands between them', () => {
  const curve = [60, 310, 560].map((x) => ({ x, y: 45 }));
  expect(labelPlaces([text(50)], curve, 10, 610)).toEqual([{ x: 135, y: 50 }]);
});

test('a text keeps clear of what stands already', () => {
  const strength = { x: 0, y: 60, width: 120, height: 20 };
  expect(labelPlaces([text(50)], [], 10, 610, [strength])).toEqual([{ x: 260, y: 50 }]);
});

test('the words of marks in a row do not touch each other nor what stands already', () => {
  const marks = [0, 50, 110, 300, 560].map((x) => ({ x, width: 100 }));
  const stands = { x: 320, y: 205, width: 80, height: 20 };
  expect(wordsInRow(marks, { y: 200, height: 20, right: 610 }, [stands])).toEqual([
    { x: 0, y: 200 },
    null,
    { x: 110, y: 200 },
    null,
    null,
  ]);
});

test('a text takes the first place that is free, and the first of all where none is', () => {
  const at = (y: number) => ({ x: 0, y, width: 100, height: 20 });
  expect(freePlace([at(50), at(80)], [at(45)])).toEqual(at(80));
  expect(freePlace([at(50), at(60)], [at(55)])).toEqual(at(50));
});

test('words beside a mark leave the curve free: over it, under it, at its left, then further away', () => {
  const area = { left: 0, right: 400, top: 0, bottom: 200 };
  const size = { width: 100, height: 14 };
  const at = (mark: Spot, curve: Spot[], stands: Taken[] = []) => besideMark(mark, size, area, { curve, stands });
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
  // What stands already is never touched, and where nothing is free nothing is said.
  expect(at({ x: 200, y: 100 }, flat(100), [{ x: 0, y: 200, width: 400, height: 200 }])).toBeNull();
});
