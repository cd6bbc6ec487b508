// What the screen asks to see, forgets of what was learnt, or puts by of a plan: commands that move nothing of a boil.
import { z } from 'zod';
import { EXPLAINED } from '../core/boil/explanation.ts';
import { markSchema } from './entry-schemas.ts';
import { planSchema } from './plan-schema.ts';

const ref = z.string().min(1).max(100);
const view = z.enum(['live', 'replay']);

/** A plan as a screen has it in its form, which alone reads it: texts as they were typed, with the units that they are in. */
const planSheet = z.strictObject({ draft: z.looseObject({}), units: z.looseObject({}) });

/** What is typed into the plan, and the plan that was kept beside it; null for none. */
export type PlanPutBy = Record<'typed' | 'kept', z.infer<typeof planSheet> | null>;

/** Each is answered from what is known already. */
export const lookCommands = [
  /** The setup of the last boil, or null; data: Setup | null */
  z.strictObject({ ref, last_setup: z.literal(true) }),
  /** data: BoilListing[] */
  z.strictObject({ ref, boils: z.literal(true) }),
  /** What earlier boils taught, each name once, as its newest boil has it; data: LearntListing[] */
  z.strictObject({ ref, learnt: z.literal(true) }),
  /** What any boil so far taught under this name is not used any more. */
  z.strictObject({ ref, forget: z.strictObject({ name: z.string().min(1).max(500) }) }),
  /** What a boil would give and take; data: PlanView */
  z.strictObject({ ref, plan: planSchema }),
  /** What is left of the running boil's plan; data: PlanView, or null where it has none. */
  z.strictObject({ ref, plan_now: z.literal(true) }),
  /** The plan as it was last put by, over a restart, too; data: PlanPutBy */
  z.strictObject({ ref, plan_put_by: z.literal(true) }),
  /** Puts by what is named; null puts it away, and what is left out stays as it was. */
  z.strictObject({
    ref,
    put_plan_by: z.strictObject({ typed: planSheet.nullable().optional(), kept: planSheet.nullable().optional() }),
  }),
  /** What is behind a number of a pan, or of the water point (pan null), now; data: Explanation. */
  z.strictObject({
    ref,
    explain: z.strictObject({ view, pan: z.string().nullable(), what: z.enum(EXPLAINED) }),
  }),
  /** What water boils at by the height of a place alone, before any boil there; data: WaterThere | null. */
  z.strictObject({ ref, water_at: z.strictObject({ altitude_m: z.number() }) }),
  /** What there is to ask back before a mark is noted, in a sentence; data: string | null. */
  z.strictObject({ ref, doubt: markSchema }),
  /** A pan's curve between two times; data: Curve. At most `points` buckets, each with its least and greatest. */
  z.strictObject({
    ref,
    curve: z.strictObject({
      view,
      pan: z.string(),
      from: z.number(),
      to: z.number(),
      points: z.number().int().min(10).max(4000),
    }),
  }),
] as const;

const KEYS = [
  'last_setup',
  'boils',
  'learnt',
  'forget',
  'plan',
  'plan_now',
  'plan_put_by',
  'put_plan_by',
  'explain',
  'water_at',
  'doubt',
  'curve',
] as const;
export type LookCommand = z.infer<(typeof lookCommands)[number]>;

/** Whether a command is one of these. */
export const isLookCommand = (command: object): command is LookCommand => KEYS.some((key) => key in command);

/** °C, with the ends of the middle 80 %. */
export interface WaterThere {
  celsius: number;
  low: number;
  high: number;
}
