// What a replay costs: the fold against bare JSON.parse of the same lines, its cost an entry from 1 to 200 h, and what its state takes.
import { serialize } from 'node:v8';
import { toppedUpPots } from '../../fixtures/boils/bench-day.ts';
import type { Entry } from '../../src/core/boil/entries.ts';
import { applyEntry, type BoilState, startBoil } from '../../src/core/boil/fold.ts';
import { runSimulation } from '../../src/core/simulation/simulate.ts';
import { startSimulation } from '../../src/core/simulation/state.ts';
import { foldTools } from '../../src/host/fold-tools.ts';
import { parseEntry } from '../../src/protocol/recording.ts';
import { median } from '../../src/core/pan/robust-statistics.ts';

const ROUNDS = 7;
const HOUR_MS = 3_600_000;
/** At these hours the cost of the hour before them is told. */
const LOOKS_H = [1, 10, 100, 200];
const KIB = 1024;

export function replay(): Promise<void> {
  againstBare(8, 14);
  alongTheBoil(4);
  return Promise.resolve();
}

/** CPU time of this thread alone, ms: what others do on the machine, and the collector's own threads, are not in it. */
function threadMs(): number {
  const { user, system } = process.threadCpuUsage();
  return (user + system) / 1000;
}

function costOf(work: () => void): number {
  const from = threadMs();
  work();
  return threadMs() - from;
}

function againstBare(pans: number, hours: number): void {
  const simulation = startSimulation(toppedUpPots(pans, hours, 'Tarn Hollow, invented'));
  const lines = [...runSimulation(simulation)].map((entry) => JSON.stringify(entry));
  const readings = lines.reduce((sum, line) => sum + (line.match(/T\d+=/g)?.length ?? 0), 0);
  const rounds = Array.from({ length: ROUNDS }, () => {
    const bare = costOf(() => lines.forEach((line) => JSON.parse(line)));
    let state = startBoil(simulation.scenario.header);
    const fold = costOf(() => {
      for (const line of lines) {
        const parsed = parseEntry(line);
        if (parsed.ok) state = applyEntry(state, parsed.entry, foldTools);
      }
    });
    return { bare, fold, state };
  }).slice(2);
  const bare = median(rounds.map((round) => round.bare));
  const fold = median(rounds.map((round) => round.fold));
  const least = Math.min(...rounds.map((round) => round.fold)) / Math.min(...rounds.map((round) => round.bare));
  const { state } = rounds[0]!;
  console.log(`  ${pans} pans, 1 Hz, ${hours} h, invented: ${lines.length} entries, ${readings} readings`);
  console.log(
    `  CPU time of the thread, lines in memory; middle of ${rounds.length} rounds after 2 to warm up, bare and fold in turn`,
  );
  console.log(`  bare JSON.parse of the lines      ${bare.toFixed(0)} ms`);
  console.log(
    `  lines, pan model and alarms       ${fold.toFixed(0)} ms = ${(fold / bare).toFixed(0)} x bare (goal 40, wish 20); fastest over fastest ${least.toFixed(0)} x`,
  );
  console.log(`  a reading and pan                 ${((1000 * fold) / readings).toFixed(2)} us`);
  console.log(`  state afterwards                  ${sizes(state, pans)}`);
}

function alongTheBoil(pans: number): void {
  const hours = LOOKS_H.at(-1)!;
  const simulation = startSimulation(toppedUpPots(pans, hours, 'Tarn Hollow, invented'));
  console.log(`\n  one boil of ${pans} pans, 1 Hz, ${hours} h: the fold alone, CPU time an entry in the hour before`);
  console.log('       hour   us an entry    marks   state');
  let state = startBoil(simulation.scenario.header);
  let batch: Entry[] = [];
  let spentMs = 0;
  let entries = 0;
  let hour = 0;
  const fold = (): void => {
    spentMs += costOf(() => {
      for (const entry of batch) state = applyEntry(state, entry, foldTools);
    });
    entries += batch.length;
    batch = [];
  };
  const ends = (): void => {
    fold();
    hour += 1;
    if (LOOKS_H.includes(hour)) {
      const cells = [String(hour).padStart(11), ((1000 * spentMs) / entries).toFixed(1).padStart(13)];
      console.log(`${cells.join('')}${String(state.marks.length).padStart(10)}   ${sizes(state, pans)}`);
    }
    spentMs = 0;
    entries = 0;
  };
  for (const entry of runSimulation(simulation)) {
    if (entry.t >= (hour + 1) * HOUR_MS) ends();
    batch.push(entry);
    if (batch.length === 1000) fold();
  }
  if (hour < hours) ends();
}

function sizes(state: BoilState, pans: number): string {
  const all = serialize(state).length / KIB;
  const models = serialize(state.pans).length / KIB / pans;
  return `${all.toFixed(0)} KiB packed by v8, of which ${models.toFixed(0)} a pan`;
}
