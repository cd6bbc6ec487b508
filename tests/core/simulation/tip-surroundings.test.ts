// What a tip meets at its own place: superheat that wanders while the pan boils, foam near the finish, a second lag.
import { expect, test } from 'vitest';
import type { Deed } from '../../../src/core/simulation/scenario.ts';
import { onePot, readingsOf, wholeBoil, type OnePot } from './one-pot.ts';

const readings = (given: OnePot): { t: number; celsius: number }[] => readingsOf(wholeBoil(onePot(given)).entries);
const lines = (given: OnePot): string[] =>
  wholeBoil(onePot(given)).entries.flatMap((entry) => ('line' in entry ? [entry.line] : []));
const over = (given: OnePot, without: OnePot): number[] => {
  const plain = readings(without);
  return readings(given).map(({ celsius }, index) => celsius - (plain[index]?.celsius ?? NaN));
};

const boiling = { litres: 10, brix: 20, celsius: 99 };

test('superheat wanders between nothing and its most, and goes over both halves of that', () => {
  const given = { superheat: { mostCelsius: 0.3, memorySeconds: 60 } };
  const extra = over({ pan: boiling, probe: given }, { pan: boiling }).slice(120);
  expect(Math.min(...extra)).toBeGreaterThan(-0.011);
  expect(Math.max(...extra)).toBeLessThan(0.311);
  expect(Math.min(...extra)).toBeLessThan(0.1);
  expect(Math.max(...extra)).toBeGreaterThan(0.2);
});

test('there is no superheat in a pan that does not boil', () => {
  const cold = { litres: 10, brix: 20, celsius: 40, level: 0.2 };
  const given = { superheat: { mostCelsius: 0.3, memorySeconds: 60 } };
  const extra = over({ pan: cold, probe: given, endsAt: 600_000 }, { pan: cold, endsAt: 600_000 });
  expect(Math.max(...extra.map(Math.abs))).toBe(0);
});

test('superheat of nothing changes no reading: chance of one kind leaves the others alone', () => {
  const noisy = { noiseCelsius: 0.2, spikesPerHour: 20 };
  const still = { ...noisy, superheat: { mostCelsius: 0, memorySeconds: 60 } };
  expect(lines({ probe: still })).toEqual(lines({ probe: noisy }));
});

const foam = { fromBrix: 30, offsetCelsius: -0.4, noiseCelsius: 0, lastsSeconds: 60, restsSeconds: 120 };

test('foam reads off in episodes, about as long as asked, and only from its strength on', () => {
  const thin = over({ pan: { ...boiling, foam } }, { pan: boiling });
  expect(Math.max(...thin.map(Math.abs))).toBe(0);
  const thick = { litres: 30, brix: 40, celsius: 101 };
  const extra = over({ pan: { ...thick, foam } }, { pan: thick }).slice(600);
  const inFoam = extra.filter((value) => value < -0.2).length / extra.length;
  expect(Math.min(...extra)).toBeCloseTo(-0.4, 1);
  expect(inFoam).toBeGreaterThan(0.15);
  expect(inFoam).toBeLessThan(0.55);
});

test('foam shakes the readings while it stands', () => {
  const thick = { litres: 30, brix: 40, celsius: 101 };
  const shaken = { ...foam, offsetCelsius: 0, noiseCelsius: 0.5, restsSeconds: 1, lastsSeconds: 1e9 };
  const extra = over({ pan: { ...thick, foam: shaken } }, { pan: thick }).slice(600);
  const spread = Math.sqrt(extra.reduce((sum, value) => sum + value ** 2, 0) / extra.length);
  expect(Math.abs(spread - 0.5)).toBeLessThan(0.05);
});

test('two lags of 8 s behind each other follow a step as 1 - (1 + t/8) exp(-t/8)', () => {
  const hot: Deed = {
    when: { at: 60_000 },
    acts: [
      { act: 'draw-off', pan: 'p1', litres: 'all' },
      { act: 'pour', pan: 'p1', litres: 10, brix: 0, celsius: 65 },
    ],
  };
  const still = { litres: 10, brix: 0, celsius: 5.0001, level: 0 };
  const given = { pan: still, deeds: [hot], endsAt: 300_000 };
  const series = readings({ ...given, probe: { lagSeconds: 8, secondLagSeconds: 8 } });
  const at = (seconds: number): number => series.find(({ t }) => t >= seconds * 1000)?.celsius ?? NaN;
  // The second in which it is poured counts already.
  const followed = (seconds: number): number => (at(59.1 + seconds) - at(50)) / (at(250) - at(50));
  for (const seconds of [8, 16, 32]) {
    const share = 1 - (1 + seconds / 8) * Math.exp(-seconds / 8);
    expect(Math.abs(followed(seconds) - share), `${seconds} s`).toBeLessThan(0.04);
  }
});
