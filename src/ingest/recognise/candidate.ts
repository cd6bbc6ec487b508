// A way in which the lines may be read: a format, and what each of its channels then holds.
import type { PortFormat } from '../../core/boil/entries.ts';
import type { NumberKind, Series } from './kind-of-number.ts';

export interface CandidateChannel {
  channel: string;
  series: Series;
  kind: NumberKind & { is: 'read' };
}

export interface Candidate {
  format: PortFormat;
  channels: CandidateChannel[];
  /** What was seen and is not read, by its name or place. */
  leftOut: { what: string; why: string }[];
  /** What makes this way likely, and what speaks against being sure; plain sentences. */
  because: string;
  doubts: string[];
}
