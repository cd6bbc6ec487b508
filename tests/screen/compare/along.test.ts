// Along a comparison the label and its ticks are in one unit, whatever part of the boils is drawn.
import { expect, test } from 'vitest';
import { alongOf } from '../../../src/screen/compare/along.ts';
import { metric } from '../moment.ts';

/** Hours before the finish, and whether something is drawn there. */
const line = (...points: [x: number, isDrawn: boolean][]) => ({
  points: points.map(([x, isDrawn]) => ({ x, y: isDrawn ? 60 : null })),
});

const told = (...lines: ReturnType<typeof line>[]): string[] => {
  const xs = lines.flatMap(({ points }) => points.flatMap(({ x, y }) => (y === null ? [] : [x])));
  const { title, ticks } = alongOf('before-finish', lines, metric);
  const span = { least: Math.min(...xs), greatest: Math.max(...xs) };
  return [title, ...(ticks?.(span, 7) ?? []).map(({ at, word }) => `${Math.round(-at * 60)} min: ${word}`)];
};

test('a boil of seven hours that is drawn for its last half hour goes by minutes, label and ticks', () => {
  expect(told(line([-6.5, false], [-0.5, true], [0, true]))).toEqual([
    'minutes before the finish',
    ...['30 min: 30', '25 min: 25', '20 min: 20', '15 min: 15', '10 min: 10', '5 min: 5', '0 min: done'],
  ]);
});

test('where one of two is long, both go by hours', () => {
  expect(told(line([-0.5, true], [0, true]), line([-4, true], [0, true]))).toEqual([
    'hours before the finish',
    ...['240 min: 4', '180 min: 3', '120 min: 2', '60 min: 1', '0 min: done'],
  ]);
});

test('by the clock every tick has its own minute', () => {
  const { ticks } = alongOf('clock', [], metric);
  const words = ticks!({ least: 4, greatest: 4.75 }, 5).map(({ word }) => word);
  expect(words).toEqual(['04:00', '04:10', '04:20', '04:30', '04:40']);
});
