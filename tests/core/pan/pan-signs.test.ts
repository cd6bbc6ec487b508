// Checks which falls count as a boil that died: by how evenly they go on, through noise, lag and coarse steps.
import { expect, test } from 'vitest';
import { advance, applyEntry, startBoil } from '../../../src/core/boil/fold.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';
import { onePot, tools } from '../boil/tarn-hollow.ts';

const DIES_S = 1500;

interface Probe {
  lagS: number;
  noiseC: number;
  stepC: number;
}

/** Seconds from the end of an even boil to the call; null where none comes in ten minutes, below 0 where it came before. */
function called(celsiusAfter: (s: number) => number, { lagS, noiseC, stepC }: Probe): number | null {
  const random = randomStream(7, 'pan-signs');
  let state = startBoil(onePot());
  let tip = 101;
  for (let s = 0; s < DIES_S + 600; s++) {
    const liquid = s < DIES_S ? 101 : celsiusAfter(s - DIES_S);
    tip += (liquid - tip) * (1 - Math.exp(-1 / lagS));
    const shown = Math.round((tip + noiseC * nextNormal(random)) / stepC) * stepC;
    state = applyEntry(state, { t: s * 1000, port: 'A', line: `T1=${shown.toFixed(2)}` }, tools);
    if (state.fresh.some(({ alarm, event }) => alarm === 'boil-lost' && event === 'raised')) return s - DIES_S;
  }
  state = advance(state, (DIES_S + 600) * 1000);
  return null;
}

const good: Probe = { lagS: 5, noiseC: 0.05, stepC: 0.0625 };
/** Newton's cooling towards 10 °C, by so much in the first minute. */
const cools =
  (perMinute: number) =>
  (s: number): number =>
    10 + 91 * Math.exp((-s * perMinute) / 60 / 91);

test.each([
  [1, good],
  [2, good],
  [5, good],
  [1.5, { lagS: 15, noiseC: 0.3, stepC: 0.0625 }],
  [2, { lagS: 5, noiseC: 0.2, stepC: 0.25 }],
  [3, { lagS: 20, noiseC: 0.1, stepC: 0.5 }],
] as const)('a pan that cools by %d °C a minute is called within two minutes, seen by %o', (perMinute, probe) => {
  const seconds = called(cools(perMinute), probe);
  expect(seconds).toBeGreaterThan(60);
  expect(seconds).toBeLessThanOrEqual(120);
});

test.each([0, 20, 60])('what is poured in over %i s cools and is warmed again: nothing is called', (pouring) => {
  const dipped = (s: number): number => 101 - 9 * Math.min(1, (s + 1) / (pouring + 1));
  const poured = (s: number): number => Math.min(101, dipped(s) + (Math.max(0, s - pouring) * 2) / 60);
  for (const lagS of [3, 10, 20]) expect(called(poured, { ...good, lagS }), `lag ${lagS} s`).toBeNull();
});

test('a lull of the wind that turns round within a minute and a half is no lost boil', () => {
  const lull = (s: number): number => 101 - 0.9 * Math.max(0, Math.sin((Math.PI * Math.min(s, 180)) / 180));
  expect(called(lull, good)).toBeNull();
});

test.each([30, 60, 120])(
  'a tip that is lifted into steam and cools there with %i s slows down: nothing is called',
  (tau) => {
    expect(called((s) => 99.2 + 1.8 * Math.exp(-s / tau), { ...good, lagS: 1 })).toBeNull();
  },
);

test('a tip that is lifted into the air falls faster than a pan can', () => {
  expect(called((s) => 10 + 91 * Math.exp(-s / 60), good)).toBeNull();
});
