// What the entries of a boil alone tell of it: plain data, costly to work out, and kept until other entries come.
import type { Heat } from '../boil/entries.ts';
import type { SapKindKey } from '../physics/sap-kinds.ts';
import type { BoilOutcome } from './figures.ts';
import type { JoinedPans } from './joined-pans.ts';
import type { RaisingName } from './records.ts';

/** Something that went into a pan from outside. */
export interface PourCounted {
  /** ms of boil time */
  at: number;
  pan: string;
  /** Litres at 20 °C and their standard uncertainty. */
  litres: number;
  sigma: number;
  /** As it was typed for this pour, or last before it; null where nobody typed one. */
  brix: number | null;
  /** It is far too strong for sap: it had been boiled before. */
  boiledBefore?: true;
  /** `marked` with its litres, `marked-only` without, `depth` by a first depth, `seen` by its dip. */
  from: 'marked' | 'marked-only' | 'depth' | 'seen';
}

/** Liquid that was taken out of a pan, or is in it at the end. */
export interface Batch {
  at: number;
  pan: string;
  litres: number;
  litresSigma: number;
  brix: number;
  brixSigma: number;
  /** Somebody said how many litres, rather than the model. */
  measured: boolean;
  /** It had stood so hot before that it was no syrup any more. */
  burnt: boolean;
  /** It stood in its pan when the boil ended, short of its finish: nobody had it as syrup, however thick it was. */
  unfinished: boolean;
}

export interface BoilFacts {
  /** From t = 0 to the last entry, s. */
  seconds: number;
  /** While any pan was seen to boil, s; null where no pan was seen at all. */
  boilingSeconds: number | null;
  /** From the lighting of the fire until the program was told of it, s: pans that boiled then were not seen. */
  unseenSeconds: number;
  /** Syrup pans, those too that were taken away again. */
  pans: { id: string; name: string }[];
  saps: SapKindKey[];
  /** The same pans, those together between which something was poured. */
  joined: JoinedPans[];
  pours: PourCounted[];
  taken: Batch[];
  left: Batch[];
  /** Pans that boiled though nobody noted what was filled in first. */
  unnoted: string[];
  /** Pans of which nobody can say how much was taken out of them, or how thick; and those of which nobody can say what is left. */
  takenUntold: string[];
  leftUntold: string[];
  cylinder: {
    /** What its weighings show to have been burned, kg; null of fewer than two. */
    burnedKg: number | null;
    /** The first and the last weighing, kg. */
    firstKg: number | null;
    lastKg: number | null;
  };
  /** What the pans were heated with, each kind once. */
  heats: Heat['kind'][];
  /** How often any alarm was raised, and which of them were of no use by marks of the boil itself. */
  raised: number;
  noUse: RaisingName[];
  outcomes: BoilOutcome[];
  /**
   * The last density reading, °Bx at 20 °C, and its standard uncertainty; `before` where something was poured to or from its
   * pan after it, or the pan became stronger or weaker by more than MOVED_BRIX: it says nothing of the syrup then.
   */
  density: { brix: number; sigma: number; before?: true } | null;
  /** What the plan that the boil began from says of its sap, °Bx; null where there is none. */
  plannedBrix: number | null;
  /** What the last pan was to be boiled to, °Bx. */
  finishBrix: number | null;
}

/** From this strength on what leaves a pan is syrup, °Bx (judgement: no sap is drawn off so thick, no syrup so thin). */
export const SYRUP_BRIX = 50;

/** Whether somebody had it as syrup: so thick, neither burnt nor left in its pan short of the finish. */
export const isSyrup = ({ brix, burnt, unfinished }: Pick<Batch, 'brix' | 'burnt' | 'unfinished'>): boolean =>
  brix >= SYRUP_BRIX && !burnt && !unfinished;

/** Of less boiling than this nothing is told of the water an hour: its looks and what was poured are too coarse for that, s (judgement). */
export const LEAST_BOILING_S = 20 * 60;
