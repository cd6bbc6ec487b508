// What a hydrometer's reading means: its scale, °Brix, degrees Baumé or specific gravity, read in a hot or cold sample.
import { brixFromDensity, densityKgPerM3 } from './density.ts';

/** 60 °F: the temperature that Baumé and specific gravity scales of the trade refer to. */
export const SIXTY_FAHRENHEIT_CELSIUS = 140 / 9;

/** The Baumé modulus of liquids heavier than water. */
const baumeModulus = 145;

/** Cubic expansion of soda-lime glass, 1/K; from memory. */
const glassExpansionPerKelvin = 25e-6;

export type StrengthScale = 'brix' | 'baume' | 'sg';

interface HydrometerReading {
  /** What the stem shows at the surface. */
  reading: number;
  scale: StrengthScale;
  sampleCelsius: number;
  /** The temperature that the maker printed on it. */
  referenceCelsius: number;
}

/**
 * True strength from a hydrometer floating in a hot or cold sample, °Bx.
 * Sample and reference 0 to 105 °C, and a reading that 0 to 85 °Bx gives; outside it null.
 * It floats as deep as its reading says at its reference temperature, and the glass has grown or shrunk since.
 * Baumé (modulus 145) and specific gravity are over water at the reference temperature, as 60/60 °F and 20/20 °C are.
 * Surface tension is ignored.
 */
export function trueBrixFromHydrometer(read: HydrometerReading): number | null {
  const shown = floatedKgPerM3(read.reading, read.scale, read.referenceCelsius);
  if (shown === null) return null;
  const glassGrowth = 1 + glassExpansionPerKelvin * (read.sampleCelsius - read.referenceCelsius);
  return brixFromDensity(shown / glassGrowth, read.sampleCelsius);
}

/** The density at which the stem shows a reading at the reference temperature, kg/m³; null for a reading of nothing. */
function floatedKgPerM3(reading: number, scale: StrengthScale, referenceCelsius: number): number | null {
  if (scale === 'brix') return densityKgPerM3(reading, referenceCelsius);
  const water = densityKgPerM3(0, referenceCelsius);
  const sg = scale === 'sg' ? reading : gravityFromBaume(reading);
  return water === null || sg === null ? null : sg * water;
}

/**
 * What a hydrometer shows in a sample of a strength, on its own scale; the inverse of trueBrixFromHydrometer, which it
 * undoes exactly. Ranges as there; null as well where the reading itself would be off the °Brix scale.
 */
export function hydrometerReading(
  brix: number,
  scale: StrengthScale,
  sampleCelsius: number,
  referenceCelsius: number,
): number | null {
  const sample = densityKgPerM3(brix, sampleCelsius);
  const water = densityKgPerM3(0, referenceCelsius);
  if (sample === null || water === null) return null;
  const shown = sample * (1 + glassExpansionPerKelvin * (sampleCelsius - referenceCelsius));
  if (scale === 'brix') return brixFromDensity(shown, referenceCelsius);
  return scale === 'sg' ? shown / water : baumeFromGravity(shown / water);
}

const gravityFromBaume = (baume: number): number | null =>
  baume < baumeModulus ? baumeModulus / (baumeModulus - baume) : null;

const baumeFromGravity = (sg: number): number => baumeModulus - baumeModulus / sg;

/** Specific gravity at 60/60 °F from strength, 0 to 85 °Bx; outside it null. */
export const specificGravityFromBrix = (brix: number): number | null =>
  hydrometerReading(brix, 'sg', SIXTY_FAHRENHEIT_CELSIUS, SIXTY_FAHRENHEIT_CELSIUS);

/** Degrees Baumé (modulus 145, 60/60 °F) from strength, 0 to 85 °Bx; outside it null. */
export const baumeFromBrix = (brix: number): number | null =>
  hydrometerReading(brix, 'baume', SIXTY_FAHRENHEIT_CELSIUS, SIXTY_FAHRENHEIT_CELSIUS);

/** Strength from specific gravity at 60/60 °F, °Bx; a gravity just below 1 is 0 °Bx; beyond 85 °Bx null. */
export const brixFromSpecificGravity = (sg: number): number | null => atSixty(sg, 'sg');

/** Strength from degrees Baumé (modulus 145, 60/60 °F), °Bx. Range: what 0 to 85 °Bx gives; outside it null. */
export const brixFromBaume = (baume: number): number | null => atSixty(baume, 'baume');

const atSixty = (reading: number, scale: StrengthScale): number | null =>
  trueBrixFromHydrometer({
    reading,
    scale,
    sampleCelsius: SIXTY_FAHRENHEIT_CELSIUS,
    referenceCelsius: SIXTY_FAHRENHEIT_CELSIUS,
  });
