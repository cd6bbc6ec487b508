// Checks that the straight line of a boil is found exactly where it is exact, and within its error where it is not.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addPoint,
  brixOfWaterPerSugar,
  type EvaporationLine,
  lineNow,
  moveOn,
  startLine,
  waterPerSugar,
} from '../../../src/core/pan/evaporation-line.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';

const MEMORY_S = 900;

/** A point every five seconds of heat; the last one is now. */
function drawn(points: number, u: (seconds: number) => number, sigma = 0.01): EvaporationLine {
  const line = startLine();
  for (let index = 0; index < points; index++) {
    if (index > 0) moveOn(line, 5, MEMORY_S);
    addPoint(line, u(index * 5), sigma);
  }
  return line;
}

test('an exact line is recovered exactly', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1.5, max: 10, noNaN: true }),
      fc.double({ min: 1e-4, max: 1e-3, noNaN: true }),
      fc.integer({ min: 80, max: 400 }),
      (u0, k, points) => {
        const now = lineNow(
          drawn(points, (s) => u0 - k * s),
          180,
        );
        fc.pre(now !== null);
        expect(now!.k / k).toBeCloseTo(1, 6);
        expect(now!.u).toBeCloseTo(u0 - k * 5 * (points - 1), 6);
      },
    ),
  );
});

test('a slope that is there is found: 5e-4 a second over ten minutes', () => {
  expect(
    lineNow(
      drawn(120, (s) => 3 - 5e-4 * s),
      180,
    )?.k,
  ).toBeCloseTo(5e-4, 9);
});

test('noise leaves the truth within three of its own standard errors', () => {
  for (let seed = 1; seed <= 30; seed++) {
    const stream = randomStream(seed, 'line');
    const now = lineNow(
      drawn(120, (s) => 3 - 5e-4 * s + 0.01 * nextNormal(stream)),
      180,
    );
    expect(Math.abs(now!.k - 5e-4) / now!.kSigma, `seed ${seed}`).toBeLessThan(3);
    expect(Math.abs(now!.u - (3 - 5e-4 * 595)) / now!.uSigma, `seed ${seed}`).toBeLessThan(3);
  }
});

test('nothing is said before it spans enough heat, nor of a level or rising line', () => {
  expect(
    lineNow(
      drawn(36, (s) => 3 - 5e-4 * s),
      180,
    ),
  ).toBeNull();
  expect(
    lineNow(
      drawn(120, () => 3),
      180,
    ),
  ).toBeNull();
  expect(
    lineNow(
      drawn(120, (s) => 3 + 5e-4 * s),
      180,
    ),
  ).toBeNull();
});

test('the line follows a burner that was turned up: old points fade', () => {
  const turned = 600;
  const line = drawn(720, (s) => (s < turned ? 6 - 2e-4 * s : 6 - 2e-4 * turned - 8e-4 * (s - turned)));
  expect(Math.abs(lineNow(line, 180)!.k / 8e-4 - 1)).toBeLessThan(0.1);
});

test('strength and water per sugar undo each other; 50 °Bx is one to one', () => {
  expect(waterPerSugar(50)).toBe(1);
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 99, noNaN: true }), (brix) => {
      expect(brixOfWaterPerSugar(waterPerSugar(brix))).toBeCloseTo(brix, 9);
    }),
  );
});
