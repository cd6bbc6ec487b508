// The course of one pan: all that is believed of it at one moment, and what can happen to it. Run again over the same happenings it ends the same.
import type { Base } from './filter/base.ts';
import { type Belief, copyBelief } from './filter/belief.ts';
import type { Steam } from './burner.ts';
import { copyWander, startWander, type Wander } from './filter/wander.ts';

export type Phase = 'cold' | 'boiling' | 'settling';

/** Latches of the finish, so that noise around a limit makes one call. */
export interface FinishLatches {
  /** The moment that it stands for, ms. */
  t: number;
  /** Strength was seen at or over the finish and has not fallen clearly below it since. */
  reachedFinish: boolean;
  /** The same for clearly beyond it. */
  reachedPast: boolean;
  pastBlocks: number;
  finishBlocks: number;
  belowBlocks: number;
  /** When somebody measured that it was at its finish or beyond, by an instrument or a thermometer in the hand, ms. */
  seenAt: number;
}

export interface Course extends FinishLatches {
  /** null until a first happening: what is usual depends on the pan's setup. */
  belief: Belief | null;
  /** Water point, probe and sap as they were last told. */
  base: Base | null;
  /** By how much the weather may have moved the water point since, °C². */
  weatherVariance: number;
  /** Somebody said how much is in the pan. */
  told: boolean;
  /** Somebody said how strong it is, or its own rise did. */
  strengthTold: boolean;
  /** Somebody measured how strong it is with an instrument since it was filled. */
  strengthMeasured: boolean;
  phase: Phase;
  /** It was seen to be warmed up: then it is sap rather than something boiled before. */
  cameCold: boolean;
  /** When the pan last took in something cold, noted or seen, ms; -1 for never. */
  disturbedAt: number;
  /** When the boil was last seen to be steady after a climb, ms; -1 for never. */
  boilingFrom: number;
  /** When somebody last measured how much is in it, ms. */
  volumeAt: number;
  /** When somebody last measured how strong it is with an instrument, ms. */
  strengthAt: number;
  /** The sugar that was believed when its contents were last noted or measured, as a logarithm, kg, and its standard deviation. */
  notedSugar: { ln: number; sigma: number } | null;
  /** What was last filled into it came from another pan whose contents were known. */
  received: boolean;
  /** What came out of another pan last may be of any strength, and nothing has shown since how strong this one is. */
  inDoubt: boolean;
  /** When somebody last noted a pour, ms; -Infinity is no number in text, so a day before. */
  pouredAt: number;
  /** Readings before this tell of the probe's own warming, ms. */
  deafUntil: number;
  /** When a thermometer was last read by hand, ms. */
  handAt: number;
  /**
   * What was added to the last number that was read by hand beside a probe to make a rise of it, °C: what is believed of
   * that thermometer's error is an error of that rise. null where none was read.
   */
  handZeroC: number | null;
  /** No rate is worked out over what was before this: another probe, a gap, ms. */
  heardFrom: number;
  /** Share of full flame, and when somebody last noted it lower, ms. */
  flame: number;
  loweredAt: number;
  emptied: boolean;
  /** Heat that is owed before it boils again, as kg of steam; null while nobody knows whether it boils. */
  debtKg: number | null;
  /** What was believed of the steam at full flame when it last boiled, ms; never changed, only replaced. */
  boiledWith: (Steam & { t: number }) | null;
  riseC: number | null;
  /** How much a rise wanders with bubbles and superheat, °C, and what showed it. */
  wanderC: number;
  wander: Wander;
  /** The rise of the last half minute of boiling, °C: the height that a fall is measured from. */
  usualRiseC: number | null;
  /** The last few blocks, newest last. */
  recentTimes: number[];
  recentRises: number[];
  /** Blocks in a row that missed far to the same side; negative below what was expected. */
  wildBlocks: number;
  /** Where the present stretch of warming began: rise, °C, and seconds of full flame since. */
  warming: { riseC: number; heatS: number } | null;
  /** The last fall, until it is known what it was. */
  fall: Fall | null;
  /** Pours that nobody noted, as their dips tell of them; the latest last. */
  seen: SeenPour[];
}

/** A pour that was seen by its dip: when, ms, litres with their standard uncertainty, and whether it counts. */
export interface SeenPour {
  at: number;
  litres: number;
  sigma: number;
  taken: boolean;
  /** What it added, so that it can be taken back; null where it does not count. */
  added: Added | null;
}

/** A fall out of a boil: when, from which rise, and the lowest rise since. */
export interface Fall {
  at: number;
  fromC: number;
  lowestC: number;
  lowestAt: number;
  /** Seconds of full flame since, and since the lowest. */
  heatS: number;
  heatSinceLowestS: number;
}

/** Something that happens to a pan at a moment, ms. `order` parts what happens in the same moment. */
export type Happening = { t: number; order: number } & (
  | { what: 'block'; riseC: number; noiseC: number; stepC: number }
  | { what: 'base'; shiftC: number; base: Base }
  /** Nothing was learnt, but the weather may have moved the water point since. */
  | { what: 'weather'; base: Base }
  | {
      what: 'pour';
      key: string;
      /** null where nobody knows how much. */
      litres: number | null;
      /** To which the litres are known, where that is not as usual. */
      share?: number;
      brix: number;
      celsius: number;
      guessed: boolean;
      added: Added | null;
    }
  /** From another pan: what its `take` of the same key took. */
  | { what: 'receive'; key: string; added: Added | null; moved: Moved | null }
  | { what: 'take'; key: string; litres: number | null; all: boolean; brix: number | null; added: Added | null }
  | { what: 'flame'; key: string; level: number }
  /** `meant`: it counts whatever else is known; `wild`: its pan's thermometer contradicts it; `doubted`: it was left out. */
  | {
      what: 'volume';
      key: string;
      /** As they stand, L: how warm they are, and so how much that is at 20 °C, the course knows. */
      litres: number;
      share: number;
      /** Volume as it stood over volume at 20 °C; null before it happened. */
      swell: number | null;
      meant: boolean;
      doubted: boolean;
      /** What was counted just before, L at 20 °C, and what is believed since; null where the count was of no use. */
      counted: number | null;
      taken: number | null;
    }
  | { what: 'strength'; key: string; brix: number; sigmaBrix: number; meant: boolean; wild: boolean; doubted: boolean }
  | ({ what: 'hand'; key: string; meant: boolean } & ReadByHand)
  /** The burner is another one, or was said wrongly: what is supposed of its steam. */
  | ({ what: 'burner' } & Steam)
  | { what: 'probe' }
  | { what: 'gap' }
  /** A mark older than what can be run again is taken back: what it once added goes. */
  | { what: 'undo'; key: string; added: Added }
);

/** A rise that was read by hand, °C, and what its reading alone is sure to. */
export interface ReadByHand {
  riseC: number;
  sigmaC: number;
  /** In a pan with a probe of its own: this is another thermometer. null where the pan has none. */
  other: OtherThermometer | null;
}

/**
 * What was added to its number, °C, the variance of water point and thermometer together, °C², and its covariance with
 * that of the pan's probe.
 */
export interface OtherThermometer {
  zeroC: number;
  variance: number;
  covariance: number;
}

/** Sugar and water that came (or, negative, went). */
export interface Added {
  sugarKg: number;
  waterKg: number;
}

/** What was taken out of one pan into another, and how well it is known. */
export interface Moved extends Added {
  massShare: number;
  brixShare: number;
  celsius: number;
  /** How strong it was nobody knew. */
  inDoubt: boolean;
}

/** What never happened, happened then, ms. */
export const LONG_AGO_MS = -86_400_000;

/** A pan of which nothing is known yet. */
export function startCourse(t: number): Course {
  return {
    t,
    belief: null,
    base: null,
    weatherVariance: 0,
    told: false,
    strengthTold: false,
    strengthMeasured: false,
    phase: 'cold',
    cameCold: false,
    disturbedAt: -1,
    boilingFrom: -1,
    volumeAt: LONG_AGO_MS,
    strengthAt: LONG_AGO_MS,
    notedSugar: null,
    received: false,
    inDoubt: false,
    pouredAt: LONG_AGO_MS,
    deafUntil: -1,
    handAt: LONG_AGO_MS,
    handZeroC: null,
    heardFrom: -1,
    flame: 1,
    loweredAt: LONG_AGO_MS,
    emptied: false,
    debtKg: null,
    boiledWith: null,
    riseC: null,
    wanderC: 0.04,
    wander: startWander(),
    usualRiseC: null,
    recentTimes: [],
    recentRises: [],
    wildBlocks: 0,
    warming: null,
    fall: null,
    seen: [],
    reachedFinish: false,
    reachedPast: false,
    pastBlocks: 0,
    finishBlocks: 0,
    belowBlocks: 0,
    seenAt: LONG_AGO_MS,
  };
}

/** Emptied, or its flame is noted as off. */
export const isOff = (course: Course): boolean => course.emptied || course.flame === 0;

/**
 * Somebody found it empty before anything was told of it, and something is in it after all: a thermometer was read in it,
 * or its probe shows a boil.
 */
export function isEmptyNoMore(course: Course): void {
  if (!course.told && course.phase === 'cold') course.emptied = false;
}

/** Everything copied, so that the one can go on and the other stay. */
export function copyCourse(course: Course): Course {
  return {
    ...course,
    belief: course.belief === null ? null : copyBelief(course.belief),
    base: course.base === null ? null : { ...course.base },
    recentTimes: [...course.recentTimes],
    recentRises: [...course.recentRises],
    wander: copyWander(course.wander),
    warming: course.warming === null ? null : { ...course.warming },
    fall: course.fall === null ? null : { ...course.fall },
    seen: course.seen.map((one) => ({ ...one })),
  };
}

/** Something cold or unknown reached the tip: nothing is believed of the rise until it boils again. */
export function disturb(course: Course, t: number): void {
  if (course.phase !== 'cold') course.phase = 'settling';
  course.disturbedAt = t;
  course.usualRiseC = null;
  course.warming = null;
}
