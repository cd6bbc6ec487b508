// The practice boil as a source: simulated pans that go on by themselves and react to what the person notes.
import type { Entry } from '../core/boil/entries.ts';
import { practiceScenario } from '../core/simulation/practice-scenario.ts';
import type { Scenario } from '../core/simulation/scenario.ts';
import { hearMark, stepSimulation } from '../core/simulation/simulate.ts';
import { startSimulation } from '../core/simulation/state.ts';
import { PacedSource } from './paced-source.ts';
import type { Source, Timekeeper } from './source.ts';

export interface PracticeSourceOptions {
  /** Another seed is another boil. */
  seed: number;
  /** Runs as many times as fast as the practice is to be. */
  timekeeper: Timekeeper;
  /** The practice boil of the seed unless said. */
  scenario?: Scenario;
}

/** The pans are never simulated further ahead than this of what was handed on: a clock that is set back finds them there, ms. */
const STEP_MS = 1000;

/**
 * Ends when the simulated boil does. hear() is to be called before the heard entry is used: it first hands on all
 * that is due at or before the entry's t, so that the boil's entries stay in order of t.
 */
export function practiceSource({
  seed,
  timekeeper,
  scenario = practiceScenario(seed),
}: PracticeSourceOptions): Required<Source> {
  const state = startSimulation(scenario);
  let due: Entry[] = [];
  let steppedTo = -STEP_MS;
  const paced = new PacedSource(
    {
      next(t) {
        while (due.length === 0 && steppedTo < t) {
          steppedTo = Math.min(t, steppedTo + STEP_MS);
          due = stepSimulation(state, steppedTo).reverse();
        }
        return (due.at(-1)?.t ?? Infinity) <= t ? due.pop()! : null;
      },
      ended: () => state.ended && due.length === 0 && state.pending.length === 0,
    },
    timekeeper,
  );
  return {
    start: (listener) => paced.start(listener),
    stop: () => paced.stop(),
    hear(entry) {
      paced.catchUp(entry.t);
      hearMark(state, entry);
    },
  };
}
