// The plan as the notebook keeps it between two starts: what is typed into its form, and the plan that was kept beside it.
import type { Notebook } from '../notebook/contract.ts';
import type { LookCommand, PlanPutBy } from '../protocol/look-messages.ts';
import { done } from './outcome.ts';
import type { Outcome } from './outcome.ts';

const KEY = 'plan';

const NONE: PlanPutBy = { typed: null, kept: null };

/** What was put by; nothing where nothing was. */
export const planPutBy = (notebook: Pick<Notebook, 'setting'>): PlanPutBy => ({
  ...NONE,
  ...(notebook.setting(KEY) as Partial<PlanPutBy> | null),
});

type Named = Extract<LookCommand, Record<'put_plan_by', unknown>>['put_plan_by'];

/** Puts by what is named; what is left out stays as it was. */
export function putPlanBy(notebook: Pick<Notebook, 'setting' | 'keepSetting'>, { typed, kept }: Named): Outcome {
  const before = planPutBy(notebook);
  notebook.keepSetting(KEY, {
    typed: typed === undefined ? before.typed : typed,
    kept: kept === undefined ? before.kept : kept,
  } satisfies PlanPutBy);
  return done;
}
