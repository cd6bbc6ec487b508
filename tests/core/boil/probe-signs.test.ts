// Checks which numbers of a probe cannot be true: standing still where its noise or its pan would move it, and leaping.
import { expect, test } from 'vitest';
import { judgeStuck, noteNumber, type ProbeSigns, startProbeSigns } from '../../../src/core/boil/probe-signs.ts';
import { nextNormal, nextUniform, randomStream } from '../../../src/core/simulation/random.ts';

const FREEZES_S = 1200;
const boiling = { boils: true, climbs: false };
const climbing = { boils: false, climbs: true };

/** A number a second until `toS`; what stands at FREEZES_S stays. */
function frozen(stepC: number, noiseC: number, toS: number, slope = 0): ProbeSigns {
  const random = randomStream(3, 'probe-signs');
  const signs = startProbeSigns();
  let shown = 0;
  for (let s = 0; s < toS; s++) {
    const wander = 0.05 * Math.sin(s / 40);
    const celsius = 100.03 + wander + (slope * s) / 60 + noiseC * nextNormal(random);
    if (s <= FREEZES_S) shown = Math.round(celsius / stepC) * stepC;
    noteNumber(signs, s * 1000, shown, slope);
    if (s % 5 === 0) judgeStuck(signs, s * 1000, slope > 0 ? climbing : boiling);
  }
  return signs;
}

test.each([
  [0.0625, 0.05],
  [0.1, 0.1],
  [0.25, 0.3],
])('in a boil a probe of %d °C steps and %d °C noise stands still: stuck after five minutes', (stepC, noiseC) => {
  expect(frozen(stepC, noiseC, FREEZES_S + 280).doubt).toBeNull();
  expect(frozen(stepC, noiseC, FREEZES_S + 320).doubt?.state).toBe('stuck');
});

test.each([
  [0.5, 0.03],
  [0.5, 0.1],
  [0.25, 0.03],
])('a coarse, quiet probe (%d °C steps, %d °C noise) repeats itself in a boil: not stuck', (stepC, noiseC) => {
  expect(frozen(stepC, noiseC, FREEZES_S + 1200).doubt).toBeNull();
});

test('a pan that must get warmer moves even a coarse probe', () => {
  expect(frozen(0.5, 0.03, FREEZES_S + 500, 0.5).doubt?.state).toBe('stuck');
  expect(frozen(0.5, 0.03, FREEZES_S + 290, 0.5).doubt).toBeNull();
});

test('another number ends it', () => {
  const signs = frozen(0.0625, 0.05, FREEZES_S + 400);
  noteNumber(signs, (FREEZES_S + 400) * 1000, 99.5, null);
  expect(signs.doubt).toBeNull();
});

/** A probe at 100 °C of which a share of the numbers is wild. */
function wild(share: number, seconds: number): { signs: ProbeSigns; doubted: number } {
  const random = randomStream(5, 'wild');
  const signs = startProbeSigns();
  let doubted = 0;
  for (let s = 0; s < seconds; s++) {
    const spike = nextUniform(random) < share ? 40 * (nextUniform(random) - 0.5) : 0;
    noteNumber(signs, s * 1000, 100 + 0.1 * nextNormal(random) + spike, null);
    if (signs.doubt !== null) doubted += 1;
  }
  return { signs, doubted };
}

test('two wild numbers in a hundred make nobody doubt a probe, in a day', () => {
  expect(wild(0.02, 86_400).doubted).toBe(0);
});

test('numbers that leap to and fro cannot be true, and even ones end that', () => {
  const { signs } = wild(0.5, 120);
  expect(signs.doubt).toEqual({ state: 'suspect', why: expect.stringContaining('leap to and fro') as string });
  for (let s = 120; s < 180; s++) noteNumber(signs, s * 1000, 100 + 0.01 * (s % 3), null);
  expect(signs.doubt).toBeNull();
});
