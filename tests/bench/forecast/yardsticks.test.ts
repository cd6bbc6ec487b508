// The yardsticks give the exact time where what they assume is exactly true.
import { expect, test } from 'vitest';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';
import { saturationPressureHpa } from '../../../src/core/physics/water-point.ts';
import { readingOf } from './pan-case.ts';
import { secondsTo, yardsticks } from './yardsticks.ts';

const shares = sugarShares('maple');
const water = 98;
const told = { shares, finish: { rise_c: 4 } };
const series = (celsius: (secondsAgo: number) => number | null) =>
  Array.from({ length: 20 }, (_, index) => readingOf({ temperature_c: celsius((19 - index) * 30), water_c: water }));

test('a temperature that climbs straight by 0.01 °C a second from 1 °C under its finish takes 100 s', () => {
  expect(
    yardsticks(
      series((ago) => 101 - 0.01 * ago),
      told,
      30,
    ).line,
  ).toBeCloseTo(100, 6);
});

test('the reciprocal law is exact while 1/B falls straight, and the straight line promises far too much', () => {
  const hpa = saturationPressureHpa(water) ?? NaN;
  const brixAgo = (ago: number): number => 1 / (1 / 55 + (ago * (1 / 55 - 1 / 66)) / 900);
  const given = series((ago) => water + (riseFromStrength(brixAgo(ago), shares, hpa) ?? NaN));
  const { line, law } = yardsticks(given, { shares, finish: { brix: 66 } }, 30);
  expect(law).toBeCloseTo(900, 0);
  expect(line ?? 0).toBeGreaterThan(1200);
});

test('a line that falls gives no time; one that has passed gives 0; too few temperatures give none', () => {
  expect(
    yardsticks(
      series((ago) => 101 + 0.01 * ago),
      told,
      30,
    ),
  ).toMatchObject({ line: null });
  expect(
    yardsticks(
      series((ago) => 103 - 0.001 * ago),
      told,
      30,
    ),
  ).toMatchObject({ line: 0 });
  expect(
    yardsticks(
      series((ago) => (ago < 200 ? 101 - 0.01 * ago : null)),
      told,
      30,
    ),
  ).toEqual({ line: null, law: null });
  expect(secondsTo([{ s: 0, y: 1 }], 2, 'rising')).toBeNull();
});
