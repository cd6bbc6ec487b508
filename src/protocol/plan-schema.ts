// Checks what a plan starts from: the sap that there is, and the pans and burners for it.
import { z } from 'zod';
import { finishSchema, panSchema, sapSchema } from './header-schema.ts';
import { problemSentence } from './problem-sentence.ts';

export const planSchema = z.looseObject({
  site: z.looseObject({ altitude_m: z.number().min(-500).max(9000).optional() }).optional(),
  sap: sapSchema.optional(),
  litres: z.number().gt(0).max(1_000_000),
  brix: z.number().gt(0).max(60).optional(),
  celsius: z.number().min(0).max(100).optional(),
  finish: finishSchema.optional(),
  pans: z.array(panSchema).min(1).max(100),
  /** When the fire is to be lit, ISO 8601. */
  start: z.iso
    .datetime({ offset: true, local: true, error: 'must be a date and time like "2027-04-18T07:30:00-07:00"' })
    .optional(),
});
export type PlanRequest = z.infer<typeof planSchema>;

/** What the value says, else a sentence without a full stop that names the field. */
export function checkPlan(value: unknown): { ok: true; plan: PlanRequest } | { ok: false; why: string } {
  const result = planSchema.safeParse(value);
  if (result.success) return { ok: true, plan: result.data };
  return { ok: false, why: problemSentence(result.error, value, 'the plan') };
}
