// What a replay costs: 14 h of four pans at 1 Hz, against bare JSON.parse of the same lines, and memory over long boils.
import { execFile } from 'node:child_process';
import { createReadStream, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { applyEntry, type BoilState, startBoil } from '../../src/core/boil/fold.ts';
import { foldTools } from '../../src/host/fold-tools.ts';
import { readRecording } from '../../src/protocol/recording.ts';
import { middleMilliseconds } from './timing.ts';

const run = promisify(execFile);

export async function replay(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-bench-'));
  const file = join(folder, 'long-day.boil.jsonl');
  try {
    await run(process.execPath, ['fixtures/make-recordings.ts', '--bench', file]);
    const lines = readFileSync(file, 'utf8').trimEnd().split('\n');
    const readings = lines.reduce((sum, line) => sum + (line.match(/T\d+=/g)?.length ?? 0), 0);
    const bare = await middleMilliseconds(5, () => lines.forEach((line) => JSON.parse(line)));
    const fold = await middleMilliseconds(5, () => foldFile(file).then(() => undefined));
    const whole = await middleMilliseconds(3, async () => {
      await run(process.execPath, ['src/cli/main.ts', 'replay', file, '--json', '--every', '60'], {
        maxBuffer: 1 << 28,
      });
    });
    console.log(`  ${lines.length} entries, ${readings} readings (14 h, 4 pans, 1 Hz)`);
    console.log(`  bare JSON.parse of its lines      ${bare.toFixed(0)} ms`);
    console.log(
      `  codec and fold, in this process   ${fold.toFixed(0)} ms = ${(fold / bare).toFixed(1)} x bare, ${((1000 * fold) / readings).toFixed(2)} us a reading and pan`,
    );
    console.log(`  the whole replay command          ${whole.toFixed(0)} ms (goal: at most 2000)`);
    const state = await foldFile(file);
    console.log(
      `  state of the fold afterwards      ${(JSON.stringify(state).length / 1024 / 4).toFixed(0)} KiB a pan as text`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function foldFile(file: string): Promise<BoilState | null> {
  let state: BoilState | null = null;
  for await (const item of readRecording(createReadStream(file))) {
    if (item.kind === 'header') state = startBoil(item.header);
    else if (item.kind === 'entry' && state !== null) applyEntry(state, item.entry, foldTools);
  }
  return state;
}
