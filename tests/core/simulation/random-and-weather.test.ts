// The seeded streams, coloured noise, pressure lines and fires.
import { expect, test } from 'vitest';
import { driftingNoise, nextNormal, nextUniform, randomStream } from '../../../src/core/simulation/random.ts';
import { moveAir, moveFire, plannedPressure, startAir, startFire } from '../../../src/core/simulation/weather.ts';

const many = <T>(count: number, make: () => T): T[] => Array.from({ length: count }, make);
const mean = (values: number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const spread = (values: number[]): number => {
  const middle = mean(values);
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)));
};

test('one seed and name give one series; another seed or name gives another', () => {
  const series = (seed: number, name: string): number[] => {
    const stream = randomStream(seed, name);
    return many(5, () => nextUniform(stream));
  };
  expect(series(7, 'weather')).toEqual(series(7, 'weather'));
  expect(series(7, 'weather')).not.toEqual(series(8, 'weather'));
  expect(series(7, 'weather')).not.toEqual(series(7, 'probes'));
});

test('uniform numbers lie in [0, 1) with mean 1/2, normal ones have mean 0 and spread 1', () => {
  const stream = randomStream(3, 'test');
  const uniform = many(20_000, () => nextUniform(stream));
  expect(uniform.every((value) => value >= 0 && value < 1)).toBe(true);
  expect(mean(uniform)).toBeCloseTo(0.5, 1);
  const normal = many(20_000, () => nextNormal(stream));
  expect(Math.abs(mean(normal))).toBeLessThan(0.03);
  expect(Math.abs(spread(normal) - 1)).toBeLessThan(0.03);
});

test('drifting noise keeps its spread and forgets itself by 1/e over its memory', () => {
  const stream = randomStream(4, 'test');
  let value = 0;
  const series = many(
    60_000,
    () => (value = driftingNoise(value, { seconds: 1, memorySeconds: 50, spread: 2 }, stream)),
  );
  expect(Math.abs(spread(series) - 2)).toBeLessThan(0.2);
  const together = mean(series.slice(0, -50).map((now, index) => now * (series[index + 50] ?? 0)));
  expect(together / spread(series) ** 2).toBeCloseTo(Math.exp(-1), 1);
});

test('pressure follows its line, level before and after it', () => {
  const line = [
    { t: 1000, hpa: 940 },
    { t: 3000, hpa: 930 },
  ];
  expect([0, 1000, 2000, 3000, 9000].map((t) => plannedPressure(line, t))).toEqual([940, 940, 935, 930, 930]);
  expect(() => plannedPressure([], 0)).toThrow('pressure');
});

test('wind is never negative and water boils where the pressure says', () => {
  const plan = { celsius: 5, windMetresPerSecond: 0.5, windSpread: 1, pressure: [{ t: 0, hpa: 1013.25 }] };
  const air = startAir(plan);
  const random = randomStream(5, 'weather');
  const winds = Array.from({ length: 3000 }, (_, second) => {
    moveAir(air, plan, second * 1000, random);
    return air.windMetresPerSecond;
  });
  expect(Math.min(...winds)).toBe(0);
  expect(air.waterCelsius).toBeCloseTo(99.974, 1);
  expect(() => startAir({ ...plan, pressure: [{ t: 0, hpa: 0 }] })).toThrow('hPa');
});

test('gas is steady, wood swings, electric heat does not move', () => {
  const strengths = (kind: 'propane' | 'wood' | 'electric'): number[] => {
    const fire = startFire();
    const random = randomStream(6, 'weather');
    let second = 0;
    return many(4 * 3600, () => {
      moveFire(fire, kind, second++, random);
      return fire.strength;
    });
  };
  expect(spread(strengths('propane'))).toBeLessThan(0.04);
  expect(spread(strengths('wood'))).toBeGreaterThan(0.1);
  expect(mean(strengths('wood'))).toBeGreaterThan(0.8);
  expect(mean(strengths('wood'))).toBeLessThan(1.1);
  expect(new Set(strengths('electric'))).toEqual(new Set([1]));
});
