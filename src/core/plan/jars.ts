// How many jars of each usual size a batch of syrup fills.

export interface JarCount {
  /** What one holds, litres. */
  litres: number;
  count: number;
}

/** Usual sizes of jars and bottles, litres (common practice). */
const SIZES = [0.1, 0.25, 0.5, 1];

/** Full jars if all of it goes into that size; a size that not even one fills is left out. */
export function jarsFor(syrupLitres: number): JarCount[] {
  return SIZES.map((litres) => ({ litres, count: Math.floor(syrupLitres / litres) })).filter(({ count }) => count > 0);
}
