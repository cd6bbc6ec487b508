// How much dissolved sugar, acid and mineral hold water back from boiling: one water-activity model for any mix.
import type { SugarShares } from '../boil/entries.ts';
import { kelvinFromCelsius } from '../quantities/units.ts';

const gasConstant = 8.314462618; // J/(mol K)

/** g/mol */
const waterMolarMass = 18.01528;
const sucroseMolarMass = 342.2965;
const hexoseMolarMass = 180.156;
/** Malic acid 134, potassium 39, calcium 40: a round figure for ideal particles, an assumption and not a measurement. */
const otherMolarMass = 75;

/** Interaction energies, J/mol. Sucrose: Starzak & Peacock 1997. Hexoses: fitted to Norrish K = 2.25 and 2.15 at 25 °C. */
const rootQSucrose = Math.sqrt(17_638);
const rootQGlucose = Math.sqrt(6313);
const rootQFructose = Math.sqrt(6033);

/** Shape of the activity coefficient, Starzak & Peacock 1997. */
const shapeA = -1.0038;
const shapeB = -0.24653;

/** More of acids and minerals than this is no sap. */
const greatestOthers = 0.3;

/** What one mix brings to the equations. */
export interface Mix {
  /** Moles of everything dissolved in one gram of it. */
  molesPerGram: number;
  /** Interaction energy of the mix by Norrish's mixing rule, in which acids and minerals have none, J/mol. */
  interaction: number;
}

/** One sap is asked several times in a row, so the last one's answer is kept: shares are never changed in place. */
let lastShares: SugarShares | null = null;
let lastMix: Mix | null = null;

/** Range: sugars of 0 or more that sum to 1 ± 0.01, others 0 to 0.3; outside it null. */
export function mixOf(shares: SugarShares): Mix | null {
  if (shares === lastShares) return lastMix;
  lastShares = shares;
  lastMix = mixed(shares);
  return lastMix;
}

function mixed({ sucrose, glucose, fructose, others = 0 }: SugarShares): Mix | null {
  const sum = sucrose + glucose + fructose;
  if (!(sucrose >= 0 && glucose >= 0 && fructose >= 0 && Math.abs(sum - 1) <= 0.0100001)) return null;
  if (!(others >= 0 && others <= greatestOthers)) return null;
  const sugar = (1 - others) / sum;
  const sucroseMoles = (sugar * sucrose) / sucroseMolarMass;
  const glucoseMoles = (sugar * glucose) / hexoseMolarMass;
  const fructoseMoles = (sugar * fructose) / hexoseMolarMass;
  const molesPerGram = sucroseMoles + glucoseMoles + fructoseMoles + others / otherMolarMass;
  const rootQ =
    (sucroseMoles * rootQSucrose + glucoseMoles * rootQGlucose + fructoseMoles * rootQFructose) / molesPerGram;
  return { molesPerGram, interaction: rootQ * rootQ };
}

/** Moles of what is dissolved among all moles, at a strength of 0 to 100 °Bx. */
export function moleFractionFromBrix(brix: number, mix: Mix): number {
  const dissolved = brix * mix.molesPerGram;
  return dissolved / (dissolved + (100 - brix) / waterMolarMass);
}

/**
 * The strength, °Bx, at which what is dissolved is this share of all moles, 0 up to, not including, 1: the other way
 * of `moleFractionFromBrix`.
 */
export function brixFromMoleFraction(x: number, mix: Mix): number {
  const dissolvedPerWater = x / (1 - x);
  return (100 * dissolvedPerWater) / (mix.molesPerGram * waterMolarMass + dissolvedPerWater);
}

/** Q/(R T) of a mix at a temperature. */
export const energyRatio = (mix: Mix, celsius: number): number =>
  mix.interaction / (gasConstant * kelvinFromCelsius(celsius));

/** ln a_w at mole fraction x of everything dissolved; `ratio` is Q/(R T). */
export const logActivity = (x: number, ratio: number): number => logActivityAt(x, Math.log1p(-x), ratio);

/** The same for who asks at several temperatures: `ideal` is ln(1 − x). */
export const logActivityAt = (x: number, ideal: number, ratio: number): number =>
  ideal - ratio * x * x * (1 + shapeA * x + shapeB * x * x);

/** How ln a_w changes with the mole fraction; never above 0. */
export function logActivitySlope(x: number, ratio: number): number {
  return -1 / (1 - x) - ratio * x * (2 + 3 * shapeA * x + 4 * shapeB * x * x);
}
