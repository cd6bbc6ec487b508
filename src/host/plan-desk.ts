// Plans a boil for the screen, and says of the one that runs what is left of its plan.
import { planBoil } from '../core/plan/plan.ts';
import type { Plan, PlanInput } from '../core/plan/plan.ts';
import { planUnderWay } from '../core/plan/under-way.ts';
import type { Teaching } from '../notebook/contract.ts';
import type { Now } from '../protocol/messages.ts';
import { coldStrength } from '../protocol/planned-strength.ts';
import { checkPlan, planInput } from '../protocol/plan-schema.ts';
import type { PlanRequest, PlanView } from '../protocol/plan-schema.ts';
import { pansOfPlan, pouredLitres } from '../protocol/poured-sap.ts';
import { refused } from './outcome.ts';
import { heatsLearnt, knownHeats } from './plan-heats.ts';
import type { Outcome } from './outcome.ts';

const NO_SYRUP =
  'No syrup of this finish can be made of this sap: the finish must be stronger than the sap, and at most 80 °Bx.';

/** `teachings` are what earlier boils taught, newest first. */
export function planOf(request: PlanRequest, teachings: readonly Teaching[]): Outcome {
  const input = planInput(request);
  const plan = planBoil({ ...input, known_heats: knownHeats(input.pans, teachings) });
  return plan === null ? refused(NO_SYRUP) : { ok: true, data: { plan, under_way: null } satisfies PlanView };
}

type Seen = Pick<Now, 'header' | 'marks' | 'readings' | 'water'>;

/** data: PlanView, or null where no boil runs or the one that runs was not planned. */
export function planOfRunning(now: Seen | null): Outcome {
  const checked = now === null ? null : checkPlan((now.header as { plan?: unknown } | null)?.plan);
  if (now === null || checked === null || !checked.ok) return { ok: true, data: null };
  const asked = planInput(checked.plan);
  const pans = [...pansOfPlan(now.header?.pans ?? [], asked.sap)];
  // With what it was made with, so that it says what it said then.
  const input = { ...asked, pans, known_heats: heatsLearnt(pans, now.header?.learnt) };
  const plan = planBoil(input);
  if (plan === null) return { ok: true, data: null };
  return { ok: true, data: { plan, under_way: underWay(input, plan, now) } satisfies PlanView };
}

function underWay(input: PlanInput, plan: Plan, { header, marks, readings, water }: Seen): PlanView['under_way'] {
  const about = {
    waterC: water.celsius ?? plan.water_celsius,
    finishBrix: plan.finish_brix,
    sapBrix: plan.sap_brix,
  };
  const held = readings
    .filter(({ pan }) => input.pans.some(({ id }) => id === pan))
    .map((reading) => ({ ...reading, brix: reading.brix ?? coldStrength(marks, reading, plan.sap_brix) }));
  return planUnderWay(input, pouredLitres(marks, header?.pans ?? [], input.sap), held, about);
}
