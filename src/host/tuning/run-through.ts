// Runs a whole kept boil through the fold at once under several headers, for what each calls and how strong each pan was believed to be.
import { isDeepStrictEqual } from 'node:util';
import type { AlarmTransition } from '../../core/alarms/alarm.ts';
import type { Entry, Header } from '../../core/boil/entries.ts';
import { startBoil, strengthsNow } from '../../core/boil/fold.ts';
import type { BoilState } from '../../core/boil/fold.ts';
import { withoutLeads } from '../../core/boil/lead-times.ts';
import type { StrengthSeen } from '../../core/tuning/truth.ts';
import { foldTools } from '../fold-tools.ts';
import { Folding } from '../folding.ts';

/** What came of a boil under one header. */
export interface RunThrough {
  state: BoilState;
  /** What a replay prints as alarms: raised, escalated, cleared. */
  calls: AlarmTransition[];
  /** By pan, in order of t; empty where no interval was asked for. */
  seen: Map<string, StrengthSeen[]>;
}

/**
 * One run for each header, in their order, with the same calls as `replay` of each alone. Headers that differ in lead
 * times alone share one fold, for all that they change is what is called. `lookEveryMs` is how often the strengths are
 * looked at in the fold of the first, ms of boil time.
 */
export function runThrough(headers: readonly Header[], entries: Iterable<Entry>, lookEveryMs: number): RunThrough[] {
  const folds: OneModel[] = [];
  for (const group of alike(headers)) folds.push(new OneModel(group, folds.length === 0 ? lookEveryMs : null));
  let last: Entry | null = null;
  for (const entry of entries) {
    for (const fold of folds) fold.folding.take(entry, '');
    last = entry;
  }
  if (last !== null) for (const fold of folds) fold.folding.reach(last.t);
  const runs = folds.flatMap((fold) => fold.runs());
  return headers.map((header) => runs.find((run) => run.header === header)!.run);
}

/** In the order of the first of each. */
function alike(headers: readonly Header[]): Header[][] {
  const groups: { model: Header; headers: Header[] }[] = [];
  for (const header of headers) {
    const model = withoutLeads(header);
    const group = groups.find((one) => isDeepStrictEqual(one.model, model));
    if (group === undefined) groups.push({ model, headers: [header] });
    else group.headers.push(header);
  }
  return groups.map((group) => group.headers);
}

const CONDITION_EVENTS: readonly string[] = ['raised', 'escalated', 'cleared'];
const isCall = ({ event }: AlarmTransition): boolean => CONDITION_EVENTS.includes(event);

/** One fold, with the alarms of each of its headers. */
class OneModel {
  readonly folding: Folding;
  readonly #headers: readonly Header[];
  readonly #calls: AlarmTransition[] = [];
  readonly #seen = new Map<string, StrengthSeen[]>();

  constructor(headers: readonly Header[], lookEveryMs: number | null) {
    this.#headers = headers;
    const [first, ...others] = headers;
    const listener = {
      alarm: (transition: AlarmTransition) => void (isCall(transition) && this.#calls.push(transition)),
      reached: (t: number, state: BoilState) => {
        for (const { pan, brix } of strengthsNow(state, t)) {
          const looks = this.#seen.get(pan) ?? [];
          if (looks.length === 0) this.#seen.set(pan, looks);
          looks.push({ t, brix });
        }
      },
    };
    this.folding = new Folding(startBoil(first!, others), foldTools, listener, lookEveryMs);
  }

  runs(): { header: Header; run: RunThrough }[] {
    const { state } = this.folding;
    return this.#headers.map((header, place) => {
      const calls = place === 0 ? this.#calls : state.beside[place - 1]!.fresh.filter(isCall);
      return { header, run: { state, calls, seen: this.#seen } };
    });
  }
}
