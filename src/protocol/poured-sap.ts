// How much sap is noted as poured in, as the plan that is under way and the screen count it, and the notebook too.
import { counts, poursInto } from '../core/boil/mark-flow.ts';
import type { PanSetup, Sap } from '../core/boil/entries.ts';
import { sapKey } from '../core/boil/sap-key.ts';
import type { BoilView } from '../core/boil/view.ts';
import { litresAtDepth } from '../core/physics/vessel.ts';

type Noted = BoilView['marks'][number];

/**
 * The pans that boil a plan's sap: another kind in another pan is no part of it. All of them where the plan names no sap,
 * or no pan has it any more: then somebody changed it.
 */
export function pansOfPlan(pans: readonly PanSetup[], planned: Sap | undefined): readonly PanSetup[] {
  const own = planned === undefined ? [] : pans.filter(({ sap }) => sapKey(sap) === sapKey(planned));
  return own.length === 0 ? pans : own;
}

/**
 * Sap of a plan that is noted as poured into the pans of a boil, litres; what was taken back, or is not believed, does not
 * count. A depth that is the first thing said of a pan tells what had been filled in.
 */
export function pouredLitres(marks: readonly Noted[], pans: readonly PanSetup[], planned: Sap | undefined): number {
  const own = pansOfPlan(pans, planned);
  // A pan that was taken away since boiled what was planned, for all that is known.
  const others = pans.filter((pan) => !own.includes(pan));
  const standing = marks.filter(counts);
  const toppedUp = standing.reduce((sum, { mark }) => {
    const isCounted = mark.kind === 'top-up' && !others.some(({ id }) => id === mark.pan);
    return sum + (isCounted ? (mark.litres ?? 0) : 0);
  }, 0);
  return own.reduce((sum, pan) => sum + filledLitres(standing, pan), toppedUp);
}

function filledLitres(standing: readonly Noted[], { id, role, vessel }: PanSetup): number {
  const told = standing.filter((each) => tellsVolume(each, id)).sort((one, other) => one.at - other.at);
  const first = told[0]?.mark;
  if (first?.kind !== 'depth' || role === 'reference' || vessel === undefined) return 0;
  return litresAtDepth(vessel, first.mm) ?? 0;
}

function tellsVolume({ mark }: Noted, pan: string): boolean {
  return poursInto(mark, pan) || (mark.kind === 'depth' && mark.pan === pan);
}
