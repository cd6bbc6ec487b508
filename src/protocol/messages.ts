// What host and screen say to each other: commands one way, snapshots and answers the other.
import { z } from 'zod';
import type { Header } from '../core/boil/entries.ts';
import type { BoilView } from '../core/boil/view.ts';
import type { Ahead } from '../core/pan/ahead.ts';
import type { SapKind } from '../core/physics/sap-kinds.ts';
import { answerSchema, markSchema } from './entry-schemas.ts';
import { setupSchema } from './header-schema.ts';
import { phoneCommands } from './phone-messages.ts';
import { compareCommands } from './compare-messages.ts';
import { lookCommands } from './look-messages.ts';
import { replayCommands, type ReplayNow } from './replay-messages.ts';
import { probeCommands } from './probe-messages.ts';
import { probeSetupCommands } from './probe-setup-messages.ts';
import { seasonCommands } from './season-messages.ts';
import { tuneCommands, type TuningNow } from './tune-messages.ts';

const near_finish_lead_s = z.number().min(60).max(7200);
const scorch_lead_s = z.number().min(60).max(1800);
const low_level_lead_s = z.number().min(60).max(3600);

/** What a person usually wants of one sap; it fills in the form of a new boil, and a boil that runs stays as it is. */
const sapUsual = z.strictObject({
  finish: z
    .union([
      z.strictObject({ brix: z.number().min(10).max(80) }),
      z.strictObject({ rise_c: z.number().min(0.2).max(40) }),
    ])
    .optional(),
  near_finish_lead_s: near_finish_lead_s.optional(),
  scorch_lead_s: scorch_lead_s.optional(),
  low_level_lead_s: low_level_lead_s.optional(),
});
export type SapUsual = z.infer<typeof sapUsual>;

const choices = {
  temperature: z.enum(['C', 'F']),
  volume: z.enum(['litre', 'us-gallon', 'imperial-gallon']),
  length: z.enum(['mm', 'inch']),
  pressure: z.enum(['hpa', 'kpa', 'inhg']),
  mass: z.enum(['kg', 'pound']),
  strength: z.enum(['brix', 'baume', 'sg']),
  power: z.enum(['watt', 'btu-per-hour']),
  /** How times of day are shown, on the screen and on paper: 16:40, or 4:40 pm. */
  clock: z.enum(['24', '12']),
  theme: z.enum(['system', 'light', 'dark', 'contrast']),
  /** "system" for the browser's own, else a catalogue's tag (BCP 47, as "zh-Hant"); an unknown one is shown in English. */
  language: z.string().regex(/^(system|[a-z]{2,3}(-[A-Za-z0-9]{2,8})*)$/),
  loudness: z.enum(['soft', 'middle', 'loud']),
  near_finish_lead_s,
  scorch_lead_s,
  low_level_lead_s,
  /** How likely a pan must have reached its finish before it is called: less is sooner. */
  finish_probability: z.number().min(0.05).max(0.95),
  /** Given whole, like a list. */
  per_sap: z.strictObject({ maple: sapUsual.optional(), birch: sapUsual.optional() }),
  /** Calls are also spoken, after their sound. */
  spoken_calls: z.boolean(),
  /** A quiet tick once a minute while pans are watched. */
  minute_tick: z.boolean(),
  /** The next boil begins with what earlier ones taught. */
  use_learnt: z.boolean(),
  /** Where copies of the notebook go after each boil; empty for the folder beside it. */
  backup_folder: z.string().max(1000),
  /**
   * Who else is told. The command is a program and its arguments, run without a shell; empty for none. It comes from
   * here alone: never from a recording or a setup.
   */
  second_channel: z.strictObject({
    command: z
      .array(
        z
          .string()
          .min(1)
          .max(1000)
          .regex(/^[^\0]*$/),
      )
      .max(20),
  }),
};

/**
 * All settings, with what stands where nobody chose. What an earlier program kept and no screen shows is left out on
 * reading: it would act, and nobody could see or change it.
 */
export const settingsSchema = z.object({
  temperature: choices.temperature.default('C'),
  volume: choices.volume.default('litre'),
  length: choices.length.default('mm'),
  pressure: choices.pressure.default('hpa'),
  mass: choices.mass.default('kg'),
  strength: choices.strength.default('brix'),
  power: choices.power.default('watt'),
  clock: choices.clock.default('24'),
  theme: choices.theme.default('system'),
  language: choices.language.default('system'),
  loudness: choices.loudness.default('loud'),
  near_finish_lead_s: choices.near_finish_lead_s.default(600),
  scorch_lead_s: choices.scorch_lead_s.default(240),
  low_level_lead_s: choices.low_level_lead_s.default(600),
  finish_probability: choices.finish_probability.default(0.5),
  per_sap: choices.per_sap.default({}),
  spoken_calls: choices.spoken_calls.default(false),
  minute_tick: choices.minute_tick.default(false),
  use_learnt: choices.use_learnt.default(true),
  second_channel: choices.second_channel.default({ command: [] }),
  backup_folder: choices.backup_folder.default(''),
});
/** What somebody changes: the rest stays, so nothing is filled in. */
const settingsChange = z.strictObject(choices).partial();
export type Settings = z.infer<typeof settingsSchema>;

const ref = z.string().min(1).max(100);

const pageReport = z.strictObject({
  /** Only `running` can be heard; `none` where there is no audio, or its device went away. */
  audio: z.enum(['running', 'suspended', 'closed', 'none']),
  /** null where the browser does not tell. */
  battery: z
    .strictObject({
      charging: z.boolean(),
      /** 0 to 1 */
      level: z.number().min(0).max(1),
      seconds_left: z.number().nonnegative().nullable(),
    })
    .nullable(),
});
export type PageReport = z.infer<typeof pageReport>;

const called = z.string().min(1).max(80);
const practiceWish = z.strictObject({
  /** Boil seconds a second. */
  speed: z.number().min(1).max(600),
  /** Slower by itself while a call waits, for somebody who learns to answer them. */
  slow_for_calls: z.boolean().optional(),
  /** What the made-up boil and its pots are called, in the language of who asks; English where nothing is said. */
  names: z.strictObject({ boil: called, front: called, middle: called, birch: called }).optional(),
});
export type PracticeWish = z.infer<typeof practiceWish>;

/** One command of the screen; the first six are also what `watch --json` reads on standard input. */
export const commandSchema = z.union([
  z.strictObject({ ref, mark: markSchema }),
  z.strictObject({ ref, answer: answerSchema }),
  z.strictObject({ ref, set: z.record(z.string(), z.unknown()) }),
  z.strictObject({ ref, end: z.literal(true) }),
  /** `lit` is when the fire was lit, ISO 8601 by the host's own clock on the wall where it has no offset; now where absent. */
  z.strictObject({ ref, start: setupSchema, lit: z.iso.datetime({ offset: true, local: true }).optional() }),
  z.strictObject({ ref, practice: practiceWish }),
  z.strictObject({ ref, practice_speed: z.number().min(1).max(600) }),
  z.strictObject({ ref, settings: settingsChange }),
  /** What is usual where the page is read: each kept where nobody has chosen it yet, and else left. */
  z.strictObject({ ref, usual_settings: settingsChange }),
  /** A page's sign of life, about once a second: whether it can sound, and what it knows of the battery. */
  z.strictObject({ ref, page: pageReport }),
  ...lookCommands,
  ...replayCommands,
  ...compareCommands,
  ...tuneCommands,
  ...probeCommands,
  ...probeSetupCommands,
  ...seasonCommands,
  ...phoneCommands,
]);
export type Command = z.infer<typeof commandSchema>;

export interface BoilListing {
  kind: 'boil';
  boil: string;
  name: string;
  started: string;
  seconds: number;
  entries: number;
  running: boolean;
  practice: boolean;
  /** A practice boil that its person wants out of the list; absent for all others. */
  hidden?: true;
}

/** One thing that earlier boils taught and the next one with the same probe, sap or burner begins with. */
export interface LearntListing {
  /** As in Learnt of a header; it is forgotten under this name. */
  name: string;
  about: 'probe' | 'sap' | 'burner';
  /** The probe's id, the sap's key (maple, birch, or the shares "sucrose/glucose/fructose/others"), or the pan's name. */
  of: string;
  /** Probe: how much it shows too much, its offset included, °C. Sap: by which share its rise is more than its sugars' alone. Burner: water that boils away at full flame, kg/h. */
  value: number;
  /** Standard uncertainty (1 σ) when it was taught, in the unit of the value; of a burner for its next boil, as a share. */
  sigma: number;
  /** Of a burner only. */
  burner?: {
    heat: 'propane' | 'wood' | 'electric' | 'other';
    /** Nominal power, W; null where it was not said. */
    power_w: number | null;
    /** Share of that power that leaves as steam. */
    efficiency: number | null;
    boils: number;
    /** By which share its boils differ (1 σ); null from a single boil. */
    spread: number | null;
  };
  boil: string;
  title: string;
  started: string;
}

/** Buckets in order of t; a bucket without a reading is left out, and a gap longer than 60 s has a null between. */
export interface Curve {
  pan: string;
  t: number[];
  low: (number | null)[];
  high: (number | null)[];
  water: (number | null)[];
  /** The temperature of the finish and of the scorch limit at that time's water point. */
  finish: (number | null)[];
  scorch: (number | null)[];
  /** What is expected from now on, whatever stretch was asked for; null where that is not known. */
  ahead: Ahead | null;
}

export type { TuningNow };
export type { Explained, Explanation, From, PanFacts } from '../core/boil/explanation.ts';
export type { Ahead };
export type { SapKind };
export type {
  KeptProbes,
  KnownProbe,
  Place,
  ProbeCheck,
  ProbeError,
  ProbeHealth,
  ProbeWatch,
  Tried,
} from './probe-setup-messages.ts';
export type { LineSpan, Proposal, ProposedLine } from '../core/boil/line-proposal.ts';
export type { PortFormat } from '../core/boil/entries.ts';
export type { HeardPort, MovedPort, PortListing } from './probe-messages.ts';
export type { RaisingShown } from '../core/boil/alarm-history.ts';
export type { WaterThere } from './look-messages.ts';
export type { LookBack } from '../core/boil/look-back.ts';
export type { NextThing } from '../core/boil/next-thing.ts';
export type ProbeView = BoilView['probes'][number];
export type PortView = BoilView['ports'][number];
/** An alarm with its words: what is wrong (why), what it means, what to do. */
export type AlarmView = BoilView['alarms'][number];
/** A pour that was seen by its dip and that nobody noted or said no to. */
export type Pour = BoilView['pours'][number];
export type Advice = BoilView['advice'][number];
export type MarkView = BoilView['marks'][number];

export type ViewMode = 'idle' | 'live' | 'practice' | 'replay';

/** What would put the computer to sleep that watches the pans, as far as its system tells. */
export interface MachineSleep {
  /** What closing the lid does; turned off counts as asleep. */
  lid: 'sleeps' | 'stays-awake' | 'not-known';
  /** What it does when nobody touches it for a while. */
  idle: 'sleeps' | 'not-known';
  /** Something is known to end the watch. */
  warns: boolean;
  /** What a person is told of it, in whole sentences. */
  sentence: string;
}

/** The whole of a view now; sent at most four times a second, and at once when an alarm changes. */
export interface Now extends BoilView {
  kind: 'now';
  view: 'live' | 'replay';
  mode: ViewMode;
  boil: string | null;
  header: Header | null;
  /** ms of boil time and the wall clock at that moment (ISO 8601). */
  t: number;
  clock: string;
  speed: number;
  /** What somebody chose for a practice that goes slower now, while a call waits; else left out. */
  chosenSpeed?: number;
  ended: boolean;
  /** ms of boil time at which a live or practice boil was ended; null while it runs, and of a replay. */
  endedAt: number | null;
  /** ms of boil time at which the program began to watch a boil whose fire was lit before; else left out. */
  watchedFrom?: number;
  /** Of a boil that is over, on a phone only: the syrup that is known to have come of it; null where nobody knows. */
  syrup?: { litres: number; brix: number | null } | null;
  /** Entries of this boil that are on disk; null for a replay. */
  kept: number | null;
  replay: ReplayNow | null;
  /** Of a live boil, once it was looked at; else null or left out. */
  sleep?: MachineSleep | null;
}

export type HostMessage =
  | {
      kind: 'hello';
      version: string;
      folder: string;
      settings: Settings;
      /** The kinds of sap to choose from, in order. */
      saps: readonly SapKind[];
      /** Sent to a phone, over the local network. */
      lan: boolean;
      /** A unit or the clock is nobody's choice yet: the page may say what is usual where it is read. */
      unchosen: boolean;
    }
  | { kind: 'settings'; settings: Settings }
  | Now
  | TuningNow
  | { kind: 'answered'; ref: string | null; ok: true; data?: unknown }
  | { kind: 'answered'; ref: string | null; ok: false; why: string };
