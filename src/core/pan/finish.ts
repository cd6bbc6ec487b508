// Whether a pan has reached its finish or gone past it: latches with deadbands, so that noise around a limit makes one call.
import type { PanModel } from './pan-state.ts';

/** How far under the finish the strength must fall before the finish counts as not reached, °Bx. */
const FINISH_DEADBAND_BRIX = 1;
/** How far beyond its finish a pan is past it, °Bx: about 0.2–0.3 °C of rise; and where that ends again. */
const PAST_FINISH_BRIX = 1;
const PAST_ENDS_BRIX = 0.4;
/** Below this spread of a block one block is enough to say that the finish is reached, °Bx. */
const QUIET_BRIX = 0.4;
/** A noisy probe needs a wider deadband, so many standard deviations of a block. */
const NOISES = 6;
/** Noise alone does not put a pan past its finish, or back before it, so many blocks in a row. */
const SURE_BLOCKS = 3;

/** Latches with deadbands, so that noise around a limit makes one call; null strength is off the scale: too strong. */
export function judgeFinish(pan: PanModel, finishBrix: number, sigmaBrix: number): void {
  const brix = pan.brix ?? 100;
  const clearlyBelow = brix < finishBrix - Math.max(FINISH_DEADBAND_BRIX, NOISES * sigmaBrix);
  pan.belowBlocks = clearlyBelow ? pan.belowBlocks + 1 : 0;
  pan.finishBlocks = brix >= finishBrix ? pan.finishBlocks + 1 : 0;
  if (pan.finishBlocks >= (sigmaBrix > QUIET_BRIX ? 2 : 1)) pan.reachedFinish = true;
  else if (pan.belowBlocks >= SURE_BLOCKS) pan.reachedFinish = false;
  pan.pastBlocks = brix >= finishBrix + PAST_FINISH_BRIX ? pan.pastBlocks + 1 : 0;
  if (pan.pastBlocks >= SURE_BLOCKS) pan.reachedPast = true;
  else if (brix < finishBrix + Math.min(PAST_ENDS_BRIX, PAST_FINISH_BRIX - NOISES * sigmaBrix)) pan.reachedPast = false;
}

/** Poured into, emptied or off: whatever finish it had reached is over. */
export function finishIsOver(pan: PanModel): void {
  pan.reachedFinish = false;
  pan.reachedPast = false;
  pan.pastBlocks = 0;
  pan.finishBlocks = 0;
}
