// Works out what a boil's entries tell, in slices, and keeps it in the notebook until other entries come or another version of this program does it otherwise.
import type { AlarmHistory } from '../core/boil/alarm-history.ts';
import type { Entry } from '../core/boil/entries.ts';
import { startBoil } from '../core/boil/fold.ts';
import { boilView, type BoilView } from '../core/boil/view.ts';
import type { BoilFacts } from '../core/season/boil-facts.ts';
import { factsAtEnd, gather, gatherCall, LOOK_MS, startGathering } from '../core/season/gather-facts.ts';
import type { Notebook } from '../notebook/contract.ts';
import { parseEntry } from '../protocol/recording.ts';
import type { MachineClock } from './clock.ts';
import { figuresKey } from './figures-key.ts';
import { foldTools } from './fold-tools.ts';
import { Folding, gapStart } from './folding.ts';
import { inSlices } from './slices.ts';

const ROUND = 11;
const FACTS_KEY = figuresKey('facts', ROUND);
const LOG_KEY = figuresKey('log', ROUND);

/** What was noted and called, for the boil's page; too long to be read for each boil of a list. */
export interface BoilLog {
  marks: BoilView['marks'];
  history: AlarmHistory;
}

type Kept = Pick<Notebook, 'figures'>;
/** What a notebook must be able to do for boils to be worked out. */
export type Workable = Pick<Notebook, 'header' | 'entries' | 'keepFigures'>;

/** null while they are not worked out. */
export const factsOf = (notebook: Kept, boil: string): BoilFacts | null =>
  notebook.figures(boil, FACTS_KEY) as BoilFacts | null;

/** What was kept of a boil's marks and alarms; null until it was worked out. */
export const logOf = (notebook: Kept, boil: string): BoilLog | null =>
  notebook.figures(boil, LOG_KEY) as BoilLog | null;

/** Folds the whole boil, never holding anything up for longer than a slice, and keeps what comes of it. */
export async function workOutFacts(notebook: Workable, boil: string, machine: MachineClock): Promise<BoilFacts> {
  const gathered = startGathering();
  const folding: Folding = new Folding(
    startBoil(notebook.header(boil)),
    foldTools,
    {
      alarm: (transition) => gatherCall(gathered, transition),
      readings: (t, readings) => gather(gathered, folding.state, t, readings),
    },
    LOOK_MS,
  );
  let t = 0;
  for await (const step of inSlices(stepsOf(notebook.entries(boil)), machine)) {
    if (typeof step === 'number') folding.reach(step);
    else {
      folding.take(step, '');
      t = step.t;
    }
  }
  const { state } = folding;
  const facts = factsAtEnd(gathered, state, t);
  notebook.keepFigures(boil, FACTS_KEY, facts);
  const { marks, history } = boilView(state, t);
  const log: BoilLog = { marks, history };
  notebook.keepFigures(boil, LOG_KEY, log);
  return facts;
}

/** The entries, and between two that lie far apart the moments (ms) up to which time has run: each is a short piece of work. */
function* stepsOf(texts: Iterable<string>): Generator<Entry | number> {
  let t = 0;
  for (const text of texts) {
    const parsed = parseEntry(text);
    if (!parsed.ok) continue;
    const { entry } = parsed;
    const until = 'run' in entry && entry.run === 'gap' ? gapStart(entry) : entry.t;
    for (let at = t + LOOK_MS; at < until; at += LOOK_MS) yield at;
    yield entry;
    t = entry.t;
  }
}
