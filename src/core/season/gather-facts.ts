// Gathers the facts of a boil while its entries are folded: a look each minute, and one at the end.
import type { AlarmTransition } from '../alarms/alarm.ts';
import { alarmHistory } from '../boil/alarm-history.ts';
import type { AlarmName, PanSetup } from '../boil/entries.ts';
import { counts } from '../boil/mark-flow.ts';
import { plannedBrix } from '../boil/sap-strength.ts';
import type { BoilState } from '../boil/state.ts';
import { type UnmarkedPour, unmarkedPours } from '../boil/unmarked-pours.ts';
import type { PanReading, Stage } from '../pan/reading.ts';
import { panDesign } from '../pan/setup.ts';
import { isBurnt } from '../quantities/burnt.ts';
import { readInstrument } from '../physics/instruments.ts';
import { sapKindOf } from '../physics/sap-kinds.ts';
import { type BoilFacts, SYRUP_BRIX } from './boil-facts.ts';
import type { BoilOutcome } from './figures.ts';
import { leftInPans, takenOut } from './batches.ts';
import { cylinderFacts } from './cylinder-facts.ts';
import { joinedPans } from './joined-pans.ts';
import { poursCounted, standing, unnotedPans } from './pours-counted.ts';
import type { RaisingName } from './records.ts';

/** A look is due each minute of boil time, ms. */
export const LOOK_MS = 60_000;

/** Plain data; what the state itself forgets on the way. */
export interface Gathered {
  boilingMs: number;
  /** A probe showed the stage of some pan, or some pan was known to boil: that a pan read by hand did not boil between two readings nobody knows. */
  wasSeen: boolean;
  /** When each pan was first seen to boil, ms. */
  boiled: Map<string, number>;
  /** When each pan was seen to stand so hot that what was in it is no syrup, ms: each time anew. */
  burnt: Map<string, number[]>;
  /** Pours that were seen, the older ones of a pan too. */
  seen: UnmarkedPour[];
  called: Set<AlarmName>;
  /** When the finish of each pan was last called, ms. */
  finished: Map<string, number>;
  /** How strong each pan was on the fire, °Bx, at each look that knew it, in order. */
  strengths: Map<string, { t: number; brix: number }[]>;
  pans: Map<string, PanSetup>;
}

/** Nothing is gathered yet. */
export function startGathering(): Gathered {
  return {
    boilingMs: 0,
    wasSeen: false,
    boiled: new Map(),
    burnt: new Map(),
    seen: [],
    called: new Set(),
    finished: new Map(),
    strengths: new Map(),
    pans: new Map(),
  };
}

const BOILS: ReadonlySet<Stage> = new Set(['boiling', 'thickening', 'near-finish', 'finished']);

/** Call at each whole LOOK_MS of boil time t, ms. */
export function gather(gathered: Gathered, state: BoilState, t: number, readings: readonly PanReading[]): void {
  const boiling = readings.filter(({ stage }) => BOILS.has(stage));
  if (boiling.length > 0) gathered.boilingMs += LOOK_MS;
  const isShown = ({ stage, probe }: PanReading): boolean => stage !== 'unknown' && stage !== 'off' && probe !== null;
  if (boiling.length > 0 || readings.some(isShown)) gathered.wasSeen = true;
  for (const { pan } of boiling) if (!gathered.boiled.has(pan)) gathered.boiled.set(pan, t);
  gatherBurnt(gathered, t, readings);
  gatherStrengths(gathered, t, readings);
  gatherSeen(gathered, state);
  gatherPans(gathered, state);
}

function gatherStrengths({ strengths }: Gathered, t: number, readings: readonly PanReading[]): void {
  for (const { pan, brix, stage } of readings) {
    if (brix === null || stage === 'off') continue;
    const seen = strengths.get(pan);
    if (seen === undefined) strengths.set(pan, [{ t, brix }]);
    else seen.push({ t, brix });
  }
}

function gatherBurnt({ burnt }: Gathered, t: number, readings: readonly PanReading[]): void {
  for (const { pan, temperature_c: celsius } of readings) {
    if (!isBurnt(celsius)) continue;
    const times = burnt.get(pan);
    if (times === undefined) burnt.set(pan, [t]);
    else times.push(t);
  }
}

/** Notes that an alarm was raised; other transitions tell nothing here. */
export function gatherCall(gathered: Gathered, { alarm, event, pan, t }: AlarmTransition): void {
  if (event !== 'raised') return;
  gathered.called.add(alarm);
  if (pan !== null && (alarm === 'finish' || alarm === 'past-finish')) gathered.finished.set(pan, t);
}

/** A pan remembers its last few; what is older than those was dropped and stands as it was last seen. */
function gatherSeen(gathered: Gathered, state: BoilState): void {
  const dropped = gathered.seen.filter(({ pan, at }) => at < (state.pans[pan]?.course.seen[0]?.at ?? -Infinity));
  gathered.seen = [...dropped, ...unmarkedPours(state)];
}

function gatherPans({ pans }: Gathered, state: BoilState): void {
  for (const pan of state.header.pans ?? []) if (pan.role !== 'reference') pans.set(pan.id, pan);
}

/** The facts at the end, t ms. */
export function factsAtEnd(gathered: Gathered, state: BoilState, t: number): BoilFacts {
  gatherSeen(gathered, state);
  gatherPans(gathered, state);
  const pans = [...gathered.pans.values()];
  const taken = takenOut(state, gathered);
  const left = leftInPans(state, gathered, t);
  return {
    seconds: t / 1000,
    boilingSeconds: gathered.wasSeen ? gathered.boilingMs / 1000 : null,
    unseenSeconds: state.watchedFrom / 1000,
    pans: pans.map(({ id, name }) => ({ id, name: name ?? id })),
    saps: [...new Set(pans.map(({ sap }) => sapKindOf(sap ?? 'maple').key))],
    joined: joinedPans(pans, standing(state)),
    pours: poursCounted(state, gathered),
    taken: taken.batches,
    left: left.batches,
    unnoted: unnotedPans(state, gathered.boiled),
    takenUntold: [...new Set(taken.untold)],
    leftUntold: left.untold,
    cylinder: cylinderFacts(state.marks),
    heats: [...new Set(pans.flatMap(({ heat }) => (heat === undefined ? [] : [heat.kind])))],
    raised: state.history.earlier + state.history.raisings.length,
    noUse: noUseNames(state),
    outcomes: outcomesOf(gathered),
    density: lastDensity(state, gathered),
    plannedBrix: plannedBrix(state.header),
    finishBrix: finishOf(state, pans),
  };
}

/** Of the last pan on the fire; where all were taken away, of the last that was. */
function finishOf({ designs }: BoilState, pans: readonly PanSetup[]): number | null {
  const last = Object.values(designs).findLast(({ role }) => role === 'syrup');
  const gone = pans.at(-1);
  return last?.finishBrix ?? (gone === undefined ? null : panDesign(gone).finishBrix);
}

function noUseNames(state: BoilState): RaisingName[] {
  return alarmHistory(state.history, state.marks, state.header)
    .raisings.filter(({ noUse }) => noUse)
    .map(({ alarm, pan, port, raisedAt: raised }) => ({ alarm, pan, port, raised }));
}

function outcomesOf({ called, burnt }: Gathered): BoilOutcome[] {
  const outcomes: BoilOutcome[] = [called.has('finish') || called.has('past-finish') ? 'finished' : 'unfinished'];
  if (called.has('past-finish')) outcomes.push('past-finish');
  if (called.has('scorch-risk')) outcomes.push('scorch-risk');
  if (burnt.size > 0) outcomes.push('burnt');
  return outcomes;
}

/** A sample so far from what its pan was later is of something else than what came of it, °Bx (judgement). */
const MOVED_BRIX = 1;

/** By when it was read, not typed. Of several pans the last one that held syrup: another's sap says nothing of it. */
function lastDensity(state: BoilState, gathered: Gathered): BoilFacts['density'] {
  const last = new Map<string, { pan: string; at: number; t: number; brix: number; sigma: number }>();
  for (const { mark, at, t } of state.marks.filter(counts)) {
    if (mark.kind !== 'density' || at < (last.get(mark.pan)?.at ?? -Infinity)) continue;
    const design = state.designs[mark.pan];
    const read = design === undefined ? null : readInstrument(mark, design.shares);
    if (read !== null) last.set(mark.pan, { pan: mark.pan, at, t, brix: read.brix, sigma: read.sigma });
  }
  const pans = [...last.values()].sort((one, other) => one.at - other.at);
  const found = pans.findLast(({ brix }) => brix >= SYRUP_BRIX) ?? pans.at(-1);
  if (found === undefined) return null;
  const { pan, at, t, brix, sigma } = found;
  const isBefore = wasPoured(state, pan, at) || hasMoved(gathered, pan, t);
  return { brix, sigma, ...(isBefore && { before: true as const }) };
}

/** Whether something went into the pan, or from it into another, after that time, ms. */
const wasPoured = ({ marks }: BoilState, pan: string, at: number): boolean =>
  marks.some(
    (each) =>
      !each.withdrawn &&
      each.at > at &&
      ((each.mark.kind === 'top-up' && each.mark.pan === pan) ||
        (each.mark.kind === 'transfer' && (each.mark.to === pan || each.mark.from === pan))),
  );

/** Whether the pan's strength is another than just after it was measured, ms. */
function hasMoved({ strengths }: Gathered, pan: string, measuredT: number): boolean {
  const since = strengths.get(pan)?.filter(({ t }) => t >= measuredT) ?? [];
  const [first, last] = [since[0], since.at(-1)];
  return first !== undefined && last !== undefined && Math.abs(last.brix - first.brix) > MOVED_BRIX;
}
