// Cuts the power of a program that keeps a boil, at any moment and with any sectors lost, and looks at what is left.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { readChanges, type Change } from './change-log.ts';
import { Disk } from './cut-disk.ts';
import { entryOf } from './told-entry.ts';

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url));

/** Why the layer cannot be had on this machine; null where it can. */
export function whyNoPowerCuts(): string | null {
  if (process.platform !== 'linux') return 'the file layer is made for Linux';
  return spawnSync('cc', ['--version']).status === 0 ? null : 'there is no C compiler: install gcc';
}

export interface CutResult {
  /** How many entries the program had told of at the cut, and how many are there. */
  told: number;
  there: number;
  /** What does not hold; empty when all does. */
  faults: string[];
}

/** Runs the program once and cuts it `rounds` times; with `failEvery` each n-th sync fails too. */
export function cutPower(rounds: number, seed: number, entries: number, failEvery = 0): CutResult[] {
  const place = mkdtempSync(join(tmpdir(), 'panwarden-power-'));
  try {
    const folder = join(place, 'data');
    const changes = recorded(place, folder, seed, entries, failEvery);
    let state = seed;
    const random = () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
    return Array.from({ length: rounds }, () => cutAt(changes, Math.floor(random() * changes.length), folder, random));
  } finally {
    rmSync(place, { recursive: true, force: true });
  }
}

function recorded(place: string, folder: string, seed: number, entries: number, failEvery: number): Change[] {
  const [layer, log] = [join(place, 'file-log.so'), join(place, 'log')];
  const built = spawnSync('cc', ['-shared', '-fPIC', '-o', layer, here('file-log.c'), '-ldl', '-lpthread'], {
    encoding: 'utf8',
  });
  if (built.status !== 0) throw new Error(built.stderr);
  spawnSync('mkdir', ['-p', folder]);
  const run = spawnSync(process.execPath, [here('told-program.ts'), folder, String(entries), String(seed)], {
    encoding: 'utf8',
    env: {
      ...process.env,
      LD_PRELOAD: layer,
      POWER_CUT_FOLDER: folder,
      POWER_CUT_LOG: log,
      POWER_CUT_FAIL_EVERY: String(failEvery),
    },
  });
  if (run.status !== 0) throw new Error(run.stderr);
  return readChanges(readFileSync(log));
}

function cutAt(changes: readonly Change[], at: number, folder: string, random: () => number): CutResult {
  rmSync(folder, { recursive: true, force: true });
  const disk = new Disk();
  for (const change of changes.slice(0, at)) disk.play(change);
  const told = lastTold(changes.slice(0, at));
  disk.cut(random);
  // Shared memory does not outlive the power.
  rmSync(join(folder, 'notebook.sqlite-shm'), { force: true });
  return { told, ...leftIn(folder, told) };
}

/** The last whole count that the program wrote down; it wrote it after the notebook had kept it. */
function lastTold(changes: readonly Change[]): number {
  const file = changes.find((change) => change.kind === 'open' && change.path.endsWith('/told'));
  const id = file?.kind === 'open' ? file.id : -1;
  const last = changes.findLast((change) => change.kind === 'write' && change.id === id);
  return last?.kind === 'write' ? Number(last.bytes.toString()) : 0;
}

function leftIn(folder: string, told: number): Omit<CutResult, 'told'> {
  if (!existsSync(join(folder, 'notebook.sqlite'))) {
    return { there: 0, faults: told > 0 ? ['there is no notebook'] : [] };
  }
  try {
    const notebook = openNotebook(folder);
    try {
      const texts = notebook.boils().length === 0 ? [] : [...notebook.entries('latest')];
      const lines = texts.at(-1)?.includes('"ended"') ? texts.slice(0, -1) : texts;
      const check = notebook.check();
      const faults = [...notebook.remarks, ...(check.damaged ? check.findings : [])];
      if (lines.length < told) faults.push(`${told} entries were kept, and ${lines.length} are there`);
      if (lines.some((text, index) => text !== entryOf(index)))
        faults.push('the entries are no prefix of what was kept');
      return { there: lines.length, faults };
    } finally {
      notebook.close();
    }
  } catch (error) {
    return { there: 0, faults: [(error as Error).message] };
  }
}
