// A pan as the model needs it: the header's fields with their defaults filled in.
import type { Heat, Learnt, PanSetup, SugarShares, Vessel } from '../boil/entries.ts';
import { usualEfficiency } from '../physics/fuel.ts';
import { sugarShares } from '../physics/sugar-shares.ts';
import { strengthFromRise } from '../physics/sugar-solution.ts';
import { burnerName, type Steam } from './burner.ts';

/** Common practice: least depth over live heat, mm, unless the header says otherwise. */
const LEAST_DEPTH_MM = 15;

/** Strength at which thick syrup is taken to burn on live heat, °Bx: well over any finish, below where published rises part. */
const SCORCH_BRIX = 75;

/** Beyond this strength published rises part, so no thermometer tells it: a finish beyond it counts as this one, °Bx. */
const MOST_BRIX = 80;

export interface PanDesign {
  id: string;
  name: string;
  role: 'syrup' | 'reference';
  shares: SugarShares;
  /** null while it is not known. */
  vessel: Vessel | null;
  minDepthMm: number;
  /** A plan lights it only once the others are poured into it. */
  forEnd: boolean;
  heatKind: Heat['kind'];
  /** Heat into the pan at full flame, W; null while not known. */
  usefulPowerW: number | null;
  /** What earlier boils let expect of its steam at full flame; null where none taught it. */
  learntSteam: Steam | null;
  /** Finish as a strength; where it was given as a rise, that rise's strength at sea level. */
  finishBrix: number;
  /** Finish as a rise over water, °C, where it was given so. */
  finishRiseC: number | null;
  scorchBrix: number;
  ceilingC: number | null;
}

/**
 * Fills the defaults in; a finish given as a rise becomes the strength of this sap at that rise at sea level. `learnt` is
 * what earlier boils taught.
 */
export function panDesign(setup: PanSetup, learnt: Learnt | null = null): PanDesign {
  const sap = setup.sap ?? 'maple';
  const shares = sugarShares(sap);
  const finishBrix = finishStrength(setup, shares, sap === 'maple' ? 66.9 : 67);
  return {
    id: setup.id,
    name: setup.name ?? setup.id,
    role: setup.role ?? 'syrup',
    shares,
    vessel: setup.vessel ?? null,
    minDepthMm: setup.min_depth_mm ?? LEAST_DEPTH_MM,
    forEnd: setup.for_end === true,
    heatKind: setup.heat?.kind ?? 'other',
    usefulPowerW:
      setup.heat?.power_w === undefined
        ? null
        : setup.heat.power_w * usualEfficiency(setup.heat.kind, setup.vessel?.shape === 'rectangular'),
    learntSteam: learntSteam(setup, learnt),
    finishBrix,
    finishRiseC: setup.finish !== undefined && 'rise_c' in setup.finish ? setup.finish.rise_c : null,
    scorchBrix: Math.min(79, Math.max(SCORCH_BRIX, finishBrix + 4)),
    ceilingC: setup.finish?.ceiling_c ?? null,
  };
}

/** A share that is nonsense in a recording that somebody wrote is taken for nothing learnt. */
function learntSteam(setup: PanSetup, learnt: Learnt | null): Steam | null {
  const name = learnt === null ? null : burnerName(setup);
  const place = learnt === null || name === null ? -1 : learnt.names.indexOf(name);
  const lnKgPerS = learnt?.mean[place];
  const share = Math.sqrt(learnt?.covariance[place]?.[place] ?? 0);
  if (lnKgPerS === undefined || !(share > 0) || Math.abs(lnKgPerS) > MOST_LN_STEAM) return null;
  return { lnKgPerS, share: Math.min(1, share) };
}

/** From 0.03 to 30 000 L an hour. */
const MOST_LN_STEAM = 12;

function finishStrength(setup: PanSetup, shares: SugarShares, otherwise: number): number {
  if (setup.finish === undefined) return otherwise;
  if ('brix' in setup.finish) return Math.min(MOST_BRIX, setup.finish.brix);
  return strengthFromRise(setup.finish.rise_c, shares, 1013.25) ?? MOST_BRIX;
}

/** One sentence where a finish was set that no thermometer can tell, with what is done instead; else null. */
export function finishBeyondScale({ id, name, sap, finish }: PanSetup): string | null {
  if (finish === undefined) return null;
  const isBeyond =
    'brix' in finish
      ? finish.brix > MOST_BRIX
      : strengthFromRise(finish.rise_c, sugarShares(sap ?? 'maple'), 1013.25) === null;
  if (!isBeyond) return null;
  const asked = 'brix' in finish ? `${finish.brix} °Bx` : `a rise of ${finish.rise_c} °C`;
  return `${name ?? id}: a finish of ${asked} lies beyond what a thermometer can tell (${MOST_BRIX} °Bx), so the finish is called at ${MOST_BRIX} °Bx and scorch-risk before it; go on from there by your own eyes.`;
}
