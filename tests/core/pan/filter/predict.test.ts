// Checks what an hour does to a belief: the fire's level becomes less sure by what hands may have done, and water leaves with sugar staying.
import { expect, test } from 'vitest';
import { FIRE, LEVEL, SUGAR, variance, WATER } from '../../../../src/core/pan/filter/belief.ts';
import { FIRES, passTime, rateOf } from '../../../../src/core/pan/filter/predict.ts';
import { startBelief } from '../../../../src/core/pan/filter/start.ts';
import { panDesign } from '../../../../src/core/pan/setup.ts';

const HOUR_S = 3600;

const begun = () =>
  startBelief(panDesign({ id: 'p1' }), { sapShare: 0, offsetVariance: 0.01, sapVariance: 0, covariance: 0 }, 0.08);

const still = { flame: 1, seconds: HOUR_S, boiling: 0, wanderC: 0.06 };

test.each([
  [true, 0.1],
  [false, 0.07],
])('in an hour the level of a fire (tended: %s) becomes less sure by %d', (tended, share) => {
  const belief = begun();
  const before = variance(belief, LEVEL);
  passTime(belief, FIRES.propane, { ...still, tended });
  expect(Math.sqrt(variance(belief, LEVEL) - before)).toBeCloseTo(share, 6);
});

test('a swing that the fire had an hour ago has died away, and as much is not known of it as ever', () => {
  const belief = begun();
  belief.x[FIRE] = 0.3;
  passTime(belief, FIRES.propane, { ...still, tended: true });
  expect(Math.abs(belief.x[FIRE])).toBeLessThan(1e-4);
  expect(variance(belief, FIRE)).toBeCloseTo(FIRES.propane.swing ** 2, 6);
});

test('a minute of boiling takes the water that its rate says, and no sugar', () => {
  const belief = begun();
  const [sugar, water] = [belief.x[SUGAR]!, Math.exp(belief.x[WATER]!)];
  const gone = 60 * rateOf(belief, 0.5);
  passTime(belief, FIRES.propane, { ...still, flame: 0.5, seconds: 60, boiling: 60, tended: true });
  expect(water - Math.exp(belief.x[WATER]!)).toBeCloseTo(gone, 9);
  expect(belief.x[SUGAR]).toBe(sugar);
});
