// The shape of a recording's header and of a setup that is watched; unknown fields are kept, nothing is filled in.
import { z } from 'zod';
import type { Header } from '../core/boil/entries.ts';
import { refuseBrokenReferences } from './header-references.ts';
import { problemSentence, shown } from './problem-sentence.ts';

const id = z.string().min(1).max(200);
const name = z.string().max(1000);
const leadSeconds = z.number().min(0).max(86_400);
const sizeMm = z.number().min(10).max(20_000);

export const formatSchema = z.discriminatedUnion(
  'kind',
  [
    z.looseObject({ kind: z.literal('pairs') }),
    z
      .looseObject({
        kind: z.literal('columns'),
        separator: z.string().min(1).max(20),
        decimal: z
          .string()
          .regex(/^[.,]$/u, { error: 'must be "." or ","' })
          .optional(),
        channels: z.array(z.string().max(200)).max(1000),
      })
      .refine((format) => (format.decimal ?? '.') !== format.separator, 'has the same separator and decimal sign'),
    z.looseObject({
      kind: z.literal('json'),
      channels: z.record(id, z.string().regex(/^(\/.*)?$/su, { error: 'must be a JSON Pointer, like "/probes/0/c"' })),
    }),
    z.looseObject({ kind: z.literal('pattern'), pattern: z.string().min(1).max(4096) }),
  ],
  { error: 'must be "pairs", "columns", "json" or "pattern"' },
);

export const sensorSchema = z.union(
  [
    z.looseObject({ kind: z.literal('temperature'), unit: z.enum(['C', 'F', 'K']).optional() }),
    z.looseObject({ kind: z.literal('thermocouple'), type: z.enum(['K', 'J', 'T']), cold_junction: id }),
    z.looseObject({ kind: z.literal('rtd'), r0_ohm: z.number().positive() }),
    z.looseObject({ kind: z.literal('ntc'), steinhart_hart: z.tuple([z.number(), z.number(), z.number()]) }),
    z.looseObject({ kind: z.literal('ntc'), r25_ohm: z.number().positive(), beta_k: z.number().positive() }),
  ],
  {
    error:
      'must be a temperature, a thermocouple (type K, J or T and its cold_junction), an rtd (r0_ohm) or an ntc (three steinhart_hart figures, or r25_ohm and beta_k)',
  },
);

const port = z.looseObject({
  id,
  format: formatSchema.optional(),
  path: z.string().min(1).max(4096).optional(),
  baud: z.number().int().min(50).max(10_000_000).optional(),
  /** The board's identity (PortListing): it is found by it when it comes back under another path. */
  device: z.string().min(1).max(500).optional(),
});

export const probeSchema = z.looseObject({
  id,
  port: id,
  channel: z.string().min(1).max(200),
  offset_c: z.number().min(-100).max(100).optional(),
  sensor: sensorSchema.optional(),
});

const SUM_TO_ONE = 'must have shares that sum to 1 (0.99 to 1.01)';
const share = z.number().min(0).max(1.01);
export const sapSchema = z.union(
  [
    z.enum(['maple', 'birch']),
    z
      .looseObject({
        sucrose: share.optional(),
        glucose: share.optional(),
        fructose: share.optional(),
        others: z.number().min(0).max(0.3).optional(),
      })
      .refine(
        ({ sucrose = 0, glucose = 0, fructose = 0 }) => Math.abs(sucrose + glucose + fructose - 1) <= 0.01 + 1e-9,
        SUM_TO_ONE,
      ),
  ],
  { error: 'must be "maple", "birch", or the shares of sucrose, glucose and fructose, which sum to 1' },
);

const knownShapes = ['round', 'rectangular', 'round-sloped', 'measured'];
const RISING = 'must have depths and litres that rise from one row to the next';
const fillTable = z
  .array(z.looseObject({ mm: z.number().min(0).max(20_000), litres: z.number().min(0).max(100_000) }))
  .min(2)
  .max(200)
  .refine(
    (fill) => fill.every((row, i) => i === 0 || (row.mm > fill[i - 1]!.mm && row.litres > fill[i - 1]!.litres)),
    RISING,
  );
const vessel = z.union(
  [
    z.looseObject({ shape: z.literal('round'), diameter_mm: sizeMm, height_mm: sizeMm.optional() }),
    z.looseObject({
      shape: z.literal('rectangular'),
      length_mm: sizeMm,
      width_mm: sizeMm,
      height_mm: sizeMm.optional(),
    }),
    z.looseObject({
      shape: z.literal('round-sloped'),
      bottom_diameter_mm: sizeMm,
      top_diameter_mm: sizeMm,
      height_mm: sizeMm,
    }),
    z.looseObject({ shape: z.literal('measured'), fill: fillTable }),
    // A shape of a later build: its depth is not known here, so it counts as absent.
    z
      .looseObject({ shape: z.string().refine((shape) => !knownShapes.includes(shape)) })
      .transform((): undefined => undefined),
  ],
  {
    error:
      'must be round with diameter_mm, rectangular with length_mm and width_mm, round-sloped with bottom_diameter_mm, top_diameter_mm and height_mm (each 10 to 20000), or measured with fill, a list of rising mm and litres',
  },
);

const ceiling_c = z.number().min(0).max(200).optional();
export const finishSchema = z.union(
  [
    z.looseObject({ brix: z.number().gt(0).lt(100), ceiling_c }),
    z.looseObject({ rise_c: z.number().gt(0).lt(100), ceiling_c }),
  ],
  { error: 'must have brix (more than 0, less than 100) or rise_c (more than 0), and may have ceiling_c beside it' },
);

const settings = z.looseObject({
  near_finish_lead_s: leadSeconds.optional(),
  scorch_lead_s: leadSeconds.optional(),
  low_level_lead_s: leadSeconds.optional(),
  finish_probability: z.number().min(0.05).max(0.95).optional(),
  near_finish_deadband: z.number().min(1).max(5).optional(),
  use_learnt: z.boolean().optional(),
});

export const panSchema = z.looseObject({
  id,
  name: name.optional(),
  role: z.enum(['syrup', 'reference']).optional(),
  sap: sapSchema.optional(),
  probe: z.union([id, z.array(id).max(100)], { error: "must be a probe's id or a list of them" }).optional(),
  vessel: vessel.optional(),
  heat: z
    .looseObject({
      kind: z.enum(['propane', 'wood', 'electric', 'other']),
      power_w: z.number().min(0).max(10_000_000).optional(),
    })
    .optional(),
  min_depth_mm: z.number().min(0).max(5000).optional(),
  for_end: z.boolean().optional(),
  finish: finishSchema.optional(),
  settings: settings.optional(),
});

export const learntSchema = z
  .looseObject({
    names: z.array(z.string().max(500)).max(1000),
    mean: z.array(z.number()).max(1000),
    covariance: z.array(z.array(z.number()).max(1000)).max(1000),
  })
  .refine(
    ({ names, mean, covariance }) =>
      mean.length === names.length &&
      covariance.length === names.length &&
      covariance.every((row) => row.length === names.length),
    'must have a mean and a row and a column of the covariance for each of its names',
  );

const rest = {
  name: name.optional(),
  site: z.looseObject({ name: name.optional(), altitude_m: z.number().min(-500).max(9000).optional() }).optional(),
  probes: z.array(probeSchema).max(1000).optional(),
  pans: z.array(panSchema).max(1000).optional(),
  learnt: learntSchema.optional(),
  settings: settings.optional(),
};

/** Line 1 of a recording. */
export const headerSchema = z
  .looseObject({
    recording: z.literal('panwarden'),
    version: z.literal(1),
    started: z.iso.datetime({
      offset: true,
      error: 'must be a date and time with its offset, like "2027-04-18T07:30:00-07:00"',
    }),
    ports: z.array(port).max(1000).optional(),
    ...rest,
  })
  .superRefine(refuseBrokenReferences);

/** A header without `started`, in which every port says where it is on this machine. */
export const setupSchema = z
  .looseObject({
    ports: z
      .array(port.extend({ path: z.string().min(1).max(4096) }))
      .max(1000)
      .optional(),
    ...rest,
  })
  .superRefine(refuseBrokenReferences);
export type Setup = z.infer<typeof setupSchema>;

/** The header when the value holds together as one, else a sentence without a full stop that names the field. */
export function checkHeader(value: unknown): { ok: true; header: Header } | { ok: false; why: string } {
  const result = headerSchema.safeParse(value);
  if (result.success) return { ok: true, header: result.data };
  return { ok: false, why: laterVersion(value) ?? problemSentence(result.error, value, 'the header') };
}

/** The setup when the value holds together as one, else a sentence without a full stop that names the field. */
export function checkSetup(value: unknown): { ok: true; setup: Setup } | { ok: false; why: string } {
  const result = setupSchema.safeParse(value);
  if (result.success) return { ok: true, setup: result.data };
  return { ok: false, why: problemSentence(result.error, value, 'the setup') };
}

function laterVersion(value: unknown): string | null {
  const { recording, version } = (value ?? {}) as Record<string, unknown>;
  if (recording !== 'panwarden' || typeof version !== 'number' || version <= 1) return null;
  return `version is ${shown(version)}, and this program reads version 1: open it with a newer one`;
}
