// What a probe's last minutes show: come to rest, warmed in the hand, its lag, and how much it is off.
import { expect, test } from 'vitest';
import { errorFrom, ICE_SIGMA_C } from '../../../src/core/probes/check-offset.ts';
import { lagOf, noiseOf, noteRecent, type Recent, startRecent, stepOf } from '../../../src/core/probes/recent.ts';
import { steadiness } from '../../../src/core/probes/steadiness.ts';
import { whichRises } from '../../../src/core/probes/which-rises.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';

/** One number a second, with noise of so many °C. */
function heard(seconds: number, celsius: (s: number) => number, noise = 0.05): Recent {
  const recent = startRecent();
  const random = randomStream(7, 'probe');
  for (let s = 0; s < seconds; s += 1) noteRecent(recent, s * 1000, celsius(s) + noise * nextNormal(random));
  return recent;
}

test('a probe in boiling water is steady after a minute, and not before', () => {
  const water = heard(80, () => 98.2);
  expect(steadiness(water, 79_000)).toMatchObject({ state: 'steady' });
  expect(steadiness(water, 79_000).celsius).toBeCloseTo(98.2, 1);
  expect(
    steadiness(
      heard(30, () => 98.2),
      29_000,
    ).state,
  ).toBe('waiting');
});

test.each([
  ['warms half a degree a minute', (s: number) => 97 + s / 120, 'rising'],
  ['cools', (s: number) => 97 - s / 100, 'falling'],
] as const)('one that %s is not steady', (_what, celsius, state) => {
  expect(steadiness(heard(100, celsius), 99_000).state).toBe(state);
});

test('a loose contact is never steady, and one that fell silent is nowhere', () => {
  expect(
    steadiness(
      heard(100, () => 98, 1.2),
      99_000,
    ).state,
  ).toBe('restless');
  expect(
    steadiness(
      heard(100, () => 98),
      130_000,
    ),
  ).toMatchObject({ state: 'waiting', celsius: null });
});

test('a probe that tells quarters of a degree is steady, and less sure by its step', () => {
  const coarse = heard(80, (s) => 98 + 0.25 * (s % 2), 0);
  const { state, sigmaC } = steadiness(coarse, 79_000);
  expect(state).toBe('steady');
  // A number rounded to 0.25 is off evenly by up to half of it: 0.25 / √12.
  expect(sigmaC).toBeGreaterThan(0.07);
});

test.each([10, 20, 30, 50])(
  'a tip put into the water %i s ago has not come to rest, though its numbers stand still',
  (ago) => {
    const leap = heard(120, (s) => (s < 120 - ago ? 27.8 : 98.3), 0);
    expect(steadiness(leap, 119_000).state).toBe('rising');
    expect(stepOf(leap)).toBeNull();
  },
);

test.each([1, 3, 5, 7])(
  'a tip that hung in the room for a minute and is in the water for %i s has not come to rest',
  (ago) => {
    const leap = heard(120, (s) => (s < 120 - ago ? 21 : 98.3));
    expect(steadiness(leap, 119_000).state).toBe('rising');
    const climb = heard(120, (s) => 21 + (77 / 8) * Math.max(0, s - (119 - ago)));
    expect(steadiness(climb, 119_000).state).toBe('rising');
    const chilled = heard(120, (s) => (s < 120 - ago ? 21 : 0));
    expect(steadiness(chilled, 119_000).state).toBe('falling');
  },
);

test('after a whole minute there it has, and is as sure as it is; one wild number in it changes nothing', () => {
  const there = heard(130, (s) => (s < 65 ? 27.8 : s === 100 ? 85 : 98.3), 0);
  const { state, celsius, sigmaC } = steadiness(there, 129_000);
  expect(state).toBe('steady');
  expect(celsius).toBeCloseTo(98.3, 6);
  expect(sigmaC).toBeLessThan(0.1);
});

test('the tip in the hand is the one that rises, until two do', () => {
  const still = heard(60, () => 8);
  const warm = heard(60, (s) => 8 + Math.max(0, s - 40) * 0.5);
  const also = heard(60, (s) => 8 + Math.max(0, s - 40) * 0.4);
  const named = (pairs: [string, Recent][]) =>
    whichRises(
      pairs.map(([channel, recent]) => ({ channel, recent })),
      59_000,
    );
  expect(
    named([
      ['T1', still],
      ['T2', warm],
    ]),
  ).toMatchObject({ one: 'T2', several: [] });
  expect(
    named([
      ['T1', still],
      ['T2', still],
    ]),
  ).toMatchObject({ one: null, several: [] });
  expect(
    named([
      ['T1', also],
      ['T2', warm],
    ]),
  ).toMatchObject({ one: null, several: ['T2', 'T1'] });
});

test.each([3, 8])('the lag of a first-order probe with %i s is found from a dip', (lag) => {
  // Newton's law of cooling: what is left of the step is e^(−t/τ).
  const dip = heard(60, (s) => (s < 10 ? 20 : 98 - 78 * Math.exp(-(s - 9.5) / lag)));
  const found = lagOf(dip);
  expect(found).toBeGreaterThan(lag * 0.85);
  expect(found).toBeLessThan(lag * 1.15);
});

test('no lag is made of a slow warming, nor of nothing', () => {
  expect(lagOf(heard(150, (s) => 20 + s / 4))).toBeNull();
  expect(lagOf(heard(100, () => 98))).toBeNull();
});

test('noise and step are those that were put in', () => {
  expect(noiseOf(heard(150, () => 98, 0.2))).toBeGreaterThan(0.15);
  expect(noiseOf(heard(150, () => 98, 0.2))).toBeLessThan(0.25);
  expect(stepOf(heard(20, (s) => 98 + 0.25 * (s % 2), 0))).toBeCloseTo(0.25);
});

test('boiling and ice water together tell the error near the boil', () => {
  const boiling = { shownC: 98.4, sigmaC: 0.08, trueC: 98, trueSigmaC: 0.3 };
  const ice = { shownC: 0.3, sigmaC: 0.05, trueC: 0, trueSigmaC: ICE_SIGMA_C };
  expect(errorFrom(boiling, null)).toMatchObject({ tooHighC: expect.closeTo(0.4) as number });
  const both = errorFrom(boiling, ice)!;
  expect(both.tooHighC).toBeGreaterThan(0.3);
  expect(both.tooHighC).toBeLessThan(0.4);
  expect(both.sigmaC).toBeLessThan(errorFrom(boiling, null)!.sigmaC);
  expect(errorFrom(null, null)).toBeNull();
});
