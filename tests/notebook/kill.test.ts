// What was reported as kept is on disk after a kill, and the folder's lock dies with its holder.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { createInterface } from 'node:readline';
import { expect, test } from 'vitest';
import { lockFolder, openNotebook } from '../../src/notebook/open-notebook.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';

const program = fileURLToPath(new URL('appending-program.ts', import.meta.url));

/** Runs the program until it has reported so many commits, kills it, and returns the last count that it reported. */
async function killAfter(folder: string, commits: number, meanwhile: () => void): Promise<number> {
  const child = spawn(process.execPath, [program, folder], { stdio: ['ignore', 'pipe', 'inherit'] });
  let reported = 0;
  let seen = 0;
  for await (const line of createInterface(child.stdout)) {
    reported = Number(line);
    seen += 1;
    if (seen === commits) {
      meanwhile();
      child.kill('SIGKILL');
    }
  }
  if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
  expect(child.signalCode).toBe('SIGKILL');
  return reported;
}

test('ten kills lose no entry that was reported, and the boil goes on each time', { timeout: 60_000 }, async () => {
  const folder = scratchFolder();
  let lastKept = 0;
  for (let round = 0; round < 10; round += 1) {
    const reported = await killAfter(folder, 5 + round * 3, () => {
      expect(lockFolder(folder)).toBe(null);
      expect(scratchNotebook(folder, { readOnly: true }).running()?.boil).toBe('2027-04-18-sundays-run');
    });
    const notebook = openNotebook(folder);
    const kept = [...notebook.entries('latest')];
    expect(kept.length).toBeGreaterThanOrEqual(reported);
    expect(reported).toBeGreaterThan(lastKept);
    expect(kept).toEqual(kept.map((_, t) => JSON.stringify({ t, port: 'A', line: `T1=${t}` })));
    expect(notebook.boils()).toHaveLength(1);
    expect(notebook.check().damaged).toBe(false);
    notebook.close();
    lastKept = kept.length;
  }
});

test('a lock is held once, and free again when it is given back', () => {
  const folder = scratchFolder();
  const lock = lockFolder(folder);
  expect(lock).not.toBe(null);
  expect(lockFolder(folder)).toBe(null);
  // The notebook itself stays open to readers and to settings.
  scratchNotebook(folder).keepSetting('theme', 'dark');
  lock?.release();
  lock?.release();
  const next = lockFolder(folder);
  expect(next).not.toBe(null);
  next?.release();
});
