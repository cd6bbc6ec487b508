// The words of a whole drawing: names stand in their lines, and nothing that is written lies over anything else.
import type { Chart } from 'chart.js';
import { expect, test } from 'vitest';
import { FLAG_PX, POLE_PX, textsOf } from '../../../src/screen/charts/chart-words.ts';
import type { Point } from '../../../src/screen/charts/curve-points.ts';
import { stepRoom, stepSpots } from '../../../src/screen/charts/curve-steps.ts';
import type { ChartText, Step } from '../../../src/screen/charts/curve-steps.ts';
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
  const late = written({ points: { ...drawing.points, finish: level(102, 30), scorch: level(120), water: level(90) } });
  expect(placeOf(late, 'done')!.x).toBe(atX(30 * MINUTE) + 14);
  expect(late.map(({ word }) => word)).toEqual(['done']);
});

test('where a name is known only by a curve that runs in it, it makes way, and dots do the same', () => {
  const along: Point[] = climb.map(({ x }, i) => ({ x, y: i < 20 ? 102 : null }));
  const points = { ...drawing.points, low: along, high: along };
  expect(placeOf(written({ points }), 'done')!.x).toBeGreaterThan(atX(19 * MINUTE));
  expect(placeOf(written({ dots: [{ x: 2 * MINUTE, y: 102 }] }), 'done')!.x).toBeGreaterThan(AREA.left + 14);
});

test('of notes that stand close together those have words that have the room, and a pole is never written over', () => {
  const three = [10, 11, 30].map((minutes) => ({ x: minutes * MINUTE, word: 'Top-up' }));
  // Boiling water lies out of sight, so that its name takes none of the room.
  const points = { ...drawing.points, water: level(90) };
  const places = written({ flags: three, points }).filter(({ word }) => word === 'Top-up');
  expect(places.map(({ x }) => Math.round(x))).toEqual([Math.round(atX(10 * MINUTE)), Math.round(atX(30 * MINUTE))]);
});

test('a change of strength stands beside its mark, and the latest keeps its words where two have no room', () => {
  const two = [20, 21].map((minutes) => ({ x: minutes * MINUTE, word: `5${minutes} → 58 °Bx`, finish: null }));
  const texts = written({ steps: two });
  const last = placeOf(texts, '521 → 58 °Bx')!;
  expect(Math.abs(last.x - atX(21 * MINUTE))).toBeLessThan(last.width + 30);
  expect(written({ steps: [{ ...two[0]!, word: null }] }).some(({ word }) => word.includes('→'))).toBe(false);
});

test('how hot a pan got that left the axis is said at the top, with its time', () => {
  const texts = written({}, { x: 50 * MINUTE, y: 240 });
  const said = texts.find(({ word }) => word.includes('240'))!;
  expect(said.word).toContain('00:50');
  expect(said.y).toBeLessThan(atY(102));
});

const minutesOf = (all: readonly number[], word: string) => all.map((minutes) => ({ x: minutes * MINUTE, word }));
const steps = (...all: number[]): Step[] => minutesOf(all, '52 → 58 °Bx').map((each) => ({ ...each, finish: null }));
const flags = minutesOf([1, 5, 9, 20, 22, 40, 58], 'Density');
const flat = (y: number): Point[] => climb.map(({ x }) => ({ x, y }));
const ahead = { low: level(101, 40), middle: level(102, 40), high: level(103, 40) };
const atFoot = { ...drawing.points, water: level(96.4) };

test.each<[string, Partial<Drawing>, { x: number; y: number } | null]>([
  [
    'what is expected',
    { flags, steps: steps(5, 20, 21, 22, 40, 59), points: { ...drawing.points, ahead }, now: 40 * MINUTE },
    null,
  ],
  ['what is expected, with a note as of now', { flags, points: { ...atFoot, ahead }, now: 40 * MINUTE }, null],
  [
    'a mark right under a name',
    { steps: steps(1), points: { ...drawing.points, low: flat(101.4), high: flat(101.4) } },
    null,
  ],
  [
    'marks on a line',
    { steps: steps(2, 30, 55), points: { ...drawing.points, low: flat(102), high: flat(102) } },
    null,
  ],
  ['notes under a name', { flags, points: atFoot }, null],
  ['a pan that left the axis early', { flags, steps: steps(5) }, { x: 2 * MINUTE, y: 240 }],
])('nothing that is written lies over anything else: %s', (_, change, above) => {
  const texts = written(change, above);
  expect(texts.length).toBeGreaterThan(2);
  const poles = (change.flags ?? []).map(({ x }) => ({ x: atX(x), y: AREA.bottom, width: FLAG_PX, height: POLE_PX }));
  const marks = stepRoom(stepSpots(chart, { ...drawing, ...change }, 280));
  for (const [i, one] of texts.entries()) {
    expect(isFree(one, [...texts.slice(0, i), ...texts.slice(i + 1), ...poles, ...marks]), one.word).toBe(true);
    expect(one.x).toBeGreaterThanOrEqual(AREA.left);
    expect(one.x + one.width).toBeLessThanOrEqual(AREA.right);
  }
});
