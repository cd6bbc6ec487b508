// Whether a pan has reached its finish or gone past it: latches with deadbands, so that noise around a limit makes one call.
import type { FinishLatches } from './course.ts';

/** How far under the finish the strength must fall before the finish counts as not reached, °Bx. */
const FINISH_DEADBAND_BRIX = 1;
/** How far beyond its finish a pan is past it, °Bx: about 0.2–0.3 °C of rise; and where that ends again. */
const PAST_FINISH_BRIX = 1;
const PAST_ENDS_BRIX = 0.4;
/** Noise alone does not put a pan past its finish, or back before it, so many blocks in a row. */
const SURE_BLOCKS = 3;

/** Judges a strength, °Bx, as it is believed after a block. */
export function judgeFinish(latches: FinishLatches, brix: number, finishBrix: number): void {
  latches.belowBlocks = brix < finishBrix - FINISH_DEADBAND_BRIX ? latches.belowBlocks + 1 : 0;
  latches.finishBlocks = brix >= finishBrix ? latches.finishBlocks + 1 : 0;
  if (latches.finishBlocks >= 1) latches.reachedFinish = true;
  else if (latches.belowBlocks >= SURE_BLOCKS) latches.reachedFinish = false;
  latches.pastBlocks = brix >= finishBrix + PAST_FINISH_BRIX ? latches.pastBlocks + 1 : 0;
  if (latches.pastBlocks >= SURE_BLOCKS) latches.reachedPast = true;
  else if (brix < finishBrix + PAST_ENDS_BRIX) latches.reachedPast = false;
}

/** Poured into, emptied or off: whatever finish it had reached is over. */
export function finishIsOver(latches: FinishLatches): void {
  latches.reachedFinish = false;
  latches.reachedPast = false;
  latches.pastBlocks = 0;
  latches.finishBlocks = 0;
}
