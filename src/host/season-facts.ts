// Works out what a boil's entries tell, in slices, and keeps it in the notebook until other entries come or another version of this program does it otherwise.
import { readFileSync } from 'node:fs';
import { type AlarmHistory, alarmHistory } from '../core/boil/alarm-history.ts';
import { startBoil } from '../core/boil/fold.ts';
import type { BoilView } from '../core/boil/view.ts';
import type { BoilFacts } from '../core/season/boil-facts.ts';
import { factsAtEnd, gather, gatherCall, LOOK_MS, startGathering } from '../core/season/gather-facts.ts';
import type { Notebook } from '../notebook/contract.ts';
import { parseEntry } from '../protocol/recording.ts';
import type { MachineClock } from './clock.ts';
import { foldTools } from './fold-tools.ts';
import { Folding } from './folding.ts';
import { inSlices } from './slices.ts';

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
  version: string;
};
/** To be raised whenever the model or the facts change between two versions of the program. */
const ROUND = 1;
const FACTS_KEY = `facts ${version} ${ROUND}`;
const LOG_KEY = `log ${version} ${ROUND}`;

/** What was noted and called, for the boil's page; too long to be read for each boil of a list. */
export interface BoilLog {
  marks: BoilView['marks'];
  history: AlarmHistory;
}

type Kept = Pick<Notebook, 'figures'>;

/** null while they are not worked out. */
export const factsOf = (notebook: Kept, boil: string): BoilFacts | null =>
  notebook.figures(boil, FACTS_KEY) as BoilFacts | null;

export const logOf = (notebook: Kept, boil: string): BoilLog | null =>
  notebook.figures(boil, LOG_KEY) as BoilLog | null;

/** Folds the whole boil, never holding anything up for longer than a slice, and keeps what comes of it. */
export async function workOutFacts(notebook: Notebook, boil: string, machine: MachineClock): Promise<BoilFacts> {
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
  for await (const text of inSlices(notebook.entries(boil), machine)) {
    const parsed = parseEntry(text);
    if (!parsed.ok) continue;
    folding.take(parsed.entry, text);
    t = parsed.entry.t;
  }
  const { state } = folding;
  const facts = factsAtEnd(gathered, state, t);
  notebook.keepFigures(boil, FACTS_KEY, facts);
  const marks = state.marks.map(({ t: noted, at, mark, withdrawn, questioned }) => ({
    ...{ t: noted, at, mark, withdrawn, questioned },
  }));
  const log: BoilLog = { marks, history: alarmHistory(state.history, state.marks) };
  notebook.keepFigures(boil, LOG_KEY, log);
  return facts;
}
