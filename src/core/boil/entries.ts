// The shapes of a boil: its header and the entries that follow it, exactly as a recording holds them.

/** Mass shares of the sugars among all dissolved sugar; they sum to 1 ± 0.01. */
export interface SugarShares {
  sucrose: number;
  glucose: number;
  fructose: number;
  /** Acids and minerals, as a mass share of everything dissolved; 0 unless said. */
  others?: number | undefined;
}

/** A share that is left out is 0. */
export type Sap =
  | 'maple'
  | 'birch'
  | {
      sucrose?: number | undefined;
      glucose?: number | undefined;
      fructose?: number | undefined;
      others?: number | undefined;
    };

export type Vessel =
  /** Round and rectangular: how high the wall is, where that was told. */
  | { shape: 'round'; diameter_mm: number; height_mm?: number | undefined }
  | { shape: 'rectangular'; length_mm: number; width_mm: number; height_mm?: number | undefined }
  /** A round pot whose wall leans: straight from the bottom's diameter to the top's. */
  | { shape: 'round-sloped'; bottom_diameter_mm: number; top_diameter_mm: number; height_mm: number }
  /** Depths at which somebody measured how much is in it, rising; between two of them it is straight. */
  | { shape: 'measured'; fill: { mm: number; litres: number }[] };

export interface Heat {
  kind: 'propane' | 'wood' | 'electric' | 'other';
  /** Nominal burner power, W. */
  power_w?: number | undefined;
}

/** A finish is a strength or a rise; with a ceiling the pan is kept below a boil. */
export type Finish =
  | { brix: number; ceiling_c?: number | undefined }
  | { rise_c: number; ceiling_c?: number | undefined };

export type PortFormat =
  | { kind: 'pairs' }
  | { kind: 'columns'; separator: string; decimal?: string | undefined; channels: string[] }
  | { kind: 'json'; channels: Record<string, string> }
  | { kind: 'pattern'; pattern: string };

export interface PortSetup {
  id: string;
  format?: PortFormat | undefined;
  /** Only in a setup that is watched: where the port is on this machine. */
  path?: string | undefined;
  baud?: number | undefined;
  /** The board behind the port, whatever its path: its serial number, or what else tells it from others. */
  device?: string | undefined;
}

export type Sensor =
  | { kind: 'temperature'; unit?: 'C' | 'F' | 'K' | undefined }
  | { kind: 'thermocouple'; type: 'K' | 'J' | 'T'; cold_junction: string }
  | { kind: 'rtd'; r0_ohm: number }
  | { kind: 'ntc'; steinhart_hart: [number, number, number] }
  | { kind: 'ntc'; r25_ohm: number; beta_k: number };

export interface ProbeSetup {
  id: string;
  port: string;
  channel: string;
  /** Added to what the line says, °C. */
  offset_c?: number | undefined;
  /** What its number is; degrees Celsius when absent. */
  sensor?: Sensor | undefined;
}

export interface PanSetup {
  id: string;
  name?: string | undefined;
  role?: 'syrup' | 'reference' | undefined;
  sap?: Sap | undefined;
  probe?: string | string[] | undefined;
  vessel?: Vessel | undefined;
  heat?: Heat | undefined;
  min_depth_mm?: number | undefined;
  /** A plan lights it only once the others are poured into it; until then it stands empty. */
  for_end?: boolean | undefined;
  finish?: Finish | undefined;
  /** What is set for this pan alone; a field that is absent is the header's. */
  settings?: BoilSettings | undefined;
}

export interface BoilSettings {
  /** How long before the finish to call, s. */
  near_finish_lead_s?: number | undefined;
  /** How long before burning to call, s. */
  scorch_lead_s?: number | undefined;
  /** How long before the least depth to call, s. */
  low_level_lead_s?: number | undefined;
  /** The finish is called once it is reached with so much probability, 0.05 to 0.95. */
  finish_probability?: number | undefined;
  /** The call before the finish ends once the finish is so many lead times away again, 1 to 5. */
  near_finish_deadband?: number | undefined;
  /** Begin with what earlier boils taught; for the whole boil only. */
  use_learnt?: boolean | undefined;
}

/**
 * What earlier boils taught: a joint normal distribution over names. "probe ID" is how much that probe shows too much,
 * °C; "sap KEY" is by which share that sap's rise is more than its sugars' alone; "burner […]" is the logarithm of the
 * water that boils away there at full flame, kg/s, as it is expected of this boil. The covariance is symmetric, in the order of the names.
 */
export interface Learnt {
  names: string[];
  mean: number[];
  covariance: number[][];
}

/** Line 1 of a recording. Unknown fields are kept beside these. */
export interface Header {
  recording: 'panwarden';
  version: 1;
  name?: string | undefined;
  /** ISO 8601 with an offset: the moment of t = 0. */
  started: string;
  site?: { name?: string | undefined; altitude_m?: number | undefined } | undefined;
  ports?: PortSetup[] | undefined;
  probes?: ProbeSetup[] | undefined;
  pans?: PanSetup[] | undefined;
  settings?: BoilSettings | undefined;
  /** Written by the program when the boil is started. */
  learnt?: Learnt | undefined;
}

/** Litres at 20 °C, °Brix by mass, °C, hPa, mm. `happened` is ms since `started`, not after the entry's t. */
export interface MarkBase {
  id?: string | undefined;
  happened?: number | undefined;
  /** Whoever noted it was asked about it and stands by it. */
  sure?: boolean | undefined;
  /** The id of the note, taken back just before, in whose place this one stands; it acts on nothing. */
  corrects?: string | undefined;
}

/** One raising of an alarm, by its name, its place, and the ms of boil time at which it was raised. */
export interface AboutAlarm {
  alarm: string;
  pan: string | null;
  port?: string | undefined;
  raised: number;
}

export type Mark = MarkBase &
  (
    | {
        kind: 'top-up';
        pan: string;
        litres?: number | undefined;
        brix?: number | undefined;
        celsius?: number | undefined;
      }
    | { kind: 'transfer'; from: string; to: string; litres?: number | undefined; all?: boolean | undefined }
    | {
        kind: 'draw-off';
        pan: string;
        litres?: number | undefined;
        all?: boolean | undefined;
        brix?: number | undefined;
      }
    | { kind: 'flame'; pan: string; level: number }
    | {
        kind: 'pressure';
        hpa: number;
        at?: 'station' | 'altimeter' | 'sea-level' | undefined;
        outdoor_celsius?: number | undefined;
      }
    /** Without `probe` it is the thermometer that is read by hand. */
    | { kind: 'water-check'; probe?: string | undefined; celsius: number }
    | {
        kind: 'density';
        pan: string;
        brix?: number | undefined;
        baume?: number | undefined;
        sg?: number | undefined;
        celsius?: number | undefined;
        instrument?: 'hydrometer' | 'refractometer' | undefined;
        reference_celsius?: number | undefined;
        compensated?: boolean | undefined;
      }
    | { kind: 'depth'; pan: string; mm: number }
    | { kind: 'reading'; pan: string; celsius: number }
    | { kind: 'move-probe'; probe: string; pan: string | null }
    | { kind: 'fuel'; pan: string; kg: number }
    | { kind: 'no-top-up'; pan: string }
    | { kind: 'remind'; text: string; seconds: number }
    | {
        kind: 'note';
        text: string;
        pan?: string | undefined;
        /** The raising of an alarm that the note is about. */
        about?: AboutAlarm | undefined;
        /** That raising was of no use, by the person's own word. */
        no_use?: boolean | undefined;
      }
    /** Here `id` names the mark that is taken back. */
    | { kind: 'withdraw'; id: string }
  );

export type MarkKind = Mark['kind'];

export type Answer =
  /** `by` is the phone that it came from; none from the screen by the pans. */
  | { acknowledge: { pan: string | null; alarm: string; port?: string | undefined }; by?: string | undefined }
  | { silence: { seconds: number }; by?: string | undefined }
  | { put_aside: { pan: string | null; alarm: string; seconds: number; reason: string; port?: string | undefined } };

export type AlarmName =
  | 'near-finish'
  | 'finish'
  | 'past-finish'
  | 'scorch-risk'
  | 'low-level'
  | 'boil-lost'
  | 'probe-lost'
  | 'probe-suspect'
  | 'port-lost'
  | 'fuel-low'
  | 'reminder'
  | 'not-recording'
  | 'no-sound'
  | 'power-low';

export type Priority = 'low' | 'medium' | 'high';

export type AlarmEventName = 'raised' | 'escalated' | 'cleared' | 'acknowledged' | 'put-aside' | 'returned';

/** What the program called at the time, as a recording keeps it. */
export interface Called {
  pan: string | null;
  port?: string | undefined;
  alarm: AlarmName;
  event: AlarmEventName;
  priority: Priority;
  why: string;
}

/** RFC 7396 merge patch over the header. */
export type HeaderPatch = Record<string, unknown>;

/** t is whole milliseconds since `started` and never decreases. */
export type Entry =
  | { t: number; port: string; line: string }
  | { t: number; port: string; state: 'open' | 'lost'; why?: string | undefined }
  | { t: number; mark: Mark }
  | { t: number; set: HeaderPatch }
  | { t: number; answer: Answer }
  | { t: number; called: Called }
  | { t: number; run: 'gap'; seconds: number }
  | { t: number; run: 'ended' }
  | { t: number; unknown: true };
