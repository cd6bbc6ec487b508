// What one line of the physics bench compares, and how it is printed: our values against those of one source.

/** How the other side's values were come by: read in the source, recalled and not seen, or worked out from its equation. */
export type Provenance = 'read' | 'memory' | 'computed';

/** One quantity against one source. `limit` is the greatest residual that is allowed, in `unit`. */
export interface Comparison {
  quantity: string;
  source: string;
  provenance: Provenance;
  unit: string;
  limit: number;
  /** null where our side does not know, which counts as over the limit. */
  pairs: (readonly [ours: number | null, theirs: number])[];
}

const columns = [30, 46, 9, 7, 10, 10, 16];

const line = (cells: string[]): string =>
  `  ${cells.map((cell, index) => (index < 3 ? cell.padEnd(columns[index]!) : cell.padStart(columns[index]!))).join(' ')}`;

export const comparisonHead = line(['quantity', 'source', 'by', 'points', 'mean', 'worst', 'limit']);

/** Three digits that count, whatever the size. */
const digits = (value: number): string => (Number.isNaN(value) ? 'not known' : String(Number(value.toPrecision(3))));

/** One printed line; it ends in OVER where the worst residual is over the limit or a value is not known. */
export function comparisonLine({ quantity, source, provenance, unit, limit, pairs }: Comparison): string {
  const residuals = pairs.map(([ours, theirs]) => (ours ?? NaN) - theirs);
  const mean = residuals.reduce((sum, one) => sum + one, 0) / residuals.length;
  const furthest = residuals.reduce((far, one) => (Math.abs(one) > Math.abs(far) ? one : far), 0);
  const worst = residuals.some(Number.isNaN) ? NaN : furthest;
  const verdict = Math.abs(worst) <= limit && pairs.length > 0 ? 'within' : 'OVER';
  const numbers = [String(pairs.length), digits(mean), digits(worst), `${limit} ${unit}`];
  return `${line([quantity, source, provenance, ...numbers])}  ${verdict}`;
}
