// What is believed of a pan before anything was seen of it: usual contents, the burner's nominal heat, a usual probe.
import { litresAtDepth, surfaceM2 } from '../../physics/vessel.ts';
import { boiledOffKgPerS } from '../../physics/heat.ts';
import type { Steam } from '../burner.ts';
import type { PanDesign } from '../setup.ts';
import { STILL_KG_PER_M2_S } from '../still-surface.ts';
import type { Base } from './base.ts';
import {
  addVariance,
  type Belief,
  FIRE,
  LAG,
  LEVEL,
  OFFSET,
  SAP,
  setAlone,
  SIZE,
  SUGAR,
  TYPED,
  WANDER,
  WATER,
  waterOf,
} from './belief.ts';
import { massOfLitres } from './liquid.ts';
import { massShareOf } from './mix.ts';

/** Share that a burner's nominal power misses by: efficiencies of 25–60 % are seen. */
const NOMINAL_SHARE = 0.35;
/** Where nobody said the power: an open surface boils 25 kW/m² away (trade: a gallon a square foot and hour), a pot without a known size 2 kW. */
const WATTS_PER_M2 = 25_500;
const UNKNOWN_WATTS = 3000;
const UNKNOWN_M2 = 0.1;
const SURFACE_SHARE = 0.6;
const UNKNOWN_SHARE = 1;
/** Below a boil: Carrier's equation far above its range (tables of open tanks are 0–40 % over), and wind that nobody knows. */
const STILL_SHARE = 0.4;
/** Contents that nobody said: a pot half full, or 12 L, to a factor of two; sap as it runs, or anything that was boiled before. */
const USUAL_DEPTH_MM = 110;
const USUAL_LITRES = 12;
const CONTENTS_SHARE = 0.7;
const USUAL_U = 35;
/** Standard deviation of its logarithm. */
const USUAL_U_SHARE = 0.8;
/** Probes are behind the liquid by 2–20 s; most by so much (response to 90 % in water 0.6–10 s, and mounting). */
const USUAL_LAG_S = 7;
const LAG_SIGMA_S = 4;

/** What a rise wanders by before the probe is known, °C. */
const USUAL_WANDER_C = 0.045;

/** Everything unknown but the pan's own setup. */
export function startBelief(design: PanDesign, base: Base, swing: number): Belief {
  const belief: Belief = { x: new Array<number>(SIZE).fill(0), p: new Array<number>(SIZE * SIZE).fill(0) };
  supposeContents(belief, design);
  supposeSteam(belief, steamBefore(design), swing);
  setAlone(belief, OFFSET, 0, base.offsetVariance);
  setAlone(belief, SAP, base.sapShare, base.sapVariance);
  addVariance(belief, OFFSET, SAP, base.covariance);
  setAlone(belief, LAG, USUAL_LAG_S, LAG_SIGMA_S ** 2);
  setAlone(belief, TYPED, 0, 1);
  setAlone(belief, WANDER, 0, USUAL_WANDER_C ** 2);
  return belief;
}

/** The steam is as supposed, whatever was believed of it; `swing` is how the fire varies about it (1 σ, a share). */
export function supposeSteam(belief: Belief, steam: Steam, swing: number): void {
  setAlone(belief, LEVEL, steam.lnKgPerS, steam.share ** 2);
  setAlone(belief, FIRE, 0, swing ** 2);
}

/** Nobody said what is in the pan: a usual mass, and sap as it runs or what was boiled before. */
function supposeContents(belief: Belief, design: PanDesign): void {
  const litres = design.vessel === null ? null : litresAtDepth(design.vessel, USUAL_DEPTH_MM);
  const mass = massOfLitres(litres ?? USUAL_LITRES, 100 / (1 + USUAL_U));
  suppose(belief, mass, CONTENTS_SHARE, USUAL_U, USUAL_U_SHARE);
}

/** Water per sugar is something else than was thought; the mass stays as well known as it was. */
export function supposeWater(belief: Belief, u: number, share: number): void {
  const mass = Math.exp(belief.x[SUGAR]!) * (1 + waterOf(belief));
  suppose(belief, mass, massShareOf(belief), u, share);
}

/** Mass and water per sugar are known apart from each other; the sugar follows from the two. */
function suppose(belief: Belief, massKg: number, massShare: number, u: number, share: number): void {
  const part = u / (1 + u);
  setAlone(belief, WATER, Math.log(u), share * share);
  setAlone(belief, SUGAR, Math.log(massKg / (1 + u)), massShare ** 2 + (part * share) ** 2);
  addVariance(belief, SUGAR, WATER, -part * share * share);
}

/** What is believed of the steam at full flame before anything of this boil was seen: as earlier boils taught, or as usual. */
export const steamBefore = (design: PanDesign): Steam => design.learntSteam ?? usualSteam(design);

/** What is usual for such a fire and pan, whatever earlier boils taught. */
export function usualSteam(design: PanDesign): Steam {
  const { kgPerS, share } = usualPower(design);
  return { lnKgPerS: Math.log(kgPerS), share };
}

/** Whether a burner's power was changed by more than such a figure misses by anyhow. */
export function isOtherBurner(before: PanDesign, after: PanDesign): boolean {
  if (before.usefulPowerW === after.usefulPowerW) return false;
  return Math.abs(usualSteam(after).lnKgPerS - usualSteam(before).lnKgPerS) > NOMINAL_SHARE;
}

/** Water that boils away at full flame, kg/s, and the share to which that is known. */
function usualPower(design: PanDesign): { kgPerS: number; share: number } {
  if (design.ceilingC !== null && design.vessel === null)
    return { kgPerS: UNKNOWN_M2 * STILL_KG_PER_M2_S, share: UNKNOWN_SHARE };
  const perWatt = boiledOffKgPerS(1, 100)!;
  if (design.ceilingC !== null && design.vessel !== null)
    return { kgPerS: surfaceM2(design.vessel, USUAL_DEPTH_MM) * STILL_KG_PER_M2_S, share: STILL_SHARE };
  if (design.usefulPowerW !== null && design.usefulPowerW > 0)
    return { kgPerS: design.usefulPowerW * perWatt, share: NOMINAL_SHARE };
  if (design.vessel === null) return { kgPerS: UNKNOWN_WATTS * perWatt, share: UNKNOWN_SHARE };
  return { kgPerS: surfaceM2(design.vessel, USUAL_DEPTH_MM) * WATTS_PER_M2 * perWatt, share: SURFACE_SHARE };
}
