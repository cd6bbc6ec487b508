// What would help a pan: the mark that narrows its forecast most, a smaller pot, and how much may be poured in at once.
import { type EndsShallow, endsShallow, roomLitres } from '../pan/batch.ts';
import { type AskedMark, bestMark, type Trial } from '../pan/best-mark.ts';
import { WATER } from '../pan/baseline.ts';
import { type Look, lookAt } from '../pan/forecast.ts';
import { learnFrom, meanOf, sigmaOf, type Sum } from '../pan/joint-normal.ts';
import { settingOf } from './settings.ts';
import type { BoilState } from './state.ts';
import { baseOf } from './surroundings.ts';

export interface Advice {
  pan: string;
  /** The mark that would narrow its forecast most; null while that is narrow enough, or no mark would. */
  ask: AskedMark | null;
  shallow: EndsShallow | null;
  /** Litres of cold sap at once, so that it soon boils again. */
  roomLitres: number | null;
}

export function adviceOn(state: BoilState, pan: string, t: number): Advice {
  const look = lookAt(state.pans[pan]!, settingOf(state, pan), t);
  const { waterC } = look.setting.around;
  const ask = waterC === null ? null : bestMark(look, trialsFor(state, pan, look));
  return { pan, ask, shallow: endsShallow(look), roomLitres: roomLitres(look) };
}

/** A stick in a boiling pan, and litres that somebody remembers, share (common practice). */
const VOLUME_SHARE = 0.08;
/** An instrument in a hot sample, °Bx: see physics/instruments.ts, and the sample's own error. */
const DENSITY_SIGMA_BRIX = 0.6;
/** A probe in boiling water, °C; a barometer's 0.7 hPa at 0.0277 °C/hPa. */
const CHECK_SIGMA_C = 0.08;
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
