// The pressure of the air at the pans, from the three ways in which a person can find it without a barometer.
import { kelvinFromCelsius } from '../quantities/units.ts';

/** ISO 2533 standard atmosphere, troposphere: hPa, K, K/m. */
const seaLevelHpa = 1013.25;
const seaLevelKelvin = 288.15;
const lapseKelvinPerMetre = 0.0065;
const exponent = 5.25588;
const inverseExponent = 1 / exponent;

/** From dry land below sea level to the highest place where anyone taps trees, and more. */
const leastAltitudeM = -500;
const greatestAltitudeM = 5000;

/** Every sea-level pressure ever recorded lies within. */
const leastSeaLevelHpa = 850;
const greatestSeaLevelHpa = 1100;

const altitudeHolds = (altitudeM: number): boolean => altitudeM >= leastAltitudeM && altitudeM <= greatestAltitudeM;

const seaLevelPressureHolds = (hpa: number): boolean => hpa >= leastSeaLevelHpa && hpa <= greatestSeaLevelHpa;

/**
 * The pressure that the standard atmosphere has at an altitude, hPa.
 * Range -500 to 5000 m; outside it null. Weather moves the true pressure by about ±20 hPa.
 * Source: ISO 2533 (the ICAO standard atmosphere), geopotential altitude.
 */
export function stationPressureFromAltitudeHpa(altitudeM: number): number | null {
  if (!altitudeHolds(altitudeM)) return null;
  return seaLevelHpa * (1 - (lapseKelvinPerMetre * altitudeM) / seaLevelKelvin) ** exponent;
}

/**
 * The altitude at which the standard atmosphere has a pressure, m.
 * Range: the pressures of -500 to 5000 m, 540 to 1075 hPa; outside it null.
 * Source: ISO 2533, the same equation solved for altitude.
 */
export function standardAltitudeM(pressureHpa: number): number | null {
  const altitudeM = (seaLevelKelvin / lapseKelvinPerMetre) * (1 - (pressureHpa / seaLevelHpa) ** inverseExponent);
  return altitudeHolds(altitudeM) ? altitudeM : null;
}

/**
 * The pressure at an altitude from an airfield's altimeter setting (QNH), hPa.
 * Range 850 to 1100 hPa and -500 to 5000 m; outside it null.
 * Source: the ICAO definition of QNH, by way of the standard atmosphere.
 */
export function stationPressureFromAltimeterHpa(qnhHpa: number, altitudeM: number): number | null {
  if (!seaLevelPressureHolds(qnhHpa) || !altitudeHolds(altitudeM)) return null;
  const atSeaLevel = (qnhHpa / seaLevelHpa) ** inverseExponent;
  return seaLevelHpa * (atSeaLevel - (lapseKelvinPerMetre * altitudeM) / seaLevelKelvin) ** exponent;
}

/**
 * The pressure at an altitude from the sea-level pressure of a weather page (QFF), hPa.
 * `outdoorCelsius` is the air at the pans' altitude, out of doors.
 * Range 850 to 1100 hPa, -500 to 5000 m, -60 to 60 °C; outside it null.
 * Source: reduction to sea level with the real station temperature and 6.5 K/km; from memory,
 * and within 0.1 hPa of the hypsometric formula up to 2000 m.
 */
export function stationPressureFromSeaLevelHpa(
  qffHpa: number,
  altitudeM: number,
  outdoorCelsius: number,
): number | null {
  if (!seaLevelPressureHolds(qffHpa) || !altitudeHolds(altitudeM)) return null;
  if (!(outdoorCelsius >= -60 && outdoorCelsius <= 60)) return null;
  const warmingKelvin = lapseKelvinPerMetre * altitudeM;
  return qffHpa * (1 - warmingKelvin / (kelvinFromCelsius(outdoorCelsius) + warmingKelvin)) ** exponent;
}
