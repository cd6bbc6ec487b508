// How much hotter liquid boils under the weight of the liquid above it, and what that leaves unsure about a probe's depth.
import { densityKgPerM3 } from './density.ts';
import { saturationTemperatureCelsius } from './water-point.ts';

const gravity = 9.80665; // m/s²
const pascalPerHpa = 100;
const mmPerM = 1000;

/** Deeper than any pot of sap, mm. */
const greatestDepthMm = 2000;
/** Common practice: sap and syrup are boiled 1 to 3 inches deep, mm. */
const usualDepthMm = 50;
/** The density equation ends a little over water's boiling point at sea level; density hardly moves there. */
const greatestDensityCelsius = 105;

/**
 * The most by which liquid at a depth under the surface boils hotter than at the surface, °C; where bubbles stir
 * well it is less. 1 cm of 66 °Bx syrup is 1.25 hPa and 0.035 °C at sea level.
 * Range 0 to 2000 mm, 0 to 85 °Bx, and pressures under which water boils from 0 to 374 °C; outside it null.
 * Source: density times gravity times depth, and IAPWS-IF97 for what that pressure does to water's boiling point.
 */
export function headRiseC(depthMm: number, brix: number, pressureHpa: number): number | null {
  const waterCelsius = saturationTemperatureCelsius(pressureHpa);
  if (waterCelsius === null || !(depthMm >= 0 && depthMm <= greatestDepthMm)) return null;
  const density = densityKgPerM3(brix, Math.min(waterCelsius, greatestDensityCelsius));
  if (density === null) return null;
  const headHpa = (density * gravity * (depthMm / mmPerM)) / pascalPerHpa;
  const below = saturationTemperatureCelsius(pressureHpa + headHpa);
  return below === null ? null : below - waterCelsius;
}

/**
 * Standard uncertainty of a measured rise for not knowing how deep the tip is, °C: it may be anywhere between surface
 * and bottom, which makes the head's rise uniform, σ = greatest / √12.
 * `depthMm` is that of the liquid; where nobody knows it, null, it is taken as 50 mm (common practice).
 * Other arguments and range as headRiseC; outside it null.
 */
export function headSigmaC(depthMm: number | null, brix: number, pressureHpa: number): number | null {
  const greatest = headRiseC(depthMm ?? usualDepthMm, brix, pressureHpa);
  return greatest === null ? null : greatest / Math.sqrt(12);
}
