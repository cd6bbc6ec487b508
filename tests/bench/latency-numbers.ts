// The middle and the ends of many measured times.

/** The value that a share of them does not exceed (nearest rank). */
export function quantile(values: readonly number[], share: number): number {
  const ordered = values.toSorted((one, other) => one - other);
  return ordered[Math.max(0, Math.ceil(share * ordered.length) - 1)] ?? Number.NaN;
}
