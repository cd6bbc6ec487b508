// What the program proposes for a port that nobody has set up yet: its format, its channels, and what it reads in each line.
import type { PortFormat, Sensor } from './entries.ts';

/** What the numbers of a channel are. */
export type ProposedUnit = 'C' | 'F' | 'K' | 'mV' | 'ohm';

export interface ProposedChannel {
  /** As `format` will name it. */
  channel: string;
  /** For the header's probe; null for degrees Celsius or where the line names its unit, and for a cold junction. */
  sensor: Sensor | null;
  unit: ProposedUnit;
  /** Measures the terminals of a thermocouple and hangs in no pan. */
  coldJunction: boolean;
  /** False where the unit was guessed: the person must say. */
  sure: boolean;
  /** One plain sentence: why this unit. */
  why: string;
}

/** One piece of a raw line, from `start` up to but not including `end`, in characters. Pieces never overlap and go up. */
export type LineSpan =
  | { is: 'value'; start: number; end: number; channel: string; value: number | null; unit: ProposedUnit }
  | { is: 'left-out'; start: number; end: number; why: string };

export interface ProposedLine {
  /** The raw line as it was handed in. */
  text: string;
  spans: LineSpan[];
  /** Why the whole line gives nothing; null where it gives something. */
  why: string | null;
}

export interface Alternative {
  format: PortFormat;
  channels: ProposedChannel[];
  why: string;
}

export interface Proposal {
  /** 'unsure': a person must choose or confirm something, `reasons` say what; 'none': no format is proposed, `reasons` say why. */
  verdict: 'sure' | 'unsure' | 'none';
  /** Null only when the verdict is 'none'. */
  format: PortFormat | null;
  channels: ProposedChannel[];
  /** Plain sentences for a person, the most important first; at least one. */
  reasons: string[];
  /** One for each line that was looked at, in order. */
  lines: ProposedLine[];
  alternatives: Alternative[];
}
