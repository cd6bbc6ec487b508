// How much syrup a sap gives: by the balance of what is dissolved, and by the trade's rules of thumb beside it.
import { densityKgPerM3 } from './density.ts';

/** Volumes at 20 °C. */
interface Yield {
  litres: number;
  kg: number;
  /** Litres of water that boil away. */
  evaporatedLitres: number;
  /** By C. H. Jones's rule (Vermont; basis 65.5 °Bx): sap over syrup is 86 / °Bx. null where it does not hold. */
  ruleOf86Litres: number | null;
  /** By its revision (Perkins & Isselhardt, UVM; 66.0 °Bx): 87.1 / °Bx − 0.32. null where it does not hold. */
  revisedRuleLitres: number | null;
}

/** At 8 °Bx the rule of 86 is 2 % off, at 12 °Bx 4 %: it takes no account of the syrup's own volume. */
const ruleOf86GreatestBrix = 8;
/** Both rules are for syrup near the least density that may be sold; 1.1 °Bx from their own they are 2 to 3 % off. */
const rulesLeastSyrupBrix = 65;
const rulesGreatestSyrupBrix = 67;

/**
 * Syrup from so many litres of sap, exact: what is dissolved stays. Sugar that burns on or leaves with foam and niter,
 * or is left in the filter, is not counted off.
 * Range 0 or more litres, 0 < brixSap ≤ brixSyrup ≤ 85; outside it null.
 */
export function yieldOf(litresSap: number, brixSap: number, brixSyrup: number): Yield | null {
  const sapDensity = densityKgPerM3(brixSap, 20);
  const syrupDensity = densityKgPerM3(brixSyrup, 20);
  const waterDensity = densityKgPerM3(0, 20);
  if (sapDensity === null || syrupDensity === null || waterDensity === null) return null;
  if (!(litresSap >= 0 && litresSap < Infinity && brixSap > 0 && brixSap <= brixSyrup)) return null;
  const sapKg = (litresSap * sapDensity) / 1000;
  const kg = (sapKg * brixSap) / brixSyrup;
  const usual = brixSyrup >= rulesLeastSyrupBrix && brixSyrup <= rulesGreatestSyrupBrix;
  return {
    litres: (1000 * kg) / syrupDensity,
    kg,
    evaporatedLitres: (1000 * (sapKg - kg)) / waterDensity,
    ruleOf86Litres: usual && brixSap <= ruleOf86GreatestBrix ? litresSap / (86 / brixSap) : null,
    revisedRuleLitres: usual ? litresSap / (87.1 / brixSap - 0.32) : null,
  };
}
