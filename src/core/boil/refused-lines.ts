// Keeps count of what in a port's lines gave no value, by reason, and the last of those lines as they came.

export interface RefusedLine {
  /** When it came, ms. */
  t: number;
  line: string;
  /** The first reason, with the piece of the line that it is about. */
  why: string;
}

export interface RefusedLines {
  /** Lines by the reason's few words; those beyond so many reasons are counted together. */
  byReason: Record<string, number>;
  /** The newest last. */
  last: RefusedLine[];
}

/** So many are kept to be looked at, so many characters of each, and so many reasons told apart. */
const LINES_KEPT = 12;
const LONGEST_KEPT = 200;
const REASONS_KEPT = 20;
const OTHER_REASONS = 'other reasons';

/** Nothing refused yet. */
export const startRefusedLines = (): RefusedLines => ({
  byReason: {},
  last: [],
});

/** Takes in a line of which something, or all, was refused; t in ms. */
export function noteRefused(refused: RefusedLines, t: number, line: string, why: string): void {
  const colon = why.indexOf(': ');
  const reason = colon < 0 ? why : why.slice(0, colon);
  const { byReason, last } = refused;
  const known = Object.hasOwn(byReason, reason) || Object.keys(byReason).length < REASONS_KEPT;
  const counted = known ? reason : OTHER_REASONS;
  byReason[counted] = (byReason[counted] ?? 0) + 1;
  last.push({ t, line: line.slice(0, LONGEST_KEPT), why });
  if (last.length > LINES_KEPT) last.shift();
}
