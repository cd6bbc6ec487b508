// The two yardsticks: a straight line through the last ten minutes of temperature, and the bare reciprocal law over them.
import { saturationPressureHpa } from '../../../src/core/physics/water-point.ts';
import { riseFromStrength, strengthFromRise } from '../../../src/core/physics/sugar-solution.ts';
import type { SugarShares } from '../../../src/core/boil/entries.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';

/** What a yardstick takes from the header: the same that the program was told. */
export interface Told {
  shares: SugarShares;
  finish: { brix: number } | { rise_c: number };
}

/** Seconds left by each; null where it gives none (the line falls, or too few temperatures). */
export interface YardstickTimes {
  line: number | null;
  law: number | null;
}

const WINDOW = 20;
const LEAST_POINTS = 10;

/** `readings` are the last ones up to the moment, the newest last, each `stepSeconds` after the one before. */
export function yardsticks(readings: readonly PanReading[], told: Told, stepSeconds: number): YardstickTimes {
  const last = readings.slice(-WINDOW);
  const seen = last.flatMap(({ temperature_c, water_c }, index) =>
    temperature_c === null || water_c === null
      ? []
      : [{ s: (index - last.length + 1) * stepSeconds, celsius: temperature_c, water: water_c }],
  );
  const newest = seen.at(-1);
  if (seen.length < LEAST_POINTS || newest === undefined) return { line: null, law: null };
  const hpa = saturationPressureHpa(newest.water) ?? 1013.25;
  const finishRise =
    'rise_c' in told.finish ? told.finish.rise_c : riseFromStrength(told.finish.brix, told.shares, hpa);
  const finishBrix = 'brix' in told.finish ? told.finish.brix : strengthFromRise(told.finish.rise_c, told.shares, hpa);
  if (finishRise === null || finishBrix === null) return { line: null, law: null };
  const reciprocals = seen.flatMap(({ s, celsius, water }) => {
    const brix = strengthFromRise(Math.max(0, celsius - water), told.shares, hpa);
    return brix === null || brix < 1 ? [] : [{ s, y: 1 / brix }];
  });
  return {
    line: secondsTo(
      seen.map(({ s, celsius }) => ({ s, y: celsius })),
      newest.water + finishRise,
      'rising',
    ),
    law: reciprocals.length < LEAST_POINTS ? null : secondsTo(reciprocals, 1 / finishBrix, 'falling'),
  };
}

const TRUE_WINDOW_S = 20 * 60;

/**
 * The reciprocal law over the true strength of the last 20 min: what is left of its error is the fire's, and no filter
 * can know of it. `samples` end with the moment, each `stepSeconds` after the one before.
 */
export function lawOnTruth(
  samples: readonly { brix: number }[],
  finishBrix: number,
  stepSeconds: number,
): number | null {
  const last = samples.slice(-Math.floor(TRUE_WINDOW_S / stepSeconds)).filter(({ brix }) => brix > 0);
  const points = last.map(({ brix }, index) => ({ s: (index - last.length + 1) * stepSeconds, y: 1 / brix }));
  return points.length < 2 ? null : secondsTo(points, 1 / finishBrix, 'falling');
}

interface Point {
  s: number;
  y: number;
}

/**
 * Least squares: s after 0 at which the line through the points meets a goal that lies ahead in the given direction.
 * 0 once it is passed; null when the line runs away from it.
 */
export function secondsTo(points: readonly Point[], goal: number, direction: 'rising' | 'falling'): number | null {
  const mean = (pick: (point: Point) => number): number =>
    points.reduce((sum, point) => sum + pick(point), 0) / points.length;
  const middleS = mean(({ s }) => s);
  const middleY = mean(({ y }) => y);
  const spread = mean(({ s }) => (s - middleS) ** 2);
  if (!(spread > 0)) return null;
  const slope = mean(({ s, y }) => (s - middleS) * (y - middleY)) / spread;
  const toGo = (goal - (middleY - slope * middleS)) * (direction === 'rising' ? 1 : -1);
  const speed = slope * (direction === 'rising' ? 1 : -1);
  if (toGo <= 0) return 0;
  return speed > 0 ? toGo / speed : null;
}
