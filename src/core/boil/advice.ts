// What would help a pan: the mark that narrows its forecast most, a smaller pot, and how much may be poured in at once.
import { type AskedMark, bestMark, type Trial } from '../pan/best-mark.ts';
import { CHECK_SIGMA_C, WATER } from '../pan/baseline.ts';
import { waterOf } from '../pan/filter/belief.ts';
import { brixOfWaterPerSugar } from '../pan/filter/liquid.ts';
import { litresRoughly, type Look, lookAt, timeToStrength } from '../pan/forecast.ts';
import { learnFrom, meanOf, sigmaOf, type Sum } from '../pan/joint-normal.ts';
import {
  type EndsShallow,
  endsShallow,
  isMoreThanNoted,
  smallestBatch,
  type SmallestBatch,
  topUpRoom,
} from '../pan/outlook.ts';
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import { fallInDoubt } from '../pan/pan-signs.ts';
import type { PanReading } from '../pan/reading.ts';
import { readAgainAt } from '../probes/hand-due.ts';
import { type SapFrom, sapOfPan } from './sap-strength.ts';
import { settingOf } from './settings.ts';
import type { BoilState } from './state.ts';
import { baseOf } from './surroundings.ts';

/** A batch that will stand too shallow over live heat when it is done, mm. */
export interface Shallow {
  depthMm: number;
  /** The strength at which it goes into a smaller pot, °Bx. */
  pourBrix: number;
  /** s until then; 0 from then on, null where nobody can tell. */
  pourInS: number | null;
  /** Sap of this pan, L at 20 °C, that would make it end at the least depth. */
  moreSapLitres: number;
}

export interface Advice {
  pan: string;
  /** The mark that would narrow its forecast most; null while that is narrow enough, or no mark would. */
  ask: AskedMark | null;
  /** It fell out of thick syrup unexplained: by how much, °C; its strength is not known till somebody tells. null for no such fall. */
  fellC: number | null;
  /** It holds far more sugar than what was noted of it can make. */
  moreThanNoted: boolean;
  /** Litres at 20 °C between which it holds, where one number would say too much, as when most of it was drawn off; null for any other. */
  litresRoughly: { low: number; high: number } | null;
  shallow: Shallow | null;
  /** What is in it now would end under the least depth: it cannot be finished here, whether or not that is told of yet. */
  tooLittle: boolean;
  /** Litres of cold sap at once, so that it soon boils again. */
  roomLitres: number | null;
  /** After how many s of boiling as much has left; absent where that is not known. */
  roomEveryS?: number;
  /** What this vessel can finish at the least, L at 20 °C of syrup and of its sap; null while its size is not known. */
  smallestBatch: (SmallestBatch & { sapFrom: SapFrom }) | null;
  /** When its thermometer is to be read by hand again, ms; null for a pan with a probe or one that was never read. */
  readAgainAt: number | null;
}

/**
 * What would help this pan at t, ms of boil time: the mark that would tell most, whether it will end too shallow, how
 * much may be poured in.
 */
export function adviceOn(state: BoilState, reading: PanReading, t: number): Advice {
  const { pan } = reading;
  const look = lookAt(state.pans[pan]!, settingOf(state, pan), t);
  const { waterC } = look.setting.around;
  const sap = sapOfPan(state, pan);
  const room = topUpRoom(look);
  const [ends, least] = [endsShallow(look, sap.brix), smallestBatch(look, sap.brix)];
  const ask = waterC === null ? null : bestMark(look, trialsFor(state, pan, look));
  return {
    pan,
    ask,
    fellC: fellBy(state, reading),
    moreThanNoted: isMoreThanNoted(look),
    litresRoughly: litresRoughly(look),
    shallow: shallowOf(look, ends),
    tooLittle: ends !== null,
    roomLitres: room?.litres ?? null,
    ...(room !== null && { roomEveryS: room.everyS }),
    smallestBatch: least === null ? null : { ...least, sapFrom: sap.from },
    readAgainAt: readAgainAt(reading, state.pans[pan]!.byHand?.at ?? null),
  };
}

function fellBy(state: BoilState, { pan, temperature_c: now }: PanReading): number | null {
  const { signs, course } = state.pans[pan]!;
  const fell = fallInDoubt(signs, course);
  return fell === null || now === null ? null : Math.max(0, fell.fromC - now);
}

/** Under this strength more sap is likely to follow, unless none came for so long: till then nothing is said of how it ends; °Bx, ms. */
const LIKELY_ALL_IN_BRIX = THICKENING_BRIX;
const LIKELY_ALL_IN_MS = 45 * 60_000;
/** A smaller pot is of use only near the time at which it is needed: earlier nothing is said of it, s (judgement). */
const OF_USE_S = 3600;

function shallowOf(look: Look, ends: EndsShallow | null): Shallow | null {
  const { now, heated, setting, pan, t } = look;
  if (ends === null || now === null || !heated) return null;
  const brix = brixOfWaterPerSugar(waterOf(now));
  if (brix >= setting.around.limits.finish.brix) return null;
  const pourInS = timeToStrength(look, ends.brixToMove)?.seconds ?? null;
  if (pourInS !== null && pourInS > OF_USE_S) return null;
  const moreLikely = brix < LIKELY_ALL_IN_BRIX && t - pan.course.pouredAt < LIKELY_ALL_IN_MS;
  if (moreLikely && pourInS !== 0) return null;
  return { depthMm: ends.depthMm, pourBrix: ends.brixToMove, pourInS, moreSapLitres: ends.moreSapLitres };
}

/** A stick in a boiling pan, and litres that somebody remembers, share (common practice). */
const VOLUME_SHARE = 0.08;
/** An instrument in a hot sample, °Bx: see physics/instruments.ts, and the sample's own error. */
const DENSITY_SIGMA_BRIX = 0.6;
/** A barometer's 0.7 hPa at 0.0277 °C/hPa, °C. */
const PRESSURE_SIGMA_C = 0.02;

/** What a person could measure of this pan as it is set up. */
function trialsFor(state: BoilState, pan: string, look: Look): Trial[] {
  const { design } = look.setting;
  const { course } = look.pan;
  const trials: Trial[] = [{ mark: 'density', sigmaBrix: DENSITY_SIGMA_BRIX }];
  if (design.vessel !== null) trials.push({ mark: 'depth', share: VOLUME_SHARE });
  else if (!course.told && course.phase === 'cold') trials.push({ mark: 'top-up', share: VOLUME_SHARE });
  if (design.ceilingC !== null) return trials;
  if (state.panProbes[pan]!.length > 0) trials.push({ mark: 'water-check', sigmaC: CHECK_SIGMA_C });
  const pressure = pressureTells(state, pan);
  if (pressure !== null) trials.push({ mark: 'pressure', sigmaC: pressure });
  return trials;
}

/** How well a pressure would tell water point and probe together, as if they were measured, °C; null for not at all. */
function pressureTells(state: BoilState, pan: string): number | null {
  const base = baseOf(state, pan);
  const water: Sum = [[WATER, 1]];
  const joint = { ...state.water.joint };
  const before = sigmaOf(joint, base) ** 2;
  learnFrom(joint, water, meanOf(joint, water), PRESSURE_SIGMA_C);
  const after = sigmaOf(joint, base) ** 2;
  return before - after > 1e-9 ? Math.sqrt((before * after) / (before - after)) : null;
}
