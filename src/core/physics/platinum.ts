// What a platinum resistance thermometer's ohms mean, both ways by IEC 60751, and how far its class lets it be off.

/** IEC 60751 coefficients, per °C, °C² and °C⁴; read in a data sheet that quotes the standard. */
const A = 3.9083e-3;
const B = -5.775e-7;
const C = -4.183e-12;

/** The standard's own range, °C. */
const LOWEST_C = -200;
const HIGHEST_C = 850;
/** A solve ends when a step is under this, °C; four steps or fewer do it. */
const SOLVED_C = 1e-10;
const MOST_STEPS = 20;

/** Resistance at °C over that at 0 °C: 1 + A t + B t², and below 0 °C + C (t - 100) t³. */
function ratioAt(celsius: number): number {
  const quadratic = 1 + celsius * (A + B * celsius);
  return celsius < 0 ? quadratic + C * (celsius - 100) * celsius ** 3 : quadratic;
}

const slopeBelowZero = (celsius: number): number => A + 2 * B * celsius + C * (4 * celsius - 300) * celsius * celsius;

/** The ends, with what rounding may put outside of them. */
const LOWEST_RATIO = ratioAt(LOWEST_C) - 1e-12;
const HIGHEST_RATIO = ratioAt(HIGHEST_C) + 1e-12;

/** Resistance of a probe that has `r0Ohm` at 0 °C (100 for a Pt100), ohm; -200 to 850 °C, outside it null. */
export function platinumOhms(r0Ohm: number, celsius: number): number | null {
  if (!(r0Ohm > 0 && celsius >= LOWEST_C && celsius <= HIGHEST_C)) return null;
  const ohms = r0Ohm * ratioAt(celsius);
  return ohms < Infinity ? ohms : null;
}

/** Temperature of a probe that has `r0Ohm` at 0 °C, °C; undoes platinumOhms within 1e-6 °C. Outside its range null. */
export function platinumCelsius(r0Ohm: number, ohms: number): number | null {
  const ratio = ohms / r0Ohm;
  if (!(r0Ohm > 0 && ratio >= LOWEST_RATIO && ratio <= HIGHEST_RATIO)) return null;
  let celsius = (-A + Math.sqrt(A * A - 4 * B * (1 - ratio))) / (2 * B);
  if (ratio >= 1) return Math.min(HIGHEST_C, celsius);
  for (let step = 0; step < MOST_STEPS; step++) {
    const by = (ratio - ratioAt(celsius)) / slopeBelowZero(celsius);
    celsius = Math.max(LOWEST_C, celsius + by);
    if (Math.abs(by) < SOLVED_C) break;
  }
  return celsius;
}

/** Tolerances of IEC 60751, °C: so much at 0 °C, and so much more a °C away from it; read. */
const CLASSES = { A: { atZero: 0.15, perCelsius: 0.002 }, B: { atZero: 0.3, perCelsius: 0.005 } };

/**
 * Standard uncertainty of a probe of a class that was never checked, °C: its tolerance over √3, as nothing says where
 * within the tolerance it lies.
 */
export function platinumSigmaC(tolerance: keyof typeof CLASSES, celsius: number): number {
  const { atZero, perCelsius } = CLASSES[tolerance];
  return (atZero + perCelsius * Math.abs(celsius)) / Math.sqrt(3);
}
