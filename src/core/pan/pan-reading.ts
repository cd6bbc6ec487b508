// From the model of a pan to what is said of it: a reading with its ranges, its stage in the end.
import { litresOf } from './contents.ts';
import { depthMm, timeToDepth, timeToStrength } from './forecast.ts';
import { evaporationKgPerS } from './evaporation.ts';
import { type PanModel, sugarRiseC, sugarRiseSigmaC, type Surroundings } from './pan-state.ts';
import type { PanReading, ProbeState, Stage } from './reading.ts';
import type { PanDesign } from './setup.ts';
import { headSigmaC } from '../physics/head.ts';
import { MODEL_FLOOR_C, strengthRange80 } from '../physics/strength-uncertainty.ts';
import { temperatureNow } from './temperature-track.ts';

/** From this strength on a pan is thickening, °Bx (common practice: it then needs eyes). */
export const THICKENING_BRIX = 25;
/** Depth at which bare metal shows between bubbles and what is left burns, mm (common practice: 3/8 in at the very end is the least). */
const BARE_DEPTH_MM = 5;
/** A temperature read by hand stands so long, ms. */
const HAND_READING_LASTS_MS = 10 * 60_000;

/** Everything that is said of a pan at t (ms). `nearLeadS` is the lead of the near-finish call, s. */
export function readPan(
  pan: PanModel,
  design: PanDesign,
  around: Surroundings,
  probe: ProbeState | null,
  periodMs: number,
  nearLeadS: number,
  t: number,
): PanReading {
  const temperature = temperatureOf(pan, t, periodMs, probe);
  const known = temperature !== null;
  const strength = known ? strengthOf(pan, design, around) : NOT_KNOWN;
  const finish = known || strength.brix !== null ? timeToStrength(pan, design, around, around.limits.finish, t) : null;
  const evaporation = evaporationKgPerS(pan, design);
  return {
    pan: design.id,
    temperature_c: temperature,
    water_c: around.waterC,
    rise_c: temperature === null || around.waterC === null ? null : temperature - around.waterC,
    rate_c_per_min: known ? pan.rateCPerMin : null,
    brix: strength.brix,
    brix_low: strength.low,
    brix_high: strength.high,
    litres: litresOf(pan.contents),
    depth_mm: depthMm(pan, design),
    evaporation_l_per_h: evaporation === null ? null : evaporation * 3600,
    finish_in_s: finish?.seconds ?? null,
    finish_low_s: finish?.low ?? null,
    finish_high_s: finish?.high ?? null,
    scorch_in_s: pan.off ? null : scorchIn(pan, design, around, t),
    top_up_in_s: pan.off ? null : timeToDepth(pan, design, design.minDepthMm),
    stage: stageOf(pan, around, known, finish?.seconds ?? null, nearLeadS),
    probe,
  };
}

function temperatureOf(pan: PanModel, t: number, periodMs: number, probe: ProbeState | null): number | null {
  if (probe !== null) return probe === 'lost' || probe === 'broken' ? null : temperatureNow(pan.track, t, periodMs);
  return pan.byHand !== null && t - pan.byHand.at <= HAND_READING_LASTS_MS ? pan.byHand.celsius : null;
}

const NOT_KNOWN = { brix: null, low: null, high: null };

function strengthOf(
  pan: PanModel,
  design: PanDesign,
  around: Surroundings,
): { brix: number | null; low: number | null; high: number | null } {
  if (pan.brix === null || around.pressureHpa === null) return NOT_KNOWN;
  if (design.ceilingC !== null)
    return { brix: pan.brix, low: Math.max(0, pan.brix - 2), high: Math.min(80, pan.brix + 2) };
  if (pan.phase !== 'boiling' || pan.riseC === null) return NOT_KNOWN;
  const rise = sugarRiseC(around, Math.max(0, pan.riseC));
  const noise = (pan.track.noise ?? 0.1) / 3;
  const head = headSigmaC(depthMm(pan, design), pan.brix, around.pressureHpa) ?? 0;
  // What is not known of this sap is in the rise already; what is left is how far published tables scatter for any sap.
  const riseSigmaC = Math.hypot(sugarRiseSigmaC(around, rise), noise, head);
  const errors = { riseSigmaC, modelSigmaC: MODEL_FLOOR_C };
  const range = strengthRange80(rise, errors, design.shares, around.pressureHpa);
  if (range === null) return { brix: pan.brix, low: null, high: null };
  return { brix: pan.brix, low: Math.min(range.low, pan.brix), high: Math.max(range.high, pan.brix) };
}

/**
 * Seconds until the pan is too strong or too shallow for live heat, whichever comes first; null while neither is known.
 * Before the pan's own evaporation is seen, a count from nominal power is too unsure to call a burn by.
 */
function scorchIn(pan: PanModel, design: PanDesign, around: Surroundings, t: number): number | null {
  const seen =
    (pan.fit !== null && (pan.brix ?? 0) >= THICKENING_BRIX) || pan.learntKgPerS !== null || pan.reachedFinish;
  const strong = seen ? (timeToStrength(pan, design, around, around.limits.scorch, t)?.seconds ?? null) : null;
  const shallow = pan.learntKgPerS === null ? null : timeToDepth(pan, design, BARE_DEPTH_MM);
  if (strong === null) return shallow;
  return shallow === null ? strong : Math.min(strong, shallow);
}

function stageOf(
  pan: PanModel,
  around: Surroundings,
  known: boolean,
  finishInS: number | null,
  nearLeadS: number,
): Stage {
  if (pan.off) return 'off';
  if (pan.reachedFinish) return 'finished';
  if (around.waterC === null || (!known && pan.brix === null)) return 'unknown';
  // At a boil's height but not yet seen to stay there: it may boil, or be on its way through.
  if (pan.phase === 'cold' && pan.riseC !== null && pan.riseC >= 0) return 'unknown';
  if (pan.phase !== 'boiling') return 'warming';
  if (pan.brix !== null && pan.brix >= THICKENING_BRIX) {
    return finishInS !== null && finishInS <= nearLeadS ? 'near-finish' : 'thickening';
  }
  return 'boiling';
}
