// How a batch ends in its vessel, and how much cold sap a fire takes at once.
import { depthAtLitres } from '../physics/vessel.ts';
import { brixOfWaterPerSugar, HOT_VOLUME, litresOf, steamForWarming, waterPerSugar } from './filter/liquid.ts';
import { SUGAR, waterOf } from './filter/belief.ts';
import { COLD_C } from './course-time.ts';
import { evaporation, type Look, timeToStrength } from './forecast.ts';

/** A batch that will stand too shallow over live heat when it is done: litres at 20 °C, mm. */
export interface EndsShallow {
  litres: number;
  depthMm: number;
  leastMm: number;
  /** The strength at which it is thick enough to be poured into a smaller pot, °Bx. */
  pourBrix: number;
  /** s until then; 0 from then on, null where nobody can tell. */
  pourInS: number | null;
}

/** Thick enough to be carried, thin enough to boil on: then a small batch goes into a smaller pot, °Bx (trade). */
const INTO_SMALLER_BRIX = 45;
/** Under this strength more sap is likely to follow, and nothing is said of how it ends, °Bx. */
const LIKELY_ALL_IN_BRIX = 10;
/** Contents known worse than this say nothing of the end, share. */
const USEFUL_SHARE = 0.35;

/** Whether this batch ends too shallow for its vessel; null where it does not, or where nobody can tell. */
export function endsShallow(look: Look): EndsShallow | null {
  const { now, setting, litresShare } = look;
  const { vessel, minDepthMm } = setting.design;
  if (now === null || vessel === null || litresShare >= USEFUL_SHARE || !look.heated) return null;
  const brix = brixOfWaterPerSugar(waterOf(now));
  const { finish } = setting.around.limits;
  if (brix < LIKELY_ALL_IN_BRIX || brix >= finish.brix) return null;
  const litres = litresOf(Math.exp(now.x[SUGAR]!), waterPerSugar(finish.brix));
  const depthMm = depthAtLitres(vessel, litres * HOT_VOLUME);
  if (depthMm === null || depthMm >= minDepthMm) return null;
  const pourInS = timeToStrength(look, INTO_SMALLER_BRIX)?.seconds ?? null;
  return { litres, depthMm, leastMm: minDepthMm, pourBrix: INTO_SMALLER_BRIX, pourInS };
}

/** A pan that is back at a boil so soon has not lost it, s (practice). */
const BACK_WITHIN_S = 180;

/** Litres of cold sap after which the pan boils again within BACK_WITHIN_S; null where its fire is not known. */
export function roomLitres(look: Look): number | null {
  const { setting, now } = look;
  const steam = evaporation(look);
  if (now === null || steam === null || steam.sigma > USEFUL_SHARE || steam.kgPerS <= 0) return null;
  const perKg = steamForWarming(setting.sapBrix, COLD_C, setting.around.waterC ?? 100);
  return (steam.kgPerS * BACK_WITHIN_S) / perKg;
}
