// A burner with its pan as one boil knows it from another: what they are called, and what earlier boils let expect of their steam.
import type { Heat, PanSetup, Vessel } from '../boil/entries.ts';

/** Water that boils away at full flame: logarithm of kg/s, and its standard deviation, a share. */
export interface Steam {
  lnKgPerS: number;
  share: number;
}

/** What is expected of a burner in its next boil, and what that rests on. */
export interface ExpectedSteam extends Steam {
  boils: number;
  /** By which share boils differ from one another (1 σ); null from a single boil. */
  spread: number | null;
}

const PREFIX = 'burner ';

/**
 * The name under which boils teach of the same burner: what the pan is called (or its id), its vessel's shape and size,
 * the kind of fire and its nominal power. A pan that is renamed, or gets another vessel or burner, is another one. null
 * for a pot of plain water and for a pan kept below its boil, where no flame decides how much leaves.
 */
export function burnerName({ id, name, role, vessel, heat, finish }: PanSetup): string | null {
  if (role === 'reference' || finish?.ceiling_c !== undefined) return null;
  const called = (name ?? id).trim().toLowerCase().slice(0, LONGEST_NAME);
  return PREFIX + JSON.stringify([called, vesselWords(vessel), heat?.kind ?? 'other', heat?.power_w ?? null]);
}

/** So that a name, however it is written, stays under the 500 characters of a recording. */
const LONGEST_NAME = 60;

/** Whether a learnt name is that of a burner, not of a probe or a sap. */
export const isBurnerName = (name: string): boolean => name.startsWith(PREFIX);

/** The pan that a burner's name tells of, without its vessel; null for a name that nothing of this program wrote. */
export function panOfBurnerName(name: string): PanSetup | null {
  if (!isBurnerName(name)) return null;
  let parts: unknown;
  try {
    parts = JSON.parse(name.slice(PREFIX.length));
  } catch {
    return null;
  }
  const [called, , kind, power] = Array.isArray(parts) ? (parts as unknown[]) : [];
  if (typeof called !== 'string' || typeof kind !== 'string' || !(kind in USUAL_SPREAD)) return null;
  return { id: called, heat: { kind: kind as Heat['kind'], ...(typeof power === 'number' && { power_w: power }) } };
}

function vesselWords(vessel: Vessel | undefined): string {
  if (vessel === undefined) return '';
  const mm = (size: number): string => size.toFixed(0);
  if (vessel.shape === 'round') return `round ${mm(vessel.diameter_mm)}`;
  if (vessel.shape === 'rectangular') return `rectangular ${mm(vessel.length_mm)} x ${mm(vessel.width_mm)}`;
  if (vessel.shape === 'round-sloped')
    return `round-sloped ${mm(vessel.bottom_diameter_mm)} to ${mm(vessel.top_diameter_mm)}, ${mm(vessel.height_mm)}`;
  const top = vessel.fill.at(-1);
  return `measured ${top === undefined ? '' : `${mm(top.mm)} = ${top.litres} L`}`;
}

/** How far the boils of one burner differ before boils have shown it, a share (judgement: valve and wind, wood and its tending). */
const USUAL_SPREAD: Record<Heat['kind'], number> = { electric: 0.08, propane: 0.18, wood: 0.25, other: 0.2 };
/** For so many boils the usual spread counts. */
const USUAL_COUNTS = 4;
/** However alike its boils were, the next may differ by this share. */
const LEAST_SPREAD = 0.06;
/** With each boil since, soot, jets and bottles have changed, a share. */
const AGES_SHARE = 0.04;

/**
 * What to expect next of a burner whose boils, the newest first, had each a steam of their own, known to a share: a model
 * with random effects. `usual` is what is supposed of such a burner before any boil; it fades as boils come, so that few
 * boils leave it nearly as wide. null without a boil.
 */
export function expectedSteam(usual: Steam, heat: Heat['kind'], boils: readonly Steam[]): ExpectedSteam | null {
  if (boils.length === 0) return null;
  const { spread, shown } = spreadOf(heat, boils);
  const freedom = USUAL_COUNTS + boils.length - 1;
  let weights = 1 / usual.share ** 2;
  let sum = weights * usual.lnKgPerS;
  boils.forEach(({ lnKgPerS, share }, ago) => {
    const weight = 1 / (share ** 2 + spread ** 2 + (ago + 1) * AGES_SHARE ** 2);
    weights += weight;
    sum += weight * lnKgPerS;
  });
  return {
    lnKgPerS: sum / weights,
    // Student's t, for how far boils differ is itself only known from so many of them; never less sure than of any burner.
    share: Math.min(usual.share, Math.sqrt(((1 / weights + spread ** 2) * freedom) / (freedom - 2))),
    boils: boils.length,
    spread: shown ? spread : null,
  };
}

/** The scatter of the boils less what each is unsure by, and the usual spread as that of some boils more. */
function spreadOf(heat: Heat['kind'], boils: readonly Steam[]): { spread: number; shown: boolean } {
  const count = boils.length;
  const mean = boils.reduce((total, { lnKgPerS }) => total + lnKgPerS, 0) / count;
  const scatter = boils.reduce((total, { lnKgPerS }) => total + (lnKgPerS - mean) ** 2, 0);
  const unsure = boils.reduce((total, { share }) => total + share ** 2, 0) * (1 - 1 / count);
  const usual = USUAL_COUNTS * USUAL_SPREAD[heat] ** 2;
  const variance = (usual + Math.max(0, scatter - unsure)) / (USUAL_COUNTS + count - 1);
  return { spread: Math.max(LEAST_SPREAD, Math.sqrt(variance)), shown: count > 1 };
}

/** A boil that made a steam no surer than this, a share, taught nothing of it. */
const LEAST_SURE = 0.4;

/**
 * What one boil showed of its steam by itself: the end of its belief, with what it began with taken out (information is
 * the difference of the two). `before` must already be less sure by what a flame may have wandered meanwhile. null where
 * the boil made it hardly surer.
 */
export function ownSteam(before: Steam, after: Steam): Steam | null {
  const information = 1 / after.share ** 2 - 1 / before.share ** 2;
  if (!(information > 1 / LEAST_SURE ** 2)) return null;
  const sum = after.lnKgPerS / after.share ** 2 - before.lnKgPerS / before.share ** 2;
  return { lnKgPerS: sum / information, share: Math.sqrt(1 / information) };
}
