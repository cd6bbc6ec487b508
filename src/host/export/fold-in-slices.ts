// Runs a kept boil through the fold for an export, in short slices, so that a live boil beside it is never kept waiting.
import type { AlarmTransition } from '../../core/alarms/alarm.ts';
import type { Entry } from '../../core/boil/entries.ts';
import { startBoil } from '../../core/boil/fold.ts';
import type { BoilState } from '../../core/boil/fold.ts';
import type { PanReading } from '../../core/pan/reading.ts';
import { parseEntry } from '../../protocol/recording.ts';
import { Folding, gapStart } from '../folding.ts';
import { foldTools } from '../fold-tools.ts';
import type { BoilSource } from './boil-source.ts';
import { inSlices } from './in-slices.ts';
import type { SliceOptions } from './in-slices.ts';

export interface FoldedListener {
  /** At every whole multiple of the interval, after all entries up to that t; `state` is that of this moment. */
  readings(t: number, readings: PanReading[], state: BoilState): void;
  alarm?(transition: AlarmTransition): void;
}

/** Silence is passed in steps of this length, so that a year of it is no single step. */
const LONGEST_STEP_MS = 60_000;

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
  for await (const _ of inSlices(stepsOf(source, folding), options)) yield folding.state;
}

/** One small step of the fold at a time. */
function* stepsOf(source: BoilSource, folding: Folding): Generator<undefined> {
  let reached = 0;
  for (const text of source.texts()) {
    const parsed = parseEntry(text);
    if (!parsed.ok) continue;
    const { entry } = parsed;
    yield* quietSteps(folding, reached, quietEnd(entry));
    folding.enterGapOf(entry);
    yield* quietSteps(folding, Math.max(reached, quietEnd(entry)), entry.t);
    folding.take(entry, text);
    reached = entry.t;
    yield undefined;
  }
  folding.reach(reached);
}

function* quietSteps(folding: Folding, from: number, to: number): Generator<undefined> {
  for (let t = from + LONGEST_STEP_MS; t < to; t += LONGEST_STEP_MS) {
    folding.reach(t);
    yield undefined;
  }
}

function quietEnd(entry: Entry): number {
  return 'run' in entry && entry.run === 'gap' ? gapStart(entry) : entry.t;
}
