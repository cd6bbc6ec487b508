// What a thermistor's ohms mean, both ways, by its three Steinhart-Hart figures or by its ohms at 25 °C and its beta.
import { celsiusFromKelvin, kelvinFromCelsius } from '../quantities/units.ts';

/** Figures of one part, from its maker; those of another part do not fit it. */
export type ThermistorCurve =
  /** A, B and C of 1/T = A + B ln R + C (ln R)³, T in kelvin and R in ohm. */
  | { steinhart_hart: readonly [number, number, number] }
  /** Of 1/T = 1/298.15 + ln(R/R25) / beta; off by about 1 °C at 100 °C, so it needs a check in boiling water. */
  | { r25_ohm: number; beta_k: number };

/** No bead lives beyond these, °C. */
const LOWEST_C = -100;
const HIGHEST_C = 500;
const KELVIN_AT_25_C = 298.15;
/** A solve ends when a step is under this part of ln R. */
const SOLVED = 1e-14;
const MOST_STEPS = 100;

/** Temperature at so many ohms, °C; -100 to 500. Outside it null, and where the figures are none of a thermistor. */
export function thermistorCelsius(curve: ThermistorCurve, ohms: number): number | null {
  if (!(ohms > 0 && falls(curve))) return null;
  const celsius = celsiusFromKelvin(1 / perKelvin(curve, ohms));
  return celsius >= LOWEST_C && celsius <= HIGHEST_C ? celsius : null;
}

/** Ohms at -100 to 500 °C; undoes thermistorCelsius within 1e-6 °C. Outside it null. */
export function thermistorOhms(curve: ThermistorCurve, celsius: number): number | null {
  if (!(celsius >= LOWEST_C && celsius <= HIGHEST_C && falls(curve))) return null;
  const inverseKelvin = 1 / kelvinFromCelsius(celsius);
  const ohms =
    'beta_k' in curve
      ? curve.r25_ohm * Math.exp(curve.beta_k * (inverseKelvin - 1 / KELVIN_AT_25_C))
      : Math.exp(lnOhms(curve.steinhart_hart, inverseKelvin));
  return ohms > 0 && ohms < Infinity ? ohms : null;
}

function perKelvin(curve: ThermistorCurve, ohms: number): number {
  if ('beta_k' in curve) return 1 / KELVIN_AT_25_C + Math.log(ohms / curve.r25_ohm) / curve.beta_k;
  const [a, b, c] = curve.steinhart_hart;
  const ln = Math.log(ohms);
  return a + ln * (b + c * ln * ln);
}

/** The hotter the fewer ohms, throughout: else two temperatures would have the same ohms. */
function falls(curve: ThermistorCurve): boolean {
  if ('beta_k' in curve) return curve.r25_ohm > 0 && curve.beta_k > 0;
  const [, b, c] = curve.steinhart_hart;
  return b > 0 && c >= 0;
}

/** Newton from the line alone: the cubic makes it too far out, and from there every step comes nearer. */
function lnOhms([a, b, c]: readonly [number, number, number], inverseKelvin: number): number {
  let ln = (inverseKelvin - a) / b;
  for (let step = 0; step < MOST_STEPS; step++) {
    const by = (inverseKelvin - a - ln * (b + c * ln * ln)) / (b + 3 * c * ln * ln);
    ln += by;
    if (Math.abs(by) <= SOLVED * Math.abs(ln)) break;
  }
  return ln;
}
