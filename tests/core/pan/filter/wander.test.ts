// How much a rise wanders, learnt from series of its own: calm, wandering, noisy, climbing, coarse.
import { expect, test } from 'vitest';
import { noteWander, startWander, wanderOf } from '../../../../src/core/pan/filter/wander.ts';

/** A plain generator of normal numbers (Box–Muller over a linear congruence), apart from the program's own. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => (state = (state * 1_103_515_245 + 12_345) % 2 ** 31) / 2 ** 31;
  return () => Math.sqrt(-2 * Math.log(uniform() + 1e-12)) * Math.cos(2 * Math.PI * uniform());
}

interface Series {
  wanderC: number;
  noiseC: number;
  perMinuteC: number;
  stepC?: number;
}

/** Half an hour of blocks; the wander loses its memory in 150 s. */
function learnt({ wanderC, noiseC, perMinuteC, stepC = 0 }: Series, seed: number): number {
  const normal = normals(seed);
  const wander = startWander();
  const keep = Math.exp(-5 / 150);
  let drift = wanderC * normal();
  for (let block = 0; block < 360; block += 1) {
    drift = drift * keep + wanderC * Math.sqrt(1 - keep * keep) * normal();
    const riseC = 2 + (perMinuteC * block) / 12 + drift + noiseC * normal();
    noteWander(wander, stepC === 0 ? riseC : Math.round(riseC / stepC) * stepC);
  }
  return wanderOf(wander, stepC);
}

const middle = (series: Series): number =>
  Array.from({ length: 21 }, (_, seed) => learnt(series, seed + 1)).sort((a, b) => a - b)[10]!;

test.each([0.08, 0.12, 0.18])('a wander of %s °C is found to a third, in noise and in a climb', (wanderC) => {
  for (const noiseC of [0.02, 0.08]) {
    const found = middle({ wanderC, noiseC, perMinuteC: 0.1 });
    expect(found).toBeGreaterThan(wanderC * 0.67);
    expect(found).toBeLessThan(wanderC * 1.33);
  }
});

test('noise is no wander, nor is a climb, nor the steps of a coarse probe', () => {
  expect(middle({ wanderC: 0, noiseC: 0.08, perMinuteC: 0 })).toBeLessThan(0.05);
  expect(middle({ wanderC: 0, noiseC: 0.02, perMinuteC: 0.25 })).toBeLessThan(0.05);
  expect(middle({ wanderC: 0, noiseC: 0.01, perMinuteC: 0.05, stepC: 0.25 })).toBeLessThan(0.08);
});
