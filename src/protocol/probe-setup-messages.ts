// What host and screen say to each other of setting probes up: how they stand, what a check shows, what is kept of it.
import { z } from 'zod';
import type { RefusedLine } from '../core/boil/refused-lines.ts';
import type { Sensor } from '../core/boil/entries.ts';
import { airHpa } from './entry-schemas.ts';
import { formatSchema, sensorSchema } from './header-schema.ts';

const ref = z.string().min(1).max(100);
const path = z.string().min(1).max(4096);
const channel = z.string().min(1).max(200);

/** What is known of the place, so that the water point can be told; both may be left out. */
export const placeSchema = z.strictObject({
  altitude_m: z.number().min(-500).max(8000).optional(),
  pressure: z.strictObject({ hpa: airHpa, at: z.enum(['station', 'altimeter', 'sea-level']) }).optional(),
});
export type Place = z.infer<typeof placeSchema>;

/** Further from the water point, or from 0 °C, than this a probe is not in boiling water, or in ice water, °C. */
export const NOT_THERE_C = 6;

/** What a probe showed where it is known how warm it was; sigmas are 1 σ. */
const checkSchema = z.strictObject({
  in: z.enum(['boiling', 'ice']),
  shown_c: z.number(),
  sigma_c: z.number().positive(),
  true_c: z.number(),
  true_sigma_c: z.number().positive(),
  /** Wall clock, ISO 8601 */
  at: z.string().max(40),
});
export type ProbeCheck = z.infer<typeof checkSchema>;

const keptSchema = z.strictObject({
  path,
  channel,
  name: z.string().max(80),
  device: z.string().max(500).nullable(),
  /** What its numbers are, where the line does not say it; left out where it does. */
  sensor: sensorSchema.optional(),
  checks: z.array(checkSchema).max(2),
});

/** Commands about probes that are set up, checked and looked after. */
export const probeSetupCommands = [
  /** How these raw lines would be read; data: Proposal */
  z.strictObject({ ref, recognise: z.array(z.string().max(4096)).max(50) }),
  /** What a format given by hand reads in these lines: channels, and the reasons of what it leaves out; data: Tried */
  z.strictObject({
    ref,
    try_format: z.strictObject({ format: formatSchema, lines: z.array(z.string().max(4096)).max(50) }),
  }),
  /** How the channels of a port that is listened to stand now; data: ProbeWatch */
  z.strictObject({ ref, probe_watch: z.strictObject({ path }) }),
  /** What a channel shows in boiling or ice water, refused until it is steady there; nothing is kept; data: ProbeCheck */
  z.strictObject({
    ref,
    probe_check: z.strictObject({ path, channel, in: z.enum(['boiling', 'ice']), place: placeSchema }),
  }),
  /** What would be kept of such checks; data: ProbeError | null */
  z.strictObject({ ref, probe_error: z.array(checkSchema).max(2) }),
  /** Keeps a whole port's probes at once, in place of what was kept of the same channels; data: KeptProbe[] */
  z.strictObject({
    ref,
    probes_keep: z.strictObject({
      baud: z.number().int().positive().nullable(),
      format: formatSchema.nullable(),
      place: placeSchema,
      probes: z.array(keptSchema).min(1).max(32),
    }),
  }),
  /** data: KeptProbes */
  z.strictObject({ ref, probes_kept: z.literal(true) }),
  /** The probes of the next boil and those that were set up, with what is known of them; data: KnownProbe[] */
  z.strictObject({ ref, probes_known: z.literal(true) }),
  /** How well each probe of the boil, or of what is listened to, does; data: ProbeHealth */
  z.strictObject({ ref, probe_health: z.literal(true) }),
] as const;

const KEYS = [
  'recognise',
  'try_format',
  'probe_watch',
  'probe_check',
  'probe_error',
  'probes_keep',
  'probes_kept',
  'probes_known',
  'probe_health',
] as const;
export type ProbeSetupCommand = z.infer<(typeof probeSetupCommands)[number]>;

/** Whether a command is one of these. */
export const isProbeSetupCommand = (command: object): command is ProbeSetupCommand =>
  KEYS.some((key) => key in command);

/** The channels of one port that is listened to. */
export interface ProbeWatch {
  channels: {
    channel: string;
    /** null while it says nothing. */
    celsius: number | null;
    state: 'waiting' | 'rising' | 'falling' | 'restless' | 'steady';
    ratePerMin: number | null;
    /** How much of the minute that is looked at was heard, s. */
    heardS: number;
    /** Over the lowest of the last minute, °C. */
    risenC: number | null;
  }[];
  /** The one that is warmed in the hand; null while none rises or several do. */
  rises: string | null;
  several: string[];
}

/** How much a probe shows too much near the boil, and its standard uncertainty, °C. */
export interface ProbeError {
  tooHighC: number;
  sigmaC: number;
}

export interface KeptProbe {
  path: string;
  device: string | null;
  channel: string;
  name: string;
  baud: number | null;
  sensor?: Sensor | undefined;
  checks: ProbeCheck[];
  /** null while it was never checked. */
  error: ProbeError | null;
}

/** Whether it was set up on the board behind this port: another board may stand on the same path today. */
export function isOnPort(
  one: Pick<KeptProbe, 'device' | 'path'>,
  port: { path?: string | undefined; device?: string | undefined },
): boolean {
  const isTold = one.device !== null && port.device !== undefined;
  return isTold ? one.device === port.device : one.path === port.path;
}

export interface KnownProbe {
  /** As the boil's header has it; null where no boil had it. */
  id: string | null;
  path: string;
  device: string | null;
  channel: string;
  /** By how much its bare number is taken to be too high when the next boil begins, °C; null where nothing is known. */
  tooHighC: number | null;
}

export interface KeptProbes {
  probes: KeptProbe[];
  /** The place that was told last. */
  place: Place;
  /** Why a check in boiling water is due, in a sentence; null where none is. */
  due: string | null;
}

export interface ProbeHealth {
  probes: {
    id: string;
    channel: string;
    port: string;
    pan: string | null;
    /** It hangs in a pot of plain boiling water. */
    isReference: boolean;
    /** 1 σ, °C; null while too little was heard, or it never moved. */
    noiseC: number | null;
    stepC: number | null;
    /** s, by the last dip; null while none was seen. */
    lagS: number | null;
    losses: number;
    lostSeconds: number;
    /** What is known of its error now; null where nothing measured it. */
    error: ProbeError | null;
    /** By which that changed since the check before, °C; null where there is none before. */
    driftC: number | null;
    /** Wall clock of the last check, ISO 8601; null for none. */
    checkedAt: string | null;
    /** Why it cannot be right: stuck, lifted, swapped, put in, leaping, at odds with its neighbour; null for no doubt. */
    doubt: string | null;
  }[];
  /** Pans with more than one probe: what the pan is read by, by how much they differ, and which are at odds. */
  together: { pan: string; meanC: number; apartC: number; odd: string[]; probes: string[] }[];
  /** Lines in which something could not be read: how many for each reason, and the last as they came, the newest last. */
  refused: { port: string; reasons: { reason: string; count: number }[]; last: RefusedLine[] }[];
}

/** Line by line, in their order. */
export interface Tried {
  lines: {
    text: string;
    readings: { channel: string; value: number | null; unit: string | null }[];
    rejected: string[];
  }[];
}
