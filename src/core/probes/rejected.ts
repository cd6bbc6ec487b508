// Lines of a port in which something could not be read: how often for each reason, and the last of them as they came.

export interface RejectedLine {
  /** ms of boil time */
  t: number;
  /** As it came, cut to what a screen can show. */
  line: string;
}

/** By reason, the reasons in the order in which they first came. */
export interface Rejected {
  reasons: { reason: string; count: number; last: RejectedLine[] }[];
}

export const startRejected = (): Rejected => ({ reasons: [] });

/** So many lines are kept of a reason, of so many letters; a stream of nonsense makes no more than so many reasons. */
const LINES_KEPT = 3;
const LETTERS_KEPT = 200;
const MOST_REASONS = 12;
const OTHER = 'other reasons';

/** A line came at t (ms) of which a piece was not read, each with its reason ("reason: piece"). */
export function noteRejected(
  { reasons }: Rejected,
  { t, line, reasons: given }: { t: number; line: string; reasons: string[] },
): void {
  const names = new Set(given.map((one) => one.split(': ', 1)[0] ?? one));
  for (const name of names) {
    let found = reasons.find(({ reason }) => reason === name);
    if (found === undefined && reasons.length >= MOST_REASONS) found = reasons.find(({ reason }) => reason === OTHER);
    if (found === undefined) {
      found = { reason: reasons.length >= MOST_REASONS ? OTHER : name, count: 0, last: [] };
      reasons.push(found);
    }
    found.count += 1;
    found.last.push({ t, line: line.slice(0, LETTERS_KEPT) });
    if (found.last.length > LINES_KEPT) found.last.shift();
  }
}
