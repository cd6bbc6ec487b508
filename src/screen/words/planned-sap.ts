// How much of the planned sap is still to be poured in, which decides what is worth saying of a pan's end.
import { pansOfPlan, pouredLitres } from '../../protocol/poured-sap.ts';
import type { PlanRequest } from '../../protocol/plan-schema.ts';
import type { Advice, Now } from '../client/types.ts';

/** Less than this share of a plan is a last jug that nobody waits for (judgement). */
const LAST_SHARE = 0.05;

/**
 * Litres of the plan that are not noted as poured in yet, as this pan may await them; 0 where nothing was planned, hardly
 * anything is left, or the pan boils another sap.
 */
export function sapToCome({ header, marks }: Pick<Now, 'header' | 'marks'>, pan: string | null): number {
  const { litres, sap } = (header as { plan?: Partial<PlanRequest> } | null)?.plan ?? {};
  if (typeof litres !== 'number') return 0;
  const pans = header?.pans ?? [];
  if (!pansOfPlan(pans, sap).some(({ id }) => id === pan)) return 0;
  const left = litres - pouredLitres(marks, pans, sap);
  return left < LAST_SHARE * litres ? 0 : left;
}

/** What is said of a pan that will end too shallow; null while the sap that is still to come would fill it. */
export function shallowThen(now: Now, advice: Advice | null): Advice['shallow'] {
  const shallow = advice?.shallow ?? null;
  return advice === null || shallow === null || shallow.moreSapLitres <= sapToCome(now, advice.pan) ? null : shallow;
}

/** What is in the pan now cannot be finished there: a time of its finish is that of what is in it alone. */
export const isTooLittle = ({ advice }: Pick<Now, 'advice'>, pan: string | null): boolean =>
  advice.some((one) => one.pan === pan && one.tooLittle);
