// What one text line of a port says, once read; reading lines is handed to the fold, so that core knows no wire format.
import type { Header, PortFormat } from './entries.ts';

export type LineUnit = 'C' | 'F' | 'K';

/** A value as the line gives it: what it is, degrees, millivolts or ohms, only the probe's setup tells. */
export interface LineReading {
  channel: string;
  /** A finite number of any size, or minus zero; null when the device says that the probe is broken. */
  value: number | null;
  /** The temperature unit that stands with the number; null for none. */
  unit: LineUnit | null;
}

export interface LineResult {
  readings: LineReading[];
  /** Why something in the line gave no value, one short reason a piece; empty when all of it was read. */
  rejected: string[];
}

/** What the fold is given from outside core. */
export interface FoldTools {
  readLine(line: string, format: PortFormat | undefined): LineResult;
  /** The header when the value holds together as one, else a sentence that names the field. */
  checkHeader(value: unknown): { ok: true; header: Header } | { ok: false; why: string };
}
