// How far a sugar solution boils above water, and how strong it is when it does.
import type { SugarShares } from '../boil/entries.ts';
import {
  brixFromMoleFraction,
  energyRatio,
  logActivity,
  logActivityAt,
  logActivitySlope,
  mixOf,
  moleFractionFromBrix,
} from './water-activity.ts';
import { saturationPressureHpa, saturationTemperatureCelsius } from './water-point.ts';

const greatestBrix = 80;
/** The model was checked from 500 to 1050 hPa; air at the ground never lies outside 500 to 1100 hPa. */
const leastPressureHpa = 500;
const greatestPressureHpa = 1100;

/** A probe that reads this much below the water point in thin sap is only noisy, °C. */
const slackBelowWaterCelsius = 0.3;

/** Mole fraction; 1e-12 is less than 1e-9 °Bx anywhere in the range. */
const moleFractionTolerance = 1e-12;

/**
 * The rise of a boiling solution over water's boiling point at the same pressure, °C.
 * `brix` is everything dissolved, by mass; `shares` are the sugars' parts of the sugar, and its `others` the part that
 * acids and minerals are of everything dissolved.
 * Range 0 to 80 °Bx, 500 to 1100 hPa, sugars of 0 or more that sum to 1 ± 0.01, others 0 to 0.3; outside it null.
 * Source: Starzak & Peacock 1997 for sucrose, the same form with Norrish mixing for the hexoses; the others are taken
 * as ideal particles of 75 g/mol.
 * Expected error (1 sigma): 0.08 °C for maple and 0.15 °C for hexose mixes near the finish, before the others.
 */
export function riseFromStrength(brix: number, shares: SugarShares, pressureHpa: number): number | null {
  const mix = mixOf(shares);
  const waterCelsius = waterPointInRange(pressureHpa);
  if (mix === null || waterCelsius === null || !(brix >= 0 && brix <= greatestBrix)) return null;
  const x = moleFractionFromBrix(brix, mix);
  const ideal = Math.log1p(-x);
  let panCelsius = waterCelsius;
  // Activity hardly depends on temperature, so each round is about fifty times nearer than the last.
  for (let round = 0; round < 8; round += 1) {
    const activity = Math.exp(logActivityAt(x, ideal, energyRatio(mix, panCelsius)));
    const next = saturationTemperatureCelsius(pressureHpa / activity);
    if (next === null) return null;
    const step = Math.abs(next - panCelsius);
    panCelsius = next;
    if (step < 1e-9) break;
  }
  return Math.max(0, panCelsius - waterCelsius);
}

/**
 * The strength of a boiling solution from its rise over water's boiling point, °Bx, exact to 1e-6 °Bx.
 * Arguments as riseFromStrength; the answer is everything dissolved, by mass.
 * Range: what riseFromStrength gives for 0 to 80 °Bx; a rise up to 0.3 °C below 0 is 0 °Bx; outside it null.
 * Source: as riseFromStrength. Activity is p / p_s(pan) outright, so only the mole fraction is solved for.
 */
export function strengthFromRise(riseC: number, shares: SugarShares, pressureHpa: number): number | null {
  const mix = mixOf(shares);
  const waterCelsius = waterPointInRange(pressureHpa);
  if (mix === null || waterCelsius === null || !(riseC >= -slackBelowWaterCelsius)) return null;
  if (riseC <= 0) return 0;
  const panCelsius = waterCelsius + riseC;
  const panPressureHpa = saturationPressureHpa(panCelsius);
  if (panPressureHpa === null) return null;
  const target = Math.log(pressureHpa / panPressureHpa);
  const x = solveMoleFraction(target, energyRatio(mix, panCelsius), moleFractionFromBrix(greatestBrix, mix));
  return x === null ? null : Math.min(greatestBrix, brixFromMoleFraction(x, mix));
}

/** One pan is asked several times in a row, so the last pressure's answer is kept. */
let lastPressureHpa = NaN;
let lastWaterCelsius: number | null = null;

function waterPointInRange(pressureHpa: number): number | null {
  if (!(pressureHpa >= leastPressureHpa && pressureHpa <= greatestPressureHpa)) return null;
  if (pressureHpa !== lastPressureHpa) {
    lastPressureHpa = pressureHpa;
    lastWaterCelsius = saturationTemperatureCelsius(pressureHpa);
  }
  return lastWaterCelsius;
}

/** Newton on a falling curve, kept inside a bracket that shrinks each round; null when the answer lies beyond the bracket. */
function solveMoleFraction(target: number, ratio: number, greatest: number): number | null {
  // Rounding can make a rise of next to nothing look like less than water.
  if (target >= 0) return 0;
  // A little slack for rounding lets the strongest syrup of the range come back from its own rise.
  if (logActivity(greatest, ratio) > target + 1e-10) return null;
  let low = 0;
  let high = greatest;
  let x = Math.min(greatest, -target);
  for (let round = 0; round < 60; round += 1) {
    const miss = logActivity(x, ratio) - target;
    if (miss > 0) low = x;
    else high = x;
    const slope = logActivitySlope(x, ratio);
    const newton = x - miss / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const step = Math.abs(next - x);
    x = next;
    if (step < moleFractionTolerance) break;
  }
  return x;
}
