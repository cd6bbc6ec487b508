// How far a sugar solution boils above water, and how strong it is when it does: one water-activity model for any mix.
import type { SugarShares } from '../boil/entries.ts';
import { saturationPressureHpa, saturationTemperatureCelsius } from './water-point.ts';

const gasConstant = 8.314462618; // J/(mol K)
const zeroCelsiusKelvin = 273.15;

/** g/mol */
const waterMolarMass = 18.01528;
const sucroseMolarMass = 342.2965;
const hexoseMolarMass = 180.156;

/** Interaction energies, J/mol. Sucrose: Starzak & Peacock 1997. Hexoses: fitted to Norrish K = 2.25 and 2.15 at 25 °C. */
const rootQSucrose = Math.sqrt(17_638);
const rootQGlucose = Math.sqrt(6313);
const rootQFructose = Math.sqrt(6033);

/** Shape of the activity coefficient, Starzak & Peacock 1997. */
const shapeA = -1.0038;
const shapeB = -0.24653;

const greatestBrix = 80;
/** The model was checked from 500 to 1050 hPa; air at the ground never lies outside 500 to 1100 hPa. */
const leastPressureHpa = 500;
const greatestPressureHpa = 1100;

/** A probe that reads this much below the water point in thin sap is only noisy, °C. */
const slackBelowWaterCelsius = 0.3;

/** Mole fraction; 1e-12 is less than 1e-9 °Bx anywhere in the range. */
const moleFractionTolerance = 1e-12;

/** What one sugar mix brings to the equations. */
interface Mix {
  /** Moles of sugar in one gram of sugar. */
  molesPerGram: number;
  /** Interaction energy of the mix by Norrish's mixing rule, J/mol. */
  interaction: number;
}

/**
 * The rise of a boiling solution over water's boiling point at the same pressure, °C.
 * Range 0 to 80 °Bx, 500 to 1100 hPa, shares of 0 or more that sum to 1 ± 0.01; outside it null.
 * Source: Starzak & Peacock 1997 for sucrose, the same form with Norrish mixing for the others.
 * Expected error (1 sigma): 0.08 °C for maple and 0.15 °C for hexose mixes near the finish.
 */
export function riseFromStrength(brix: number, shares: SugarShares, pressureHpa: number): number | null {
  const mix = mixOf(shares);
  const waterCelsius = waterPointInRange(pressureHpa);
  if (mix === null || waterCelsius === null || !(brix >= 0 && brix <= greatestBrix)) return null;
  const x = moleFractionFromBrix(brix, mix);
  let panCelsius = waterCelsius;
  // Activity hardly depends on temperature, so each round is about fifty times nearer than the last.
  for (let round = 0; round < 8; round += 1) {
    const activity = Math.exp(logActivity(x, mix.interaction / (gasConstant * (panCelsius + zeroCelsiusKelvin))));
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
  const energyRatio = mix.interaction / (gasConstant * (panCelsius + zeroCelsiusKelvin));
  const x = solveMoleFraction(
    Math.log(pressureHpa / panPressureHpa),
    energyRatio,
    moleFractionFromBrix(greatestBrix, mix),
  );
  return x === null ? null : Math.min(greatestBrix, brixFromMoleFraction(x, mix));
}

function waterPointInRange(pressureHpa: number): number | null {
  if (!(pressureHpa >= leastPressureHpa && pressureHpa <= greatestPressureHpa)) return null;
  return saturationTemperatureCelsius(pressureHpa);
}

function mixOf({ sucrose, glucose, fructose }: SugarShares): Mix | null {
  const sum = sucrose + glucose + fructose;
  if (!(sucrose >= 0 && glucose >= 0 && fructose >= 0 && Math.abs(sum - 1) <= 0.0100001)) return null;
  const sucroseMoles = sucrose / sum / sucroseMolarMass;
  const glucoseMoles = glucose / sum / hexoseMolarMass;
  const fructoseMoles = fructose / sum / hexoseMolarMass;
  const molesPerGram = sucroseMoles + glucoseMoles + fructoseMoles;
  const rootQ =
    (sucroseMoles * rootQSucrose + glucoseMoles * rootQGlucose + fructoseMoles * rootQFructose) / molesPerGram;
  return { molesPerGram, interaction: rootQ * rootQ };
}

function moleFractionFromBrix(brix: number, mix: Mix): number {
  const sugar = brix * mix.molesPerGram;
  return sugar / (sugar + (100 - brix) / waterMolarMass);
}

function brixFromMoleFraction(x: number, mix: Mix): number {
  const sugarPerWater = x / (1 - x);
  return (100 * sugarPerWater) / (mix.molesPerGram * waterMolarMass + sugarPerWater);
}

/** ln a_w at mole fraction x of sugar; energyRatio is Q/(R T). */
function logActivity(x: number, energyRatio: number): number {
  return Math.log1p(-x) - energyRatio * x * x * (1 + shapeA * x + shapeB * x * x);
}

/** Newton on a falling curve, kept inside a bracket that shrinks each round; null when the answer lies beyond the bracket. */
function solveMoleFraction(target: number, energyRatio: number, greatest: number): number | null {
  // Rounding can make a rise of next to nothing look like less than water.
  if (target >= 0) return 0;
  // A little slack for rounding lets the strongest syrup of the range come back from its own rise.
  if (logActivity(greatest, energyRatio) > target + 1e-10) return null;
  let low = 0;
  let high = greatest;
  let x = Math.min(greatest, -target);
  for (let round = 0; round < 60; round += 1) {
    const miss = logActivity(x, energyRatio) - target;
    if (miss > 0) low = x;
    else high = x;
    const slope = -1 / (1 - x) - energyRatio * x * (2 + 3 * shapeA * x + 4 * shapeB * x * x);
    const newton = x - miss / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const step = Math.abs(next - x);
    x = next;
    if (step < moleFractionTolerance) break;
  }
  return x;
}
