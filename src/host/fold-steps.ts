// Runs the texts of a boil through a fold in short steps, so that neither a long silence nor a gap is one long step.
import type { Entry } from '../core/boil/entries.ts';
import { parseEntry } from '../protocol/recording.ts';
import { type Folding, gapStart } from './folding.ts';

/** Silence is passed in steps of this length, so that a year of it is no single step, ms. */
const LONGEST_STEP_MS = 60_000;

/** Where the fold stands after a step. */
export interface FoldStep {
  /** Everything up to here is done, ms. */
  t: number;
  /** The place of the text that comes next. */
  next: number;
  /** What this step applied; null for time that passed. */
  entry: Entry | null;
  /** Nothing is known now, for the program did not run. */
  inGap: boolean;
}

/** Texts that are no entry are passed over. After the last, time is run to its t. */
export function* foldSteps(texts: Iterable<string>, folding: Folding): Generator<FoldStep> {
  let reached = 0;
  let next = 0;
  for (const text of texts) {
    const parsed = parseEntry(text);
    if (!parsed.ok) {
      next += 1;
      continue;
    }
    const { entry } = parsed;
    const quietT = quietEnd(entry);
    yield* quietSteps(folding, reached, quietT, next, false);
    folding.enterGapOf(entry);
    yield* quietSteps(folding, Math.max(reached, quietT), entry.t, next, true);
    folding.take(entry, text);
    reached = entry.t;
    next += 1;
    yield { t: reached, next, entry, inGap: false };
  }
  folding.reach(reached);
}

function* quietSteps(folding: Folding, from: number, to: number, next: number, inGap: boolean): Generator<FoldStep> {
  for (let t = from + LONGEST_STEP_MS; t < to; t += LONGEST_STEP_MS) {
    folding.reach(t);
    yield { t, next, entry: null, inGap };
  }
}

function quietEnd(entry: Entry): number {
  return 'run' in entry && entry.run === 'gap' ? gapStart(entry) : entry.t;
}
