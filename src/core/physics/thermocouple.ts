// What a thermocouple's voltage means: millivolts from °C and back by the NIST ITS-90 functions, and the cold junction.
import { THERMOCOUPLE_CURVES, type ThermocoupleCurve, type ThermocoupleType } from './thermocouple-coefficients.ts';

export type { ThermocoupleType } from './thermocouple-coefficients.ts';

/** Type K above its rough polynomial: about so many mV a °C, enough to start from. */
const STEEP_MV_PER_C = 0.04;
/** A solve ends when a step is under this, °C; three or four steps do it. */
const SOLVED_C = 1e-10;
const MOST_STEPS = 20;
/** What rounding to 0.001 mV may put outside of the range at its very ends, mV. */
const ROUNDING_MV = 0.0005;

/**
 * Voltage of a thermocouple whose cold junction is at 0 °C, mV.
 * K -200 to 1372, J -210 to 760, T -200 to 400 °C; outside it null.
 */
export function thermocoupleMillivolts(type: ThermocoupleType, celsius: number): number | null {
  const curve = THERMOCOUPLE_CURVES[type];
  if (!(celsius >= curve.lowestCelsius && celsius <= curve.highestCelsius)) return null;
  return millivoltsAndSlope(curve, celsius)[0];
}

/**
 * Temperature at which a thermocouple whose cold junction is at 0 °C gives so many mV, °C; undoes
 * thermocoupleMillivolts within 1e-6 °C. Outside of its range null.
 * The published inverse polynomials err by up to 0.05 °C, 0.03 at boiling syrup: a solve of the direct function starts
 * from them.
 */
export function thermocoupleCelsius(type: ThermocoupleType, millivolts: number): number | null {
  const curve = THERMOCOUPLE_CURVES[type];
  const { lowestCelsius: lowest, highestCelsius: highest } = curve;
  const within =
    millivolts >= millivoltsAndSlope(curve, lowest)[0] - ROUNDING_MV &&
    millivolts <= millivoltsAndSlope(curve, highest)[0] + ROUNDING_MV;
  if (!within) return null;
  let celsius = roughCelsius(curve, millivolts);
  for (let step = 0; step < MOST_STEPS; step++) {
    const [found, slope] = millivoltsAndSlope(curve, celsius);
    const by = (millivolts - found) / slope;
    celsius = Math.min(highest, Math.max(lowest, celsius + by));
    if (Math.abs(by) < SOLVED_C) break;
  }
  return celsius;
}

/**
 * Temperature of the tip from the voltage at the terminals, whose own temperature is the cold junction's, °C.
 * Voltages add up, temperatures do not: the cold junction's voltage is added first. Null where either is out of range.
 */
export function tipCelsius(type: ThermocoupleType, millivolts: number, coldJunctionCelsius: number): number | null {
  const cold = thermocoupleMillivolts(type, coldJunctionCelsius);
  return cold === null ? null : thermocoupleCelsius(type, millivolts + cold);
}

/** mV at °C, and how fast it grows there, mV/°C. */
function millivoltsAndSlope(curve: ThermocoupleCurve, celsius: number): [number, number] {
  const coefficients = celsius < 0 ? curve.below : curve.above;
  let value = 0;
  let slope = 0;
  for (let power = coefficients.length - 1; power >= 0; power--) {
    slope = slope * celsius + value;
    value = value * celsius + coefficients[power]!;
  }
  if (celsius < 0 || curve.bell === null) return [value, slope];
  const from = celsius - curve.bell.centreCelsius;
  const bell = curve.bell.millivolts * Math.exp(curve.bell.perSquareCelsius * from * from);
  return [value + bell, slope + 2 * curve.bell.perSquareCelsius * from * bell];
}

function roughCelsius(curve: ThermocoupleCurve, millivolts: number): number {
  const reach = Math.min(millivolts, curve.roughHighestMillivolts);
  const rough = (reach < 0 ? curve.roughBelow : curve.roughAbove).reduceRight((sum, one) => sum * reach + one, 0);
  return rough + (millivolts - reach) / STEEP_MV_PER_C;
}
