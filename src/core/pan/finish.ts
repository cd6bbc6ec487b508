// Whether a pan has reached its finish or gone past it: latches with deadbands, so that noise around a limit makes one call.
import type { FinishLatches } from './course.ts';

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
 * Judges a strength, °Bx, as it is believed after a block. `shownBrix` is what the thermometer alone shows now, Infinity
 * beyond the scale and null where there is none: a belief must not hide what is there, nor run on without it.
 */
export function judgeFinish(latches: FinishLatches, brix: number, shownBrix: number | null, finishBrix: number): void {
  const shown = shownBrix ?? brix;
  latches.belowBlocks = Math.max(brix, shown) < finishBrix - FINISH_DEADBAND_BRIX ? latches.belowBlocks + 1 : 0;
  latches.finishBlocks = shown >= finishBrix + SHOWN_BEYOND_BRIX ? latches.finishBlocks + 1 : 0;
  const believed = brix >= finishBrix && shown >= finishBrix - AHEAD_BRIX;
  if (believed || latches.finishBlocks >= SHOWN_BLOCKS) latches.reachedFinish = true;
  else if (latches.belowBlocks >= SURE_BLOCKS) latches.reachedFinish = false;
  latches.pastBlocks = shown >= finishBrix + PAST_FINISH_BRIX ? latches.pastBlocks + 1 : 0;
  if (latches.pastBlocks >= SURE_BLOCKS) latches.reachedPast = true;
  else if (Math.max(brix, shown) < finishBrix + PAST_ENDS_BRIX) latches.reachedPast = false;
}

/** Poured into, emptied or off: whatever finish it had reached is over. */
export function finishIsOver(latches: FinishLatches): void {
  latches.reachedFinish = false;
  latches.reachedPast = false;
  latches.pastBlocks = 0;
  latches.finishBlocks = 0;
}
