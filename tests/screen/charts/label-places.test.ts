// The chart's line names: the one that warns of burning is never the one that is left out.
import { expect, test } from 'vitest';
import { freePlace, labelPlaces, wordsInRow } from '../../../src/screen/charts/label-places.ts';

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
