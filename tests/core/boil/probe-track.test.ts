// Checks when a probe counts as late, lost or broken, and that a stall or a burst does not fool its period.
import { expect, test } from 'vitest';
import {
  lostAt,
  periodMs,
  probeHears,
  probeState,
  startProbe,
  type ProbeTrack,
} from '../../../src/core/boil/probe-track.ts';

/** Heard once a period from 0 up to and with `until`, ms. */
function heard(period: number, until: number, celsius: number | null = 98): ProbeTrack {
  const probe = startProbe('A', 0);
  for (let t = 0; t <= until; t += period) probeHears(probe, t, celsius);
  return probe;
}

test.each([500, 1000, 2000, 5000])('a probe of %i ms is late at two periods and lost at five', (period) => {
  const last = 20 * period;
  const probe = heard(period, last);
  expect(probeState(probe, last + 2 * period - 1)).toBe('ok');
  expect(probeState(probe, last + 2 * period)).toBe('late');
  expect(probeState(probe, last + 5 * period - 1)).toBe('late');
  expect(probeState(probe, last + 5 * period)).toBe('lost');
  expect(lostAt(probe)).toBe(last + 5 * period);
});

test('a board that speaks ten times a second is judged as one that speaks twice', () => {
  expect(periodMs(heard(100, 5000))).toBe(500);
});

test('a probe that the device calls broken is broken until a number comes', () => {
  const probe = heard(1000, 10_000);
  expect(probeHears(probe, 11_000, null)).toBeNull();
  expect(probeState(probe, 11_000)).toBe('broken');
  expect(probeHears(probe, 12_000, 98.5)).toBe(98.5);
  expect(probeState(probe, 12_000)).toBe('ok');
});

test('a broken probe that then says nothing is lost', () => {
  const probe = heard(1000, 10_000);
  probeHears(probe, 11_000, null);
  expect(probeState(probe, 16_000)).toBe('lost');
});

test('85.000 as the first number is a power-on value; later it is a temperature (trade.md, Known bad values)', () => {
  const probe = startProbe('A', 0);
  expect(probeHears(probe, 0, 85)).toBeNull();
  expect(probeState(probe, 0)).toBe('broken');
  expect(probeHears(probe, 1000, 84.9)).toBe(84.9);
  expect(probeHears(probe, 2000, 85)).toBe(85);
  expect(probeState(probe, 2000)).toBe('ok');
});

test('a burst of held lines after a stall leaves the period as it was', () => {
  const probe = heard(1000, 20_000);
  for (let held = 0; held < 60; held++) probeHears(probe, 80_000 + held, 98);
  expect(periodMs(probe)).toBe(1000);
  expect(probeState(probe, 80_059 + 2000)).toBe('late');
});

test('one late line does not change the period', () => {
  const probe = heard(1000, 20_000);
  probeHears(probe, 29_000, 98);
  expect(periodMs(probe)).toBe(1000);
});

test('a probe that was never heard counts as lost 30 s after it was first waited for', () => {
  const probe = startProbe('A', 10_000);
  expect(probeState(probe, 39_999)).toBe('late');
  expect(probeState(probe, 40_000)).toBe('lost');
});
