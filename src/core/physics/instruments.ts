// What a hydrometer or refractometer reading means: its scale, and its correction for the temperature of the sample.
import { brixFromDensity, densityKgPerM3 } from './density.ts';

/** 60 °F: the temperature that Baumé and specific gravity scales of the trade refer to. */
const sixtyFahrenheitCelsius = 140 / 9;

/** The Baumé modulus of liquids heavier than water, 60/60 °F. */
const baumeModulus = 145;

/** Cubic expansion of soda-lime glass, 1/K; from memory. */
const glassExpansionPerKelvin = 25e-6;

/** The correction table was read from 10 to 16 °C; to 30 °C the fit agrees with the international table as remembered. */
const refractometerLeastCelsius = 10;
const refractometerGreatestCelsius = 30;
const refractometerGreatestBrix = 80;

/**
 * Strength from specific gravity at 60/60 °F, °Bx.
 * Range: what 0 to 85 °Bx gives; a gravity just below 1 is 0 °Bx; outside it null.
 */
export function brixFromSpecificGravity(sg: number): number | null {
  const water = densityKgPerM3(0, sixtyFahrenheitCelsius);
  return water === null ? null : brixFromDensity(sg * water, sixtyFahrenheitCelsius);
}

/** Specific gravity at 60/60 °F from strength, 0 to 85 °Bx; outside it null. */
export function specificGravityFromBrix(brix: number): number | null {
  const water = densityKgPerM3(0, sixtyFahrenheitCelsius);
  const solution = densityKgPerM3(brix, sixtyFahrenheitCelsius);
  return water === null || solution === null ? null : solution / water;
}

/** Strength from degrees Baumé (modulus 145, 60/60 °F), °Bx. Range: what 0 to 85 °Bx gives; outside it null. */
export function brixFromBaume(baume: number): number | null {
  return baume < baumeModulus ? brixFromSpecificGravity(baumeModulus / (baumeModulus - baume)) : null;
}

/** Degrees Baumé (modulus 145, 60/60 °F) from strength, 0 to 85 °Bx; outside it null. */
export function baumeFromBrix(brix: number): number | null {
  const sg = specificGravityFromBrix(brix);
  return sg === null ? null : baumeModulus - baumeModulus / sg;
}

/**
 * True strength from a hydrometer floating in a hot or cold sample, °Bx.
 * Both temperatures 0 to 100 °C, reading 0 to 85 °Bx; outside it null.
 * It floats as deep as its reading says at its reference temperature; the glass has grown or shrunk since.
 * Surface tension is ignored.
 */
export function trueBrixFromHydrometer(reading: {
  readingBrix: number;
  sampleCelsius: number;
  referenceCelsius: number;
}): number | null {
  const { readingBrix, sampleCelsius, referenceCelsius } = reading;
  const shown = densityKgPerM3(readingBrix, referenceCelsius);
  if (shown === null) return null;
  const glassGrowth = 1 + glassExpansionPerKelvin * (sampleCelsius - referenceCelsius);
  return brixFromDensity(shown / glassGrowth, sampleCelsius);
}

/**
 * True strength from a refractometer for sucrose with a 20 °C scale, °Bx.
 * Range 0 to 80 °Bx and 10 to 30 °C; outside it null, for hot syrup must cool first.
 * A compensated instrument corrects itself; its sample temperature may then be null (not known).
 * Source: fit to OIV-MA-AS2-02 Table I, within 0.006 °Bx of its rows from 10 to 16 °C.
 */
export function trueBrixFromRefractometer(reading: {
  readingBrix: number;
  sampleCelsius: number | null;
  compensated: boolean;
}): number | null {
  const { readingBrix, sampleCelsius, compensated } = reading;
  if (!(readingBrix >= 0 && readingBrix <= refractometerGreatestBrix)) return null;
  if (sampleCelsius === null) return compensated ? readingBrix : null;
  if (!(sampleCelsius >= refractometerLeastCelsius && sampleCelsius <= refractometerGreatestCelsius)) return null;
  if (compensated) return readingBrix;
  return Math.max(0, readingBrix + refractometerCorrectionBrix(readingBrix, sampleCelsius));
}

/** °Bx to add to a reading taken at a temperature other than 20 °C. */
function refractometerCorrectionBrix(readingBrix: number, sampleCelsius: number): number {
  const u = sampleCelsius - 20;
  const b = readingBrix;
  return u * (6.3376e-2 + 5.307e-4 * b - 4.699e-6 * b * b) + u * u * (1.044e-3 - 1.6442e-5 * b + 7.18e-8 * b * b);
}
