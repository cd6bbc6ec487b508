// The usual sizes of jars for syrup, by the volume that a person counts in, and how many of them an amount fills.
import { litresFromVolume } from './units.ts';
import type { VolumeUnit } from './units.ts';

interface JarSizes {
  /** What one holds, litres, rising. */
  sizes: readonly number[];
  /** The one of these that most people fill, litres (judgement). */
  usual: number;
}

/** A cup (a half pint of an imperial gallon), a pint, a quart and a half gallon: parts of a gallon by NIST Handbook 44, appendix C. */
function partsOf(gallon: VolumeUnit): JarSizes {
  const sizes = [1 / 16, 1 / 8, 1 / 4, 1 / 2].map((part) => litresFromVolume(part, gallon));
  return { sizes, usual: litresFromVolume(1 / 8, gallon) };
}

/** That syrup is packed in these: common practice; 540 mL is the can of Québec. */
const JAR_SIZES: Record<VolumeUnit, JarSizes> = {
  litre: { sizes: [0.1, 0.25, 0.5, 0.54, 1], usual: 0.25 },
  'us-gallon': partsOf('us-gallon'),
  'imperial-gallon': partsOf('imperial-gallon'),
};

export interface JarCount {
  /** What one holds, litres. */
  litres: number;
  count: number;
}

/** So that 0.7 L fills seven jars of 0.1 L, which binary numbers put at 6.999…; far less than a drop. */
const SLIP = 1e-6;

/** Full jars if all of it goes into one size, of each usual size; a size that not even one fills is left out. */
export function jarsFor(syrupLitres: number, unit: VolumeUnit): JarCount[] {
  return JAR_SIZES[unit].sizes
    .map((litres) => ({ litres, count: Math.floor(syrupLitres / litres + SLIP) }))
    .filter(({ count }) => count > 0);
}

/** Of those counts the one of the size that most people fill, else of the least; undefined where there is none. */
export const usualJars = (counts: readonly JarCount[], unit: VolumeUnit): JarCount | undefined =>
  counts.find(({ litres }) => litres === JAR_SIZES[unit].usual) ?? counts[0];
