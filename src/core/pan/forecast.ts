// When: the time until a strength or a depth is reached, with its middle 80 %, as if the fire stays and nothing is poured in.
import { litresOf, NOMINAL_SIGMA } from './contents.ts';
import { waterPerSugar } from './evaporation-line.ts';
import { evaporationKgPerS } from './evaporation.ts';
import { type PanModel, sugarRiseSigmaC, type Surroundings } from './pan-state.ts';
import type { PanDesign } from './setup.ts';
import type { Limit } from './limits.ts';
import { depthAtLitres, litresAtDepth } from '../physics/vessel.ts';
import { Z80 } from '../quantities/spread.ts';

export interface TimeLeft {
  seconds: number;
  low: number;
  high: number;
}

/** How far fire and wind wander from their mean over a forecast (common practice: open fires), share. */
const FIRE_WANDERS = 0.12;
/** A forecast further ahead than this says nothing, s. */
const FURTHEST_S = 24 * 3600;
/** A counted content is known to about this share (typed litres ± 8 %, sap strength ± 5–10 %). */
const COUNT_SIGMA = 0.12;
/** No forecast is surer than this: a person looks, then acts, s. */
const LEAST_SIGMA_S = 10;

/**
 * Time until the pan holds the strength of a limit; 0 once there, null when not known. Two ways are tried, the line through the rise
 * and the count of sugar and water, and the surer one is used.
 */
export function timeToStrength(
  pan: PanModel,
  design: PanDesign,
  around: Surroundings,
  limit: Limit,
  t: number,
): TimeLeft | null {
  const { brix } = limit;
  if (pan.off || pan.flame === 0 || around.waterC === null) return null;
  if (pan.brix !== null && pan.brix >= brix) return { seconds: 0, low: 0, high: 0 };
  const byLine = timeByLine(pan, around, limit);
  const byCount = timeByCount(pan, design, brix);
  const surer = !byLine ? byCount : !byCount ? byLine : byLine.sigma <= byCount.sigma ? byLine : byCount;
  if (surer === null || surer.seconds > FURTHEST_S) return null;
  const passed = (t - pan.brixAt) / 1000;
  const left = Math.max(0, surer.seconds - (surer === byLine ? passed : 0));
  return { seconds: left, low: Math.max(0, left - Z80 * surer.sigma), high: left + Z80 * surer.sigma };
}

interface Estimate {
  seconds: number;
  sigma: number;
}

function timeByLine(pan: PanModel, around: Surroundings, limit: Limit): Estimate | null {
  const { fit } = pan;
  if (fit === null || pan.brix === null) return null;
  const heat = (waterPerSugar(pan.brix) - waterPerSugar(limit.brix)) / fit.k;
  const seconds = Math.max(0, heat / pan.flame);
  const offset = (sugarRiseSigmaC(around, limit.riseC ?? 0) * limit.waterPerSugarPerC) / fit.k;
  const slope = (heat * fit.kSigma) / fit.k;
  const level = fit.uSigma / fit.k;
  // Math.hypot is many times slower, and this runs for every pan in every second.
  const variance = level * level + slope * slope + offset * offset + (FIRE_WANDERS * heat) ** 2 + LEAST_SIGMA_S ** 2;
  const sigma = Math.sqrt(variance) / pan.flame;
  return { seconds, sigma };
}

function timeByCount(pan: PanModel, design: PanDesign, brix: number): Estimate | null {
  const { sugarKg, waterKg } = pan.contents;
  const rate = evaporationKgPerS(pan, design);
  if (sugarKg === null || waterKg === null || rate === null || rate <= 0 || sugarKg <= 0) return null;
  if (litresOf(pan.contents) === null) return null;
  const over = waterKg - sugarKg * waterPerSugar(brix);
  if (over < 0) return null;
  const seconds = over / rate;
  const rateShare = pan.learntKgPerS === null ? NOMINAL_SIGMA : FIRE_WANDERS;
  const sigma = Math.hypot(
    seconds * rateShare,
    (COUNT_SIGMA * (waterKg + sugarKg * waterPerSugar(brix))) / rate,
    LEAST_SIGMA_S,
  );
  return { seconds, sigma };
}

/** Depth of the liquid as it stands, mm (4 % more than at 20 °C when hot); null while litres or vessel are not known. */
export function depthMm(pan: PanModel, design: PanDesign): number | null {
  const litres = litresOf(pan.contents);
  return litres === null || design.vessel === null ? null : depthAtLitres(design.vessel, litres * HOT_VOLUME);
}

/** Volume at a boil over volume at 20 °C (ICUMSA density: 1.041 for water, 1.039 at 66 °Bx). */
export const HOT_VOLUME = 1.04;

/** Seconds until the depth falls to `mm`; 0 once there, null while not known. */
export function timeToDepth(pan: PanModel, design: PanDesign, mm: number): number | null {
  const litres = litresOf(pan.contents);
  const least = design.vessel === null ? null : litresAtDepth(design.vessel, mm);
  if (litres === null || least === null || pan.off) return null;
  const above = litres - least / HOT_VOLUME;
  if (above <= 0) return 0;
  const rate = evaporationKgPerS(pan, design);
  if (rate === null || rate <= 0) return null;
  // A kilogram of water is nearly a litre: 0.2 % is far under what the contents are known to.
  const seconds = above / rate;
  return seconds > FURTHEST_S ? null : seconds;
}
