// The words of a whole drawing: names stand in their lines, and nothing that is written lies over anything else.
import type { Chart } from 'chart.js';
import { expect, test } from 'vitest';
import { textsOf } from '../../../src/screen/charts/chart-words.ts';
import type { Point } from '../../../src/screen/charts/curve-points.ts';
import { stepSpots } from '../../../src/screen/charts/curve-steps.ts';
import type { ChartText } from '../../../src/screen/charts/curve-steps.ts';
import type { Drawing } from '../../../src/screen/charts/drawing.ts';
import { isFree } from '../../../src/screen/charts/label-places.ts';

const AREA = { left: 60, right: 860, top: 40, bottom: 340 };
const MINUTE = 60_000;
const LEAST = 96;
const GREATEST = 106;
/** 60 min along, 96 to 106 °C upwards; a letter is 12 px wide. */
const atX = (t: number): number => AREA.left + (t / (60 * MINUTE)) * (AREA.right - AREA.left);
const atY = (celsius: number): number =>
  AREA.bottom - ((celsius - LEAST) / (GREATEST - LEAST)) * (AREA.bottom - AREA.top);
const chart = {
  width: 900,
  chartArea: AREA,
  ctx: { measureText: (word: string) => ({ width: 12 * word.length }) },
  scales: { x: { getPixelForValue: atX }, y: { getPixelForValue: atY } },
} as unknown as Chart;

const level = (y: number, from = 0): Point[] => [from, 60].map((minutes) => ({ x: minutes * MINUTE, y }));
const climb: Point[] = Array.from({ length: 61 }, (_, i) => ({ x: i * MINUTE, y: 98.2 + i * 0.03 }));
const drawing: Drawing = {
  points: { low: climb, high: climb, water: level(98), finish: level(102), scorch: level(104.6), ahead: null },
  from: 0,
  to: 60 * MINUTE,
  now: 60 * MINUTE,
  flags: [],
  calls: [],
  usual: [],
  dots: [],
  steps: [],
  wallOffsetMs: 0,
  ghost: null,
  unit: '°C',
};
const range = { least: LEAST, greatest: GREATEST, above: null };

function written(change: Partial<Drawing>, above: Parameters<typeof textsOf>[1]['above'] = null): ChartText[] {
  const one = { ...drawing, ...change };
  const spots = stepSpots(chart, one, 280);
  const flagged = one.flags.map(({ x, word }) => ({ x: atX(x), word }));
  return textsOf(chart, { ...range, above }, one, { spots, flagged });
}
const placeOf = (texts: readonly ChartText[], word: string): ChartText | null =>
  texts.find((each) => each.word.replaceAll('\u00a0', ' ') === word) ?? null;

test('each line is named in itself, at its left', () => {
  const texts = written({});
  for (const [word, celsius] of [
    ['burns', 104.6],
    ['done', 102],
  ] as const) {
    const place = placeOf(texts, word);
    expect(place!.y - place!.height / 2).toBeCloseTo(atY(celsius), 6);
    expect(place!.x).toBe(AREA.left + 14);
  }
  // A line that begins late is named where it is, and one out of sight not at all.
  const late = written({ points: { ...drawing.points, finish: level(102, 30), scorch: level(120) } });
  expect(placeOf(late, 'done')!.x).toBe(atX(30 * MINUTE) + 14);
  expect(placeOf(late, 'burns')).toBeNull();
});

test('where a name is known only by a curve that runs in it, it makes way, and dots do the same', () => {
  const along: Point[] = climb.map(({ x }, i) => ({ x, y: i < 20 ? 102 : null }));
  const points = { ...drawing.points, low: along, high: along };
  expect(placeOf(written({ points }), 'done')!.x).toBeGreaterThan(atX(19 * MINUTE));
  expect(placeOf(written({ dots: [{ x: 2 * MINUTE, y: 102 }] }), 'done')!.x).toBeGreaterThan(AREA.left + 14);
});

test('of notes that stand close together those have words that have the room, and a pole is never written over', () => {
  const flags = [10, 11, 30].map((minutes) => ({ x: minutes * MINUTE, word: 'Top-up' }));
  // Boiling water lies out of sight, so that its name takes none of the room.
  const points = { ...drawing.points, water: level(90) };
  const places = written({ flags, points }).filter(({ word }) => word === 'Top-up');
  expect(places.map(({ x }) => Math.round(x))).toEqual([Math.round(atX(10 * MINUTE)), Math.round(atX(30 * MINUTE))]);
});

test('a change of strength stands beside its mark, and the latest keeps its words where two have no room', () => {
  const steps = [20, 21].map((minutes) => ({ x: minutes * MINUTE, word: `5${minutes} → 58 °Bx`, finish: null }));
  const texts = written({ steps });
  const last = placeOf(texts, '521 → 58 °Bx')!;
  expect(Math.abs(last.x - atX(21 * MINUTE))).toBeLessThan(last.width + 30);
  expect(written({ steps: [{ ...steps[0]!, word: null }] }).some(({ word }) => word.includes('→'))).toBe(false);
});

test('how hot a pan got that left the axis is said at the top, with its time', () => {
  const texts = written({}, { x: 50 * MINUTE, y: 240 });
  const said = texts.find(({ word }) => word.includes('240'))!;
  expect(said.word).toContain('00:50');
  expect(said.y).toBeLessThan(atY(102));
});

test('however much there is to write, nothing lies over anything else', () => {
  const flags = [1, 5, 9, 20, 22, 40, 58].map((minutes) => ({ x: minutes * MINUTE, word: 'Density' }));
  const steps = [5, 20, 21, 22, 40, 59].map((minutes) => ({ x: minutes * MINUTE, word: '52 → 58 °Bx', finish: null }));
  const ahead = { low: level(101, 40), middle: level(102, 40), high: level(103, 40) };
  const texts = written(
    { flags, steps, now: 40 * MINUTE, points: { ...drawing.points, ahead } },
    { x: 50 * MINUTE, y: 240 },
  );
  expect(texts.length).toBeGreaterThan(6);
  for (const [i, one] of texts.entries()) {
    expect(isFree(one, [...texts.slice(0, i), ...texts.slice(i + 1)]), one.word).toBe(true);
    expect(one.x).toBeGreaterThanOrEqual(AREA.left);
    expect(one.x + one.width).toBeLessThanOrEqual(AREA.right);
  }
});
