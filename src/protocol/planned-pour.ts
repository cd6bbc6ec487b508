// What a pour is taken to be where nobody types it: a pan's filling as the boil's plan has it, and the sap's strength and warmth as the boil takes them.
import type { Header } from '../core/boil/entries.ts';
import { plannedBrix, sapTold } from '../core/boil/sap-strength.ts';
import type { BoilView } from '../core/boil/view.ts';
import { COLD_C } from '../core/pan/course-time.ts';
import { planBoil } from '../core/plan/plan.ts';
import type { PlanInput } from '../core/plan/plan.ts';

/** The plan in a boil's header as far as it is one: a recording may hold anything there. */
function planIn(header: Header): PlanInput | null {
  const { plan } = header as { plan?: Partial<PlanInput> | null };
  return typeof plan?.litres === 'number' && Array.isArray(plan.pans) ? (plan as PlanInput) : null;
}

/** Cold sap that this pan is filled with by the boil's plan before the fire is lit, litres at 20 °C; null where no plan tells it. */
export function plannedFill(header: Header, pan: string): number | null {
  const plan = planIn(header);
  return (plan === null ? null : planBoil(plan))?.pans.find((one) => one.pan === pan)?.fill_litres ?? null;
}

/**
 * What sap that is poured without its strength is taken to have, °Bx: as it was typed last, but in the note with the id
 * `but`, else as planned; null where only the usual would stand.
 */
export function strengthTaken(header: Header, marks: BoilView['marks'], but: string | undefined): number | null {
  const standing = marks.filter(({ mark, withdrawn }) => !withdrawn && (but === undefined || mark.id !== but));
  return standing.flatMap(({ mark }) => sapTold(mark) ?? []).at(-1) ?? plannedBrix(header);
}

/** What poured sap is taken to be warm where nobody says it, °C. */
export const WARMTH_TAKEN_C = COLD_C;
