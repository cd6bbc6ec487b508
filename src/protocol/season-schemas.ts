// Checks what a person writes down beside the boils: collected sap and the page of a boil.
import { z } from 'zod';
import type { BoilPage, Collection } from '../core/season/records.ts';
import { sapSchema } from './header-schema.ts';

const text = z.string().max(10_000);
const name = z.string().min(1).max(200);
const amount = z.number().nonnegative().max(1_000_000);
const brix = z.number().min(0).max(90);
const day = z.iso.date();

export const collectionSchema = z.strictObject({
  id: name,
  day,
  litres: z.number().positive().max(100_000),
  brix: z.number().min(0).max(20).optional(),
  sap: sapSchema.optional(),
  trees: name.optional(),
  stored: name.optional(),
  store_celsius: z.number().min(-40).max(60).optional(),
  boil: name.optional(),
  spoilt: z.boolean().optional(),
  note: text.optional(),
}) satisfies z.ZodType<Collection>;

export const boilPageSchema = z.strictObject({
  name: name.optional(),
  sap: z.strictObject({ litres: amount.optional(), brix: brix.optional() }).optional(),
  syrup: z.strictObject({ litres: amount.optional(), kg: amount.optional(), brix: brix.optional() }).optional(),
  lost_kg: amount.optional(),
  jars: z
    .array(
      z.strictObject({
        litres: z.number().positive().max(1000),
        count: z.number().int().nonnegative().max(100_000),
        lot: name.optional(),
        filled: day.optional(),
      }),
    )
    .max(50)
    .optional(),
  fuel: z
    .array(
      z.strictObject({
        kind: z.enum(['propane', 'wood', 'electric', 'other']),
        kg: amount.optional(),
        before_kg: amount.optional(),
        after_kg: amount.optional(),
        cords: amount.optional(),
        kwh: amount.optional(),
        price: amount.optional(),
      }),
    )
    .max(20)
    .optional(),
  other_costs: amount.optional(),
  taste: text.optional(),
  colour: text.optional(),
  next_time: text.optional(),
  notes: text.optional(),
  steps: z.record(name, z.iso.datetime({ offset: true })).optional(),
  no_use: z
    .array(
      z.strictObject({
        alarm: name,
        pan: z.string().nullable(),
        port: z.string().nullable(),
        raised: z.number().int().nonnegative(),
      }),
    )
    .max(1000)
    .optional(),
  hidden: z.boolean().optional(),
}) satisfies z.ZodType<BoilPage>;
