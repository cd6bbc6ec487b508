// From the model of a pan to what is said of it: a reading with its ranges, its stage in the end.
import { type Course, isOff } from './course.ts';
import type { Setting } from './course-time.ts';
import { brixOfWaterPerSugar, riseOfWater, waterPerSugar } from './filter/liquid.ts';
import { variance, WATER, waterOf } from './filter/belief.ts';
import { isKnown, lookAt, type Look, type TimeLeft, countToDepth, timeToDepth, timeToStrength } from './forecast.ts';
import { fallInDoubt } from './pan-signs.ts';
import type { PanModel } from './pan-state.ts';
import { PanNow, type Strength } from './pan-now.ts';
import type { PanReading, ProbeState, Stage } from './reading.ts';
import { temperatureNow } from './temperature-track.ts';

/** From this strength on a pan is thickening, °Bx (common practice: it then needs eyes). */
export const THICKENING_BRIX = 25;
/** Depth at which bare metal shows between bubbles and what is left burns, mm (common practice: 3/8 in at the very end is the least). */
export const BARE_DEPTH_MM = 5;
/** A temperature read by hand stands so long, ms. */
const HAND_READING_LASTS_MS = 10 * 60_000;

/** What is said of a pan, and what the alarms and the screen are told beside it. */
export interface PanOutlook {
  reading: PanNow;
  finish: TimeLeft | null;
  shallow: TimeLeft | null;
  /** Share to which the litres are known. */
  litresShare: number;
}

/**
 * Everything that is said of a pan at t (ms). `nearLeadS` is the lead of the near-finish call, s. Some of the reading is
 * worked out when it is read: whoever keeps it beyond this moment copies it (`reading.whole()`).
 */
export function readPan(
  pan: PanModel,
  setting: Setting,
  probe: ProbeState | null,
  periodMs: number,
  nearLeadS: number,
  t: number,
): PanOutlook {
  const { design, around } = setting;
  const temperature = temperatureOf(pan, t, periodMs, probe);
  const known = temperature !== null;
  const look = lookAt(pan, setting, t);
  const strength = strengthOf(look);
  const finish = around.waterC === null ? null : timeToStrength(look, around.limits.finish.brix);
  const shallow = countToDepth(look, BARE_DEPTH_MM);
  const reading = new PanNow(look, strength, shallow);
  reading.temperature_c = temperature;
  reading.rise_c = known && around.waterC !== null ? temperature - around.waterC : null;
  reading.rate_c_per_min = known ? pan.rateCPerMin : null;
  reading.finish_in_s = finish?.seconds ?? null;
  reading.finish_low_s = finish?.low ?? null;
  reading.finish_high_s = finish?.high ?? null;
  reading.top_up_in_s = timeToDepth(look, design.minDepthMm)?.seconds ?? null;
  reading.probe = probe;
  reading.stage = stageOf(pan, setting, reading, nearLeadS);
  return {
    reading,
    finish,
    shallow,
    litresShare: look.litresShare,
  };
}

/** How strong a pan is believed to be at t (ms), °Bx: as `readPan` says it, for who asks nothing else. */
export const strengthNow = (pan: PanModel, setting: Setting, t: number): number | null =>
  strengthOf(lookAt(pan, setting, t))?.brix ?? null;

function temperatureOf(pan: PanModel, t: number, periodMs: number, probe: ProbeState | null): number | null {
  if (probe !== null) return probe === 'lost' || probe === 'broken' ? null : temperatureNow(pan.track, t, periodMs);
  return pan.byHand !== null && t - pan.byHand.at <= HAND_READING_LASTS_MS ? pan.byHand.celsius : null;
}

/** A strength known worse than this says nothing, share of it, unless it is thin: °Bx. */
const USEFUL_STRENGTH = 0.5;
const THIN_BRIX = 4;
/** Water known to no better than this (standard deviation of its logarithm) is not known: a drop of sap that ran dry by count. */
const USEFUL_WATER = 10;

/**
 * What is poured together keeps its sugar and its water, so that its strength is known before it boils again, as far as
 * those of the two were. Sap that is filled in cold is as strong as it was typed, which is no news; and a fall that no pour
 * explains may be anything.
 */
export const isByPour = ({ phase, told, strengthTold, pouredAt, disturbedAt, received }: Course): boolean =>
  told && (phase === 'settling' ? pouredAt >= disturbedAt : phase === 'cold' && strengthTold && received);

/** Below a boil no thermometer tells how strong it is, but an instrument does. */
export const isByInstrument = ({ phase, strengthMeasured }: Course): boolean => phase === 'cold' && strengthMeasured;

/** Strength with its middle 80 %, °Bx; the ends of the water's range are the ends of the strength's. */
function strengthOf(look: Look): Strength | null {
  const { pan, setting, now } = look;
  const { course } = pan;
  if (isOff(course) || now === null || look.fell || setting.around.pressureHpa === null) return null;
  if (course.phase !== 'boiling' && !isByPour(course) && !isByInstrument(course)) return null;
  if (!isKnown(look) && !isByInstrument(course)) return null;
  const u = waterOf(now);
  const sigma = (): number => Math.sqrt(variance(now, WATER) + weatherOnWater(course, setting, u));
  if (variance(now, WATER) > USEFUL_WATER ** 2) return null;
  const brix = brixOfWaterPerSugar(u);
  const isUseless = (share: number): boolean => share > USEFUL_STRENGTH && share * brix > THIN_BRIX;
  const most = Math.sqrt(variance(now, WATER) + MOST_BY_WEATHER);
  // Nearly always it is of use whatever the weather did.
  if (isUseless((most * u) / (1 + u)) && isUseless((sigma() * u) / (1 + u))) return null;
  return { brix, u, sigma };
}

/** What the weather may have done to the water point since it was last told, as variance of the logarithm of the water. */
function weatherOnWater({ weatherVariance, phase }: Course, { design, around }: Setting, u: number): number {
  if (weatherVariance <= 0 || phase !== 'boiling' || design.ceilingC !== null) return 0;
  const { slope } = riseOfWater(u, design.shares, around.pressureHpa ?? 1013.25);
  return Math.min(MOST_BY_WEATHER, weatherVariance / (slope * u) ** 2);
}

/** In thin sap no weather says more of the water than the count does. */
const MOST_BY_WEATHER = 0.04;

/** Poured together hot, a pan boils on: it is as hot as what is in it boils. */
function isAtItsBoil(course: Course, { design, around }: Setting, { brix, rise_c: rise }: PanReading): boolean {
  if (!isByPour(course) || brix === null || rise === null) return false;
  const boilsAt = riseOfWater(waterPerSugar(brix), design.shares, around.pressureHpa ?? 1013.25).riseC;
  return rise >= boilsAt - UNDER_BOIL_C;
}

/** So little under its boil a pan still boils, °C: the rise is read, and its strength known, no better. */
const UNDER_BOIL_C = 0.2;

function stageOf({ course, signs }: PanModel, setting: Setting, reading: PanReading, nearLeadS: number): Stage {
  const { around } = setting;
  if (isOff(course)) return 'off';
  if (fallInDoubt(signs, course) !== null) return 'unknown';
  if (course.reachedFinish) return 'finished';
  const { brix, temperature_c: temperature, finish_in_s: left } = reading;
  // What was poured in tells how strong it is, not how hot.
  if (around.waterC === null || (temperature === null && (brix === null || course.phase !== 'boiling')))
    return 'unknown';
  if (course.phase !== 'boiling' && isAtItsBoil(course, setting, reading)) return 'boiling';
  // At a boil's height but not yet seen to stay there: it may boil, or be on its way through.
  if (course.phase === 'cold' && course.riseC !== null && course.riseC >= 0) return 'unknown';
  if (course.phase !== 'boiling') return signs.lifted === null ? 'warming' : 'unknown';
  if (brix === null || brix < THICKENING_BRIX) return 'boiling';
  return left !== null && left <= nearLeadS ? 'near-finish' : 'thickening';
}
