// The pyramid of a pan's curve: extremes are never lost, gaps stay gaps, and few rows are handed out of many.
import { expect, test } from 'vitest';
import { nextUniform, randomStream } from '../../../src/core/simulation/random.ts';
import { CurvePyramid } from '../../../src/screen/charts/curve-pyramid.ts';
import type { CurveSlice } from '../../../src/screen/charts/curve-pyramid.ts';

const HOUR = 3_600_000;

function rows(times: readonly number[], celsius: (t: number) => number): CurveSlice {
  const values = times.map(celsius);
  const limit = times.map(() => 98);
  return { t: [...times], low: values, high: values, water: limit, finish: limit, scorch: limit };
}

const everyTwoSeconds = (from: number, to: number): number[] =>
  Array.from({ length: (to - from) / 2000 }, (_, i) => from + 2000 * i);

test('a spike of two seconds shows in any stretch of fourteen hours, whatever its length', () => {
  const stream = randomStream(8, 'spikes');
  const spikeAt = Math.floor((nextUniform(stream) * 14 * HOUR) / 2000) * 2000;
  const pyramid = new CurvePyramid();
  pyramid.append(rows(everyTwoSeconds(0, 14 * HOUR), (t) => (t === spikeAt ? 140 : 99)));
  for (let tried = 0; tried < 400; tried += 1) {
    const from = nextUniform(stream) * spikeAt;
    const to = spikeAt + nextUniform(stream) * (14 * HOUR - spikeAt);
    const slice = pyramid.between(from, to, 600);
    expect(Math.max(...slice.high.map((value) => value ?? 0))).toBe(140);
    expect(slice.t.length).toBeLessThanOrEqual(603);
  }
});

test('least and greatest of each row are those of the readings in it', () => {
  const stream = randomStream(9, 'noise');
  const times = everyTwoSeconds(0, 3 * HOUR);
  const noise = times.map(() => 95 + 10 * nextUniform(stream));
  const pyramid = new CurvePyramid();
  pyramid.append(rows(times, (t) => noise[t / 2000] ?? 0));
  const slice = pyramid.between(0, 3 * HOUR, 100);
  let before = -1;
  for (const [i, t] of slice.t.entries()) {
    const inside = noise.slice(before + 1, t / 2000 + 1);
    expect([slice.low[i], slice.high[i]]).toEqual([Math.min(...inside), Math.max(...inside)]);
    before = t / 2000;
  }
});

test('a gap lifts the pen, and a row that comes again changes nothing', () => {
  const pyramid = new CurvePyramid();
  const early = rows(everyTwoSeconds(0, HOUR), () => 98);
  pyramid.append(early);
  pyramid.append(rows([HOUR - 2000, ...everyTwoSeconds(2 * HOUR, 3 * HOUR)], () => 99));
  const slice = pyramid.between(0, 3 * HOUR, 500);
  const lifted = slice.t.filter((_, i) => slice.low[i] === null);
  expect(lifted).toEqual([HOUR - 1999]);
  expect(pyramid.lastT).toBe(3 * HOUR - 2000);
  expect(slice.low[slice.t.indexOf(HOUR - 2000)]).toBe(98);
});

test('the lowest floor hands the readings back as they came, with one beyond each edge', () => {
  const pyramid = new CurvePyramid();
  pyramid.append(rows(everyTwoSeconds(0, HOUR), (t) => t / 1000));
  const { t, low } = pyramid.between(10_000, 14_000, 500);
  expect(t).toEqual([8000, 10_000, 12_000, 14_000, 16_000]);
  expect(low).toEqual([8, 10, 12, 14, 16]);
});

test('nothing comes of a pan that never had a reading', () => {
  const pyramid = new CurvePyramid();
  pyramid.append({ t: [0, 2000], low: [null, null], high: [null, null], water: [98, 98], finish: [], scorch: [] });
  expect(pyramid.lastT).toBeNull();
  expect(pyramid.between(0, HOUR, 100).t).toEqual([]);
});
