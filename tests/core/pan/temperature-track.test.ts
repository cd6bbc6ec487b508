// Checks temperature, noise and rate of rise against series whose truth is known: ramps, boiling noise, spikes and silence.
import { expect, test } from 'vitest';
import {
  closeBlock,
  hearReading,
  rateOfRise,
  startTrack,
  temperatureNow,
  type TemperatureTrack,
} from '../../../src/core/pan/temperature-track.ts';
import { nextNormal, nextUniform, randomStream } from '../../../src/core/simulation/random.ts';

const MINUTE_MS = 60_000;

/** Readings once a period from 0 up to and with `until`, blocks closed every second as the model does it. */
function tracked(until: number, celsiusAt: (t: number) => number, period = 1000): TemperatureTrack {
  const track = startTrack();
  for (let t = 0; t <= until; t += 250) {
    if (t % period === 0) hearReading(track, t, celsiusAt(t));
    if (t % 1000 === 0) closeBlock(track, t);
  }
  return track;
}

function noisy(sigma: number, seed: number, truth: (t: number) => number): (t: number) => number {
  const stream = randomStream(seed, 'boiling noise');
  return (t) => truth(t) + sigma * nextNormal(stream);
}

test.each([0, 0.1, 0.5, 2])('the rate of a ramp of %d °C/min is found', (perMinute) => {
  const until = 10 * MINUTE_MS;
  const track = tracked(
    until,
    noisy(0.1, 3, (t) => 98 + (perMinute * t) / MINUTE_MS),
  );
  expect(Math.abs(rateOfRise(track, until, -1)! - perMinute)).toBeLessThan(0.08);
});

test.each([0.05, 0.2, 0.5])('boiling noise of %d °C (trade.md: ±0.2–0.5 second to second) is found', (sigma) => {
  const track = tracked(
    5 * MINUTE_MS,
    noisy(sigma, 11, () => 98),
  );
  expect(track.noise! / sigma).toBeGreaterThan(0.5);
  expect(track.noise! / sigma).toBeLessThan(1.7);
});

test.each([1, 2, 3, 4, 5])(
  'spikes up to ±60 °C in one of fifty readings move neither temperature nor rate (seed %i)',
  (seed) => {
    const until = 30 * MINUTE_MS;
    const stream = randomStream(seed, 'spikes');
    const spike = (): number => (nextUniform(stream) < 0.02 ? 120 * (nextUniform(stream) - 0.5) : 0);
    const clean = noisy(0.1, seed, () => 101);
    const track = startTrack();
    for (let t = 0; t <= until; t += 1000) {
      hearReading(track, t, clean(t) + spike());
      closeBlock(track, t);
      if (t < MINUTE_MS) continue;
      expect(Math.abs(temperatureNow(track, t, 1000)! - 101), `at ${t} ms`).toBeLessThan(0.5);
      expect(Math.abs(rateOfRise(track, t, -1)!), `at ${t} ms`).toBeLessThan(0.4);
    }
  },
);

test('a temperature is no longer known once nothing came for five periods', () => {
  const track = tracked(MINUTE_MS, () => 98);
  expect(temperatureNow(track, MINUTE_MS + 5000, 1000)).toBe(98);
  expect(temperatureNow(track, MINUTE_MS + 5001, 1000)).toBeNull();
  expect(temperatureNow(startTrack(), 0, 1000)).toBeNull();
});

test('a slow board is read as well: one line in five seconds', () => {
  const until = 10 * MINUTE_MS;
  const track = tracked(until, (t) => 98 + (0.5 * t) / MINUTE_MS, 5000);
  expect(rateOfRise(track, until, -1)).toBeCloseTo(0.5, 2);
  expect(Math.abs(temperatureNow(track, until, 5000)! - 103)).toBeLessThan(0.1);
});

test('a coarse probe of 0.25 °C steps does not hide a slow climb', () => {
  const until = 20 * MINUTE_MS;
  const climb = noisy(0.05, 4, (t) => 98 + (0.1 * t) / MINUTE_MS);
  const track = tracked(until, (t) => Math.round(climb(t) * 4) / 4);
  expect(Math.abs(rateOfRise(track, until, -1)! - 0.1)).toBeLessThan(0.06);
});

test('what was before a pour has no part in the rate after it', () => {
  const pour = 5 * MINUTE_MS;
  const track = tracked(7 * MINUTE_MS, (t) => (t < pour ? 101 : 84 + (2 * (t - pour)) / MINUTE_MS));
  expect(Math.abs(rateOfRise(track, 7 * MINUTE_MS, pour)! - 2)).toBeLessThan(0.05);
  expect(rateOfRise(track, 7 * MINUTE_MS, 7 * MINUTE_MS - 20_000)).toBeNull();
});

test('lines held back in a stall and sent at once make no rate of rise', () => {
  const track = tracked(5 * MINUTE_MS, () => 98);
  const after = 6 * MINUTE_MS;
  for (let held = 0; held < 60; held++) hearReading(track, after, 98 + held * 0.002);
  closeBlock(track, after + 5000);
  for (let t = after + 6000; t < after + 60_000; t += 1000) {
    hearReading(track, t, 98.12);
    closeBlock(track, t);
  }
  expect(Math.abs(rateOfRise(track, after + 60_000, -1)!)).toBeLessThan(0.2);
});
