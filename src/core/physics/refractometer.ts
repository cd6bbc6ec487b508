// What a refractometer's reading means: its correction for the temperature of the sample and for invert sugar.

/** The correction table was read from 10 to 16 °C; to 30 °C the fit agrees with the international table as remembered. */
const leastCelsius = 10;
const greatestCelsius = 30;
const greatestBrix = 80;

interface RefractometerReading {
  readingBrix: number;
  sampleCelsius: number;
  /** The temperature at which it was set with water or made for, mostly 20 °C. */
  referenceCelsius: number;
  /** It corrects itself for temperature. */
  compensated: boolean;
}

/**
 * True strength from a refractometer for sucrose, °Bx.
 * Range 0 to 80 °Bx and 10 to 30 °C; outside it null, for hot syrup must cool first, compensated or not.
 * Source: fit to OIV-MA-AS2-02 Table I, within 0.006 °Bx of its rows from 10 to 16 °C.
 */
export function trueBrixFromRefractometer(read: RefractometerReading): number | null {
  const { readingBrix, sampleCelsius, referenceCelsius, compensated } = read;
  if (!(readingBrix >= 0 && readingBrix <= greatestBrix)) return null;
  if (!inRange(sampleCelsius) || !inRange(referenceCelsius)) return null;
  if (compensated) return readingBrix;
  const correction = correctionBrix(readingBrix, sampleCelsius) - correctionBrix(readingBrix, referenceCelsius);
  return Math.max(0, readingBrix + correction);
}

const inRange = (celsius: number): boolean => celsius >= leastCelsius && celsius <= greatestCelsius;

/** °Bx to add to a reading taken at a temperature other than 20 °C. */
function correctionBrix(readingBrix: number, sampleCelsius: number): number {
  const u = sampleCelsius - 20;
  const b = readingBrix;
  return u * (6.3376e-2 + 5.307e-4 * b - 4.699e-6 * b * b) + u * u * (1.044e-3 - 1.6442e-5 * b + 7.18e-8 * b * b);
}

/**
 * How much a refractometer may show too little in a syrup that holds glucose and fructose, °Bx.
 * `invertShare` is their mass share of everything dissolved, 0 to 1.
 * UNVERIFIED: 0.022 °Bx for each 1 % of invert sugar in the syrup, AOAC 932.14 from memory. So no reading is shifted by
 * it: it widens how sure a reading is.
 */
export const invertCorrectionBrix = (readingBrix: number, invertShare: number): number =>
  0.022 * readingBrix * invertShare;
