// Whether a typed pressure can be what it is said to be, and what it looks like where it cannot.
import { formatTyped } from '../quantities/format.ts';
import { standardAltitudeM, stationPressureFromAltitudeHpa } from './station-pressure.ts';

/**
 * What pressures brought to sea level ever were on land outside of hurricanes, hPa: 925.6 in Scotland in 1884, 1083.8
 * in Siberia in 1968 (both from memory), and a little more.
 */
const leastSeaLevelHpa = 920;
const greatestSeaLevelHpa = 1085;

/**
 * How far the true pressure at a place lay from the standard atmosphere in the same records, hPa: 88 under it at sea
 * level and 60 over it at 261 m and -45 °C (the first by subtraction, the second reduced back; from memory), and a
 * little more. Cold air alone makes 45 hPa less at 3000 m.
 */
const mostUnderStandardHpa = 92;
const mostOverStandardHpa = 64;

/**
 * A sea-level figure typed for a barometer's is a common slip, and so much over the standard is rarer than that slip:
 * 1040 hPa at sea level is seen on one day in some hundreds (common practice).
 */
const seldomOverStandardHpa = 27;
const usualSeaLevelHpa = { least: 980, greatest: 1050 };

/** The highest place of which anyone would type a pressure is 5000 m; no place on land has more than 1100 hPa. */
const leastStationHpa = 450;
const greatestStationHpa = 1100;

/** A pressure as a person typed it. */
export interface TypedPressure {
  hpa: number;
  at: 'station' | 'altimeter' | 'sea-level';
  /** null while not known; then only what is possible nowhere is doubted. */
  altitudeM: number | null;
  /** Out of doors, where it was typed. */
  outdoorC: number | null;
}

/**
 * One sentence for a person where a typed pressure is not possible at its altitude: what would be, and what the
 * number looks like; null where real weather can make it, and no common slip rather would.
 * Limits: record pressures on land, from memory; see the constants. QNH and QFF differ too little to be told apart.
 */
export function pressureDoubt(typed: TypedPressure): string | null {
  return typed.at === 'station' ? stationDoubt(typed) : seaLevelDoubt(typed);
}

const say = (hpa: number): string => `${formatTyped(hpa, 0)} hPa`;

function stationDoubt({ hpa, altitudeM }: TypedPressure): string | null {
  const standard = altitudeM === null ? null : stationPressureFromAltitudeHpa(altitudeM);
  if (standard === null || altitudeM === null) {
    if (hpa >= leastStationHpa && hpa <= greatestStationHpa) return null;
    return `A barometer cannot show ${say(hpa)} anywhere where people boil: look at the number and its unit again.`;
  }
  const slip = hpa > standard + seldomOverStandardHpa && isUsualAtSeaLevel(hpa);
  const possible = isOfPlace(hpa, standard);
  if (possible && !slip) return null;
  const shows = `A barometer at ${formatTyped(altitudeM, 0)} m shows about ${say(Math.round(standard))}`;
  const usual = `${shows}, and ${say(hpa)} ${possible ? 'hardly ever' : 'never'}`;
  if (slip || (hpa > standard && isOfSeaLevel(hpa)))
    return `${usual}: this looks like a weather page's sea-level figure or an airfield's setting; choose which of them it is, or correct the altitude.`;
  const height = standardAltitudeM(hpa);
  if (height === null) return `${usual}: look at the number and its unit again.`;
  return `${usual}: this is usual at about ${(Math.round(height / 50) * 50).toFixed(0)} m; look at the number and at the altitude again.`;
}

function seaLevelDoubt({ hpa, at, altitudeM, outdoorC }: TypedPressure): string | null {
  const standard = altitudeM === null ? null : stationPressureFromAltitudeHpa(altitudeM);
  if (!isOfSeaLevel(hpa)) {
    const name = at === 'altimeter' ? "An airfield's setting" : "A weather page's sea-level figure";
    const usual = `${name} lies between ${say(leastSeaLevelHpa)} and ${say(greatestSeaLevelHpa)} everywhere, and ${say(hpa)} does not`;
    if (standard !== null && isOfPlace(hpa, standard))
      return `${usual}: this looks like what a barometer at your own ${formatTyped(altitudeM ?? 0, 0)} m shows; choose that.`;
    return `${usual}: look at the number and its unit again, or choose the barometer if it was read at the pans.`;
  }
  if (at === 'sea-level' && outdoorC !== null && !(outdoorC >= -60 && outdoorC <= 60))
    return `It is never ${formatTyped(outdoorC, 0)} °C outdoors: look at the number and its unit again.`;
  return null;
}

const isOfSeaLevel = (hpa: number): boolean => hpa >= leastSeaLevelHpa && hpa <= greatestSeaLevelHpa;

const isUsualAtSeaLevel = (hpa: number): boolean => hpa >= usualSeaLevelHpa.least && hpa <= usualSeaLevelHpa.greatest;

const isOfPlace = (hpa: number, standard: number): boolean =>
  hpa >= standard - mostUnderStandardHpa && hpa <= standard + mostOverStandardHpa;
