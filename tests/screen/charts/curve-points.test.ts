// Holes stay holes, and a cold pan does not flatten the part that matters.
import { expect, test } from 'vitest';
import { axisRange, curvePoints, valueAt } from '../../../src/screen/charts/curve-points.ts';
import type { Curve } from '../../../src/screen/client/types.ts';

const curve = (low: (number | null)[]): Curve => ({
  pan: 'p1',
  t: low.map((_, i) => i * 1000),
  low,
  high: low.map((value) => (value === null ? null : value + 1)),
  water: low.map(() => 98),
  finish: low.map(() => 102),
  scorch: low.map(() => 106),
  ahead: null,
});
const same = (celsius: number): number => celsius;

test('a gap stays a gap and numbers are in the unit shown', () => {
  const points = curvePoints(curve([100, null]), (celsius) => celsius * 1.8 + 32);
  expect(points.low).toEqual([
    { x: 0, y: 212 },
    { x: 1000, y: null },
  ]);
});

test('the axis covers readings and lines', () => {
  const { least, greatest } = axisRange(curvePoints(curve([97, 101]), same), [98, 102]);
  expect(least).toBeLessThan(97);
  expect(least).toBeGreaterThan(95);
  expect(greatest).toBeGreaterThan(106);
});

test('a pan that warms up enters from below; one that is only cold is shown whole', () => {
  expect(axisRange(curvePoints(curve([6, 101]), same), [98, 102]).least).toBeGreaterThan(70);
  expect(axisRange(curvePoints(curve([6, 20]), same), [98, 102]).least).toBeLessThan(6);
});

test('a pan that burns dry leaves the axis at the top, so that done and burns stay apart; how far it went is told', () => {
  const { greatest, above } = axisRange(curvePoints(curve([101, 104, 240, 180]), same), [98, 102]);
  expect(greatest).toBeLessThan(125);
  expect(above).toEqual({ x: 2000, y: 241 });
  expect(axisRange(curvePoints(curve([101, 104]), same), [98, 102]).above).toBeNull();
  // Where nothing else is shown, it is shown whole.
  expect(axisRange(curvePoints(curve([200, 240]), same), [98, 102])).toMatchObject({ above: null });
  expect(axisRange(curvePoints(curve([200, 240]), same), [98, 102]).greatest).toBeGreaterThan(241);
});

test('where nothing is known the axis spans boiling water and the finish in the unit that is shown', () => {
  const { least, greatest } = axisRange(curvePoints(curve([]), same), [209.8, 217.4]);
  expect(least).toBeLessThan(209);
  expect(least).toBeGreaterThan(200);
  expect(greatest).toBeGreaterThan(218);
  expect(greatest).toBeLessThan(230);
});

test('what is expected is drawn in the unit shown, and the limits stand on as they last stood', () => {
  const ahead = { t: [1000, 5000], low: [101, 101.5], middle: [101, 103], high: [101, 106] };
  const points = curvePoints({ ...curve([100, 101]), ahead }, (celsius) => celsius + 1);
  expect(points.ahead?.middle).toEqual([
    { x: 1000, y: 102 },
    { x: 5000, y: 104 },
  ]);
  expect(points.ahead?.high.at(-1)).toEqual({ x: 5000, y: 107 });
  expect(points.finish.at(-1)).toEqual({ x: 5000, y: 103 });
  expect(points.low).toHaveLength(2);
});

test('the place of a mark on the curve is that of the nearest reading, and none where none is near', () => {
  const point = (x: number, y: number | null) => ({ x, y });
  const points = {
    low: [point(0, 99), point(60_000, 100), point(120_000, null)],
    high: [point(0, 101), point(60_000, 101), point(120_000, null)],
    ...{ water: [], finish: [], scorch: [], ahead: null },
  };
  expect(valueAt(points, 20_000)).toBe(100);
  expect(valueAt(points, 110_000)).toBe(100.5);
  expect(valueAt(points, 60_000 + 300_001)).toBeNull();
});
