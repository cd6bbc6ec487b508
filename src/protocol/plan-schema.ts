// Checks what a plan starts from: the sap that there is, the pans and burners for it, and how long somebody can stay.
import { z } from 'zod';
import type { Plan, PlanInput } from '../core/plan/plan.ts';
import type { UnderWay } from '../core/plan/under-way.ts';
import { finishSchema, panSchema, sapSchema } from './header-schema.ts';
import { airHpa } from './entry-schemas.ts';
import { problemSentence } from './problem-sentence.ts';
import { HOUR_MS } from '../core/quantities/time.ts';

const moment = z.iso.datetime({
  offset: true,
  local: true,
  error: 'must be a date and time like "2027-04-18T07:30:00-07:00"',
});

export const planSchema = z
  .looseObject({
    site: z.looseObject({ altitude_m: z.number().min(-500).max(9000).optional() }).optional(),
    /** Today's, as a pressure mark has it. */
    pressure: z
      .looseObject({
        hpa: airHpa,
        at: z.enum(['station', 'altimeter', 'sea-level']),
        outdoor_celsius: z.number().min(-60).max(60).optional(),
      })
      .optional(),
    sap: sapSchema.optional(),
    litres: z.number().gt(0).max(1_000_000),
    brix: z.number().gt(0).max(60).optional(),
    celsius: z.number().min(0).max(100).optional(),
    finish: finishSchema.optional(),
    pans: z.array(panSchema).min(1).max(100),
    /** When the fire is to be lit, ISO 8601. */
    start: moment.optional(),
    /** When somebody has to leave, ISO 8601; counts from `start`. */
    until: moment.optional(),
  })
  .refine(({ start, until }) => until === undefined || (start !== undefined && Date.parse(until) > Date.parse(start)), {
    path: ['until'],
    error: 'must be later than start, which it needs',
  });
export type PlanRequest = z.infer<typeof planSchema>;

/** The plan of a boil before it, or of the one that runs. */
export interface PlanView {
  plan: Plan;
  /** null where no boil of this plan runs. */
  under_way: UnderWay | null;
}

/** The request as the core takes it. */
export function planInput(request: PlanRequest): PlanInput {
  const { start, until, ...rest } = request;
  if (start === undefined || until === undefined) return rest;
  return { ...rest, stay_hours: (Date.parse(until) - Date.parse(start)) / HOUR_MS };
}

/** What the value says, else a sentence without a full stop that names the field. */
export function checkPlan(value: unknown): { ok: true; plan: PlanRequest } | { ok: false; why: string } {
  const result = planSchema.safeParse(value);
  if (result.success) return { ok: true, plan: result.data };
  return { ok: false, why: problemSentence(result.error, value, 'the plan') };
}
