// Whether a pan has reached its finish or gone past it: latches with deadbands, so that noise around a limit makes one call.
import { type FinishLatches, LONG_AGO_MS } from './course.ts';
import { type Belief, variance, WATER, waterOf } from './filter/belief.ts';
import { brixOfWaterPerSugar } from './filter/liquid.ts';

/** How far under the finish the strength must fall before the finish counts as not reached, °Bx. */
const FINISH_DEADBAND_BRIX = 1;
/** How far beyond its finish a pan is past it, °Bx: about 0.2–0.3 °C of rise; and where that ends again. */
const PAST_FINISH_BRIX = 1;
const PAST_ENDS_BRIX = 0.4;
/** Noise alone does not put a pan past its finish, or back before it, so many blocks in a row. */
const SURE_BLOCKS = 3;

/** A belief that runs ahead of what the thermometer shows by more than this is not believed alone, °Bx. */
const AHEAD_BRIX = 2;
/** What the thermometer shows at or beyond the finish, °Bx, so many blocks in a row, counts whatever is believed. */
const SHOWN_BEYOND_BRIX = 0;
const SHOWN_BLOCKS = 3;

/**
 * A count known worse than this, standard deviation of the water's logarithm, must lie beyond the finish for more of what
 * it may be; for four fifths (0.84 standard deviations) from twice that on (practice: a high call costs its trust).
 */
const SURE_COUNT = 0.15;
const MOST_OF_IT = 0.84;

/** A pan without a thermometer reaches its finish all the same, by what was poured in and boiled away. */
export function judgeCount(latches: FinishLatches, belief: Belief, asked: FinishAsked): void {
  const unsure = Math.min(1, Math.sqrt(variance(belief, WATER)) / SURE_COUNT - 1);
  const sigmas =
    unsure > 0 ? Math.max(asked.sigmas, asked.sigmas + unsure * (MOST_OF_IT - asked.sigmas)) : asked.sigmas;
  judgeFinish(latches, belief, null, { ...asked, sigmas });
}

/** What the finish is held against: its strength, °Bx, and how many standard deviations of the water must lie beyond it. */
export interface FinishAsked {
  brix: number;
  sigmas: number;
}

/** Whether a pan that shows no more than `mostBrix` (°Bx) counts as clearly below its finish, however much less it shows. */
export function isFarUnder(belief: Belief, mostBrix: number, asked: FinishAsked): boolean {
  const { middle, brix } = believed(belief, asked);
  return Math.max(brix, mostBrix + brix - middle) < asked.brix - FINISH_DEADBAND_BRIX;
}

/** What is believed, °Bx: in the middle, and with the probability that is asked for. */
function believed(belief: Belief, { sigmas }: FinishAsked): { middle: number; brix: number } {
  const water = waterOf(belief);
  return {
    middle: brixOfWaterPerSugar(water),
    brix: brixOfWaterPerSugar(water * Math.exp(sigmas * Math.sqrt(variance(belief, WATER)))),
  };
}

/**
 * Judges what is believed of a pan. `shownBrix` is what the thermometer alone shows now, °Bx, Infinity beyond the scale
 * and null where there is none: a belief must not hide what is there, nor run on without it.
 */
export function judgeFinish(
  latches: FinishLatches,
  belief: Belief,
  shownBrix: number | null,
  asked: FinishAsked,
): void {
  const finishBrix = asked.brix;
  const { middle, brix } = believed(belief, asked);
  // What is shown is as unsure as what is believed; but nobody is called past a finish for being unsure.
  const shown = shownBrix === null ? brix : shownBrix + brix - middle;
  const beyond = Math.min(shown, shownBrix ?? middle);
  latches.belowBlocks = Math.max(brix, shown) < finishBrix - FINISH_DEADBAND_BRIX ? latches.belowBlocks + 1 : 0;
  latches.finishBlocks = shown >= finishBrix + SHOWN_BEYOND_BRIX ? latches.finishBlocks + 1 : 0;
  const isBelieved = brix >= finishBrix && shown >= finishBrix - AHEAD_BRIX;
  if (isBelieved || latches.finishBlocks >= SHOWN_BLOCKS) latches.reachedFinish = true;
  else if (latches.belowBlocks >= SURE_BLOCKS && latches.t - latches.seenAt > SEEN_LASTS_MS)
    latches.reachedFinish = false;
  latches.pastBlocks = beyond >= finishBrix + PAST_FINISH_BRIX ? latches.pastBlocks + 1 : 0;
  if (latches.pastBlocks >= SURE_BLOCKS) latches.reachedPast = true;
  else if (Math.max(brix, shown) < finishBrix + PAST_ENDS_BRIX) latches.reachedPast = false;
}

/** What somebody measured stands so long against a count, or a probe, that lies lower, ms (as a reading by hand does). */
const SEEN_LASTS_MS = 10 * 60_000;

/** Somebody measured that it is at its finish or beyond. */
export function finishSeen(latches: FinishLatches): void {
  latches.reachedFinish = true;
  latches.seenAt = latches.t;
}

/** Poured into, emptied or off: whatever finish it had reached is over. */
export function finishIsOver(latches: FinishLatches): void {
  latches.reachedFinish = false;
  latches.reachedPast = false;
  latches.pastBlocks = 0;
  latches.finishBlocks = 0;
  latches.seenAt = LONG_AGO_MS;
}
