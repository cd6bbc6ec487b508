// What tuning a whole season costs: 30 invented boils of 10 h and four pots under five settings files, by the command itself.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { seasonDay } from '../../fixtures/boils/bench-day.ts';
import type { Header } from '../../src/core/boil/entries.ts';
import { runSimulation } from '../../src/core/simulation/simulate.ts';
import { startSimulation } from '../../src/core/simulation/state.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';

const BOILS = 30;
const HOURS = 10;
const PROGRAM = fileURLToPath(new URL('../../src/cli/main.ts', import.meta.url));

/** Leads and deadbands move calls alone. */
const CALLS_ALONE = [
  { near_finish_lead_s: 300 },
  { near_finish_lead_s: 900, scorch_lead_s: 480 },
  { near_finish_deadband: 3 },
  { scorch_lead_s: 120, low_level_lead_s: 1200 },
  { near_finish_lead_s: 1200, near_finish_deadband: 1.2 },
].map((settings) => ({ settings }));

/** Three of those, one that moves the finish, and one under which a probe tells something else. */
const mixed = (header: Header): object[] => [
  ...CALLS_ALONE.slice(0, 3),
  { settings: { finish_probability: 0.8 } },
  { probes: header.probes!.map((probe, place) => (place === 0 ? { ...probe, offset_c: 0.2 } : probe)) },
];

export async function seasonTune(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-bench-'));
  try {
    const { header, readings } = await makeSeason(join(folder, 'notebook'));
    console.log(
      `  ${BOILS} boils of ${HOURS} h and 4 pots, invented: ${readings} readings; ${availableParallelism()} cores`,
    );
    await tuneWith(folder, 'five that move calls alone', CALLS_ALONE, readings);
    await tuneWith(folder, 'three such, a finish probability, a probe offset', mixed(header), readings);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function makeSeason(folder: string): Promise<{ header: Header; readings: number }> {
  const notebook = openNotebook(folder);
  let readings = 0;
  let header: Header | null = null;
  for (let day = 1; day <= BOILS; day += 1) {
    const simulation = startSimulation(seasonDay(day, HOURS));
    header = simulation.scenario.header;
    const lines = [JSON.stringify(header), ...[...runSimulation(simulation)].map((entry) => JSON.stringify(entry))];
    readings += lines.reduce((sum, line) => sum + (line.match(/T\d+=/g)?.length ?? 0), 0);
    await notebook.importRecording([`${lines.join('\n')}\n`], `season day ${day}`);
  }
  notebook.close();
  return { header: header!, readings };
}

async function tuneWith(folder: string, what: string, patches: readonly object[], readings: number): Promise<void> {
  const files = patches.flatMap((patch, place) => {
    const file = join(folder, `settings-${place + 1}.json`);
    writeFileSync(file, JSON.stringify(patch));
    return ['--with', file];
  });
  const fromMs = performance.now();
  const program = spawn(process.execPath, [PROGRAM, 'tune', '--json', '--data', join(folder, 'notebook'), ...files], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let used: Used | null = null;
  const timer = setInterval(() => (used = usedBy(program.pid!) ?? used), 50);
  let lines = 0;
  program.stdout.on('data', (piece: Buffer) => (lines += piece.toString().split('\n').length - 1));
  const code = await new Promise<number | null>((resolve) => program.once('close', resolve));
  clearInterval(timer);
  const seconds = (performance.now() - fromMs) / 1000;
  console.log(`  ${what}: ${lines} lines${code === 0 ? '' : `, ended with ${code}`}`);
  console.log(`    whole command                   ${seconds.toFixed(1)} s (goal on 2 cores: 20)`);
  // The compiler does not see that the timer sets it.
  const known = used as Used | null;
  const [cpu, memory] = known === null ? ['not known here', 'not known here'] : [`${known.cpuS} s`, `${known.mb} MB`];
  console.log(`    processor time of all threads   ${cpu}`);
  console.log(`    most memory                     ${memory} (goal: 300)`);
  console.log(`    readings and settings a second  ${Math.round((readings * patches.length) / seconds)}`);
}

interface Used {
  cpuS: number;
  /** The most that it ever held at once. */
  mb: number;
}

/** Linux counts processor time in hundredths of a second. */
const TICKS_A_SECOND = 100;

/** What a process used so far, as Linux counts it; null elsewhere, and once it is over. */
function usedBy(pid: number): Used | null {
  try {
    const kib = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    // Behind the name, which may hold blanks: user and system time are the 12th and 13th field.
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    if (kib === undefined) return null;
    const cpuS = Math.round((Number(fields[11]) + Number(fields[12])) / TICKS_A_SECOND);
    return { cpuS, mb: Math.round((Number(kib) * 1024) / 1e6) };
  } catch {
    return null;
  }
}
