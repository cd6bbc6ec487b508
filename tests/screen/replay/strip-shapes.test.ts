// The strip of a whole boil in shapes: scales, paths with gaps, alarms taken together, and presses that find their alarm.
import { expect, test } from 'vitest';
import type { Call, PanStrip } from '../../../src/protocol/replay-messages.ts';
import { clustersOf, pathOf, scaleOf, snapped } from '../../../src/screen/replay/strip-shapes.ts';

const call = (raised: number, priority: Call['priority']): Call => ({
  pan: 'p1',
  port: null,
  alarm: 'low-level',
  priority,
  raised,
  ended: null,
  why: '14 mm deep, the least is 15 mm',
});

const pan = (low: (number | null)[], high = low): PanStrip => ({
  pan: 'p1',
  low,
  high,
  brix: low.map(() => null),
  water: low.map(() => 98),
  finish: low.map(() => 102),
});

test('alarms too near each other are one symbol with the worst of their priorities', () => {
  const clusters = clustersOf([call(300, 'low'), call(0, 'medium'), call(90, 'high'), call(120, 'low')], 100);
  expect(clusters.map(({ at, priority, calls }) => [at, priority, calls.length])).toEqual([
    [0, 'high', 2],
    [120, 'low', 1],
    [300, 'low', 1],
  ]);
});

test('a press beside an alarm goes to it, and any other press stays where it was', () => {
  expect(snapped(1008, [500, 1000, 1010], 10)).toBe(1010);
  expect(snapped(700, [500, 1000], 10)).toBe(700);
});

test('the scale holds the finish and leaves a cold pan at its foot', () => {
  const scale = scaleOf([pan([5, 98, 101])], 'temperature');
  expect(scale).toEqual({ least: 94, greatest: 102 });
  expect(pathOf([5, 98, null, 102], scale!, 80)).toBe('M0.5 80.0L1.5 40.0M3.5 0.0');
});

test('nothing known has no scale, and a strength begins at nothing', () => {
  expect(scaleOf([pan([null, null])], 'temperature')).toBeNull();
  expect(scaleOf([{ ...pan([98]), brix: [4] }], 'strength')).toEqual({ least: 0, greatest: 10 });
});
