// Runs a kept boil through the fold for an export, in short slices, so that a live boil beside it is never kept waiting.
import type { AlarmTransition } from '../../core/alarms/alarm.ts';
import { startBoil } from '../../core/boil/fold.ts';
import type { BoilState } from '../../core/boil/fold.ts';
import type { PanReading } from '../../core/pan/reading.ts';
import { foldSteps } from '../fold-steps.ts';
import { Folding } from '../folding.ts';
import { foldTools } from '../fold-tools.ts';
import type { BoilSource } from './boil-source.ts';
import { inSlices } from './in-slices.ts';
import type { SliceOptions } from './in-slices.ts';

export interface FoldedListener {
  /** At every whole multiple of the interval, after all entries up to that t; `state` is that of this moment. */
  readings(t: number, readings: PanReading[], state: BoilState): void;
  alarm?(transition: AlarmTransition): void;
}

/**
 * Tells the listener of the readings of every `everyMs` of boil time, the same that `replay --every` prints. Yields the
 * state between two slices, for the caller to hand on what it has gathered, and at last the state at the end.
 */
export async function* foldInSlices(
  source: BoilSource,
  everyMs: number,
  listener: FoldedListener,
  options: SliceOptions,
): AsyncGenerator<BoilState> {
  const folding: Folding = new Folding(
    startBoil(source.header),
    foldTools,
    {
      alarm: (transition) => listener.alarm?.(transition),
      readings: (t, readings) => listener.readings(t, readings, folding.state),
    },
    everyMs,
  );
  for await (const _ of inSlices(foldSteps(source.texts(), folding), options)) yield folding.state;
}
