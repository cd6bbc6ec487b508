// What is in a pan by weight: sugar and water, from what people said went in and out and what boiled away.
import { densityKgPerM3 } from '../physics/density.ts';

export interface Contents {
  /** null while nobody has said how much is in the pan. */
  sugarKg: number | null;
  waterKg: number | null;
  /** The sap's strength was only taken as usual for its kind: the volume is known, the sugar is not. */
  sugarGuessed: boolean;
  /** Water counted off by a burner's nominal power since the contents were last sure, kg. */
  nominalKg: number;
  /** Water counted off in any way since a volume was last seen, kg. */
  countedKg: number;
}

/** Change of contents that one mark made, kept so that the mark can be taken back. */
export interface ContentsChange {
  pan: string;
  sugarKg: number;
  waterKg: number;
  /** What was known before, where the mark made that unknown or replaced it. */
  before: Contents | null;
  /** Water that had boiled away from the pan by then, kg. */
  evaporatedKg: number;
}

export function unknownContents(): Contents {
  return { sugarKg: null, waterKg: null, sugarGuessed: false, nominalKg: 0, countedKg: 0 };
}

/** Mass of so many litres (at 20 °C) of a strength, kg; null outside the density's range. */
export function massOfLitres(litres: number, brix: number): number | null {
  const density = densityKgPerM3(brix, 20);
  return density === null ? null : (litres * density) / 1000;
}

/** Litres at 20 °C; null while not known, and once more was counted off by nominal power than is left: that misses by a third. */
export function litresOf(contents: Contents): number | null {
  const { sugarKg, waterKg } = contents;
  if (sugarKg === null || waterKg === null) return null;
  const mass = sugarKg + waterKg;
  if (contents.nominalKg > mass) return null;
  if (mass <= 1e-6) return 0;
  const density = densityKgPerM3(Math.min(80, (100 * sugarKg) / mass), 20);
  return density === null ? null : (mass * 1000) / density;
}

/** Strength by weight, °Brix; null while not known or empty. */
export function brixOf(contents: Contents): number | null {
  const { sugarKg, waterKg } = contents;
  if (sugarKg === null || waterKg === null || sugarKg + waterKg <= 1e-6) return null;
  return (100 * sugarKg) / (sugarKg + waterKg);
}

/** Contents of so many litres (at 20 °C) of a strength. */
export function contentsOfLitres(litres: number, brix: number): { sugarKg: number; waterKg: number } | null {
  const mass = massOfLitres(litres, brix);
  if (mass === null) return null;
  return { sugarKg: (mass * brix) / 100, waterKg: mass * (1 - brix / 100) };
}

/**
 * Adds (or, negative, takes away) sugar and water; what is not known stays so, and nothing falls below empty.
 * Gives what was really added, so that it can be taken back.
 */
export function addTo(contents: Contents, sugarKg: number, waterKg: number): { sugarKg: number; waterKg: number } {
  const before = { sugarKg: contents.sugarKg ?? 0, waterKg: contents.waterKg ?? 0 };
  if (contents.sugarKg !== null) contents.sugarKg = Math.max(0, contents.sugarKg + sugarKg);
  if (contents.waterKg !== null) contents.waterKg = Math.max(0, contents.waterKg + waterKg);
  return { sugarKg: (contents.sugarKg ?? 0) - before.sugarKg, waterKg: (contents.waterKg ?? 0) - before.waterKg };
}

/** A volume seen so lately that what nominal power counted off since then (a third wrong) hardly matters. */
export function countIsFresh(contents: Contents): boolean {
  const { sugarKg, waterKg, nominalKg } = contents;
  return sugarKg !== null && waterKg !== null && nominalKg <= 0.5 * (sugarKg + waterKg);
}

/** Share that a burner's nominal power misses by: efficiencies of 25–60 % are seen. */
export const NOMINAL_SIGMA = 0.35;
/** Litres are typed to about this share. */
const LITRES_SIGMA = 0.08;
/** Contents that are known worse than this are better called not known, share of the mass. */
const USEFUL_SHARE = 0.2;
/** A strength known to this share tells the sugar of a volume. */
const TELLING_SHARE = 0.12;
/** A volume that rests on so much nominal power is no longer known when its sugar was guessed too, share of the mass. */
const NOMINAL_TOO_MUCH = 0.4;

/**
 * A strength with its standard uncertainty (°Bx) corrects the water where the sugar was counted and the strength is the
 * surer of the two, and the sugar where only the volume was known. A guess on a guess is given up: it is not known.
 */
export function correctByStrength(contents: Contents, brix: number, sigmaBrix: number): void {
  const { sugarKg, waterKg } = contents;
  if (sugarKg === null || waterKg === null) return;
  const mass = sugarKg + waterKg;
  if (!contents.sugarGuessed) {
    const byCount = Math.hypot(LITRES_SIGMA * mass, NOMINAL_SIGMA * contents.nominalKg);
    const byStrength = (100 * sugarKg * sigmaBrix) / (brix * brix);
    if (byStrength > Math.min(byCount, USEFUL_SHARE * mass)) return;
    contents.waterKg = (sugarKg * (100 - brix)) / brix;
    contents.nominalKg = byStrength / NOMINAL_SIGMA;
  } else if (sigmaBrix > TELLING_SHARE * brix) return;
  else if (contents.nominalKg > NOMINAL_TOO_MUCH * mass) Object.assign(contents, unknownContents());
  else {
    contents.sugarKg = (mass * brix) / 100;
    contents.waterKg = mass - contents.sugarKg;
    contents.sugarGuessed = false;
  }
  contents.countedKg = 0;
}
