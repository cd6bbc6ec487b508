// The shapes of what a person notes and answers, as recording.md lists them; unknown fields are kept.
import { z } from 'zod';
import { AIR_HPA } from '../core/quantities/units.ts';
import { DAY_MS } from '../core/quantities/time.ts';

const pan = z.string().min(1).max(200);
const probe = z.string().min(1).max(200);
const text = z.string().max(10_000);

// Ranges are wide: they keep out what cannot be a pan of sap, and leave judging to the model.
const litres = z.number().min(0).max(100_000);
const brix = z.number().min(0).max(100);
const celsius = z.number().min(-100).max(1000);
const oneDaySeconds = 86_400;

/** The air's pressure, hPa. */
export const airHpa = z.number().min(AIR_HPA.least).max(AIR_HPA.greatest);

const markBase = {
  id: z.string().min(1).max(200).optional(),
  /** ms since `started`; below 0 for what was done before the boil was started. */
  happened: z
    .number()
    .min(-400 * DAY_MS)
    .max(400 * DAY_MS)
    .optional(),
  // Another program's field of that name is no reason to lose its mark.
  sure: z.boolean().optional().catch(undefined),
  corrects: z.string().optional().catch(undefined),
};

function mark<const Kind extends string, Fields extends z.core.$ZodLooseShape>(kind: Kind, fields: Fields) {
  return z.looseObject({ kind: z.literal(kind), ...markBase, ...fields });
}

/** Which raising of an alarm a note is about: `raised` is its t. */
const aboutAlarm = z.looseObject({
  alarm: z.string().min(1).max(100),
  pan: pan.nullable().default(null),
  port: z.string().optional(),
  raised: z.number().int().nonnegative(),
});

const markSchemas = [
  mark('top-up', { pan, litres: litres.optional(), brix: brix.optional(), celsius: celsius.optional() }),
  mark('transfer', { from: pan, to: pan, litres: litres.optional(), all: z.boolean().optional() }),
  mark('draw-off', { pan, litres: litres.optional(), all: z.boolean().optional(), brix: brix.optional() }),
  mark('flame', { pan, level: z.number().min(0).max(1) }),
  mark('pressure', {
    hpa: airHpa,
    at: z.enum(['station', 'altimeter', 'sea-level']).optional(),
    outdoor_celsius: z.number().min(-80).max(60).optional(),
  }),
  mark('water-check', { probe: probe.optional(), celsius }),
  mark('density', {
    pan,
    brix: brix.optional(),
    baume: z.number().min(-10).max(75).optional(),
    sg: z.number().min(0.5).max(2).optional(),
    celsius: celsius.optional(),
    instrument: z.enum(['hydrometer', 'refractometer']).optional(),
    reference_celsius: z.number().min(0).max(100).optional(),
    compensated: z.boolean().optional(),
  }),
  mark('depth', { pan, mm: z.number().min(0).max(10_000) }),
  mark('reading', { pan, celsius }),
  mark('move-probe', { probe, pan: pan.nullable() }),
  mark('fuel', { pan, kg: z.number().min(0).max(10_000) }),
  mark('no-top-up', { pan }),
  mark('remind', {
    text,
    seconds: z
      .number()
      .min(0)
      .max(30 * oneDaySeconds),
  }),
  // Another program's field of that name is no reason to lose its note.
  mark('note', {
    text,
    pan: pan.optional(),
    about: aboutAlarm.optional().catch(undefined),
    no_use: z.boolean().optional().catch(undefined),
  }),
  z.looseObject({ kind: z.literal('withdraw'), ...markBase, id: z.string().min(1).max(200) }),
] as const;

export const markSchema = z.discriminatedUnion('kind', markSchemas, {
  error: 'must be a mark of a known kind',
});

/** Every kind of mark that this program knows. */
export const markKinds: ReadonlySet<string> = new Set(markSchemas.map((schema) => schema.shape.kind.value));

// An alarm of a port or of the whole program has no pan.
const alarmOfPan = {
  pan: pan.nullable().default(null),
  alarm: z.string().min(1).max(100),
  port: z.string().optional(),
};

// Another program's field of that name is no reason to lose its answer.
const by = z.string().max(100).optional().catch(undefined);

/** What a person did with an alarm. */
export const answerSchema = z.union(
  [
    z.looseObject({ acknowledge: z.looseObject(alarmOfPan), by }),
    z.looseObject({
      silence: z.looseObject({ seconds: z.number().min(0).max(oneDaySeconds) }),
      by,
    }),
    z.looseObject({
      put_aside: z.looseObject({
        ...alarmOfPan,
        seconds: z.number().min(0).max(oneDaySeconds),
        reason: z.string().max(1000),
      }),
    }),
  ],
  {
    error:
      'must be {"acknowledge":{"pan","alarm"}}, {"silence":{"seconds"}} or {"put_aside":{"pan","alarm","seconds","reason"}}',
  },
);

/** What the program called at the time. */
export const calledSchema = z.looseObject({
  pan: pan.nullable(),
  port: z.string().optional(),
  alarm: z.enum([
    'near-finish',
    'finish',
    'past-finish',
    'scorch-risk',
    'low-level',
    'boil-lost',
    'probe-lost',
    'probe-suspect',
    'port-lost',
    'fuel-low',
    'reminder',
    'not-recording',
    'no-sound',
    'power-low',
  ]),
  event: z.enum(['raised', 'escalated', 'cleared', 'acknowledged', 'put-aside', 'returned']),
  priority: z.enum(['low', 'medium', 'high']),
  why: z.string().max(10_000),
});
