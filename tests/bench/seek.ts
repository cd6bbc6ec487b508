// What it costs to look anywhere in a long boil: 14 h of eight pans at 1 Hz read in the background, then sought at random.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { toppedUpPots } from '../../fixtures/boils/bench-day.ts';
import { writeBenchRecording } from '../../fixtures/make-recordings.ts';
import type { Header } from '../../src/core/boil/entries.ts';
import { nextUniform, randomStream } from '../../src/core/simulation/random.ts';
import { systemClock } from '../../src/host/clock.ts';
import { ReplayView } from '../../src/host/replay/replay-view.ts';

const SEEKS = 200;
const pause = (): Promise<void> => new Promise((goOn) => setTimeout(goOn, 1));

export async function seek(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-bench-'));
  const file = join(folder, 'long-day.boil.jsonl');
  try {
    await writeBenchRecording(file, toppedUpPots(8, 14, 'Fourteen hours'));
    const [head, ...texts] = readFileSync(file, 'utf8').trimEnd().split('\n');
    const header = JSON.parse(head!) as Header;
    const loop = watchLoop();
    const startedMs = performance.now();
    const view = new ReplayView({ boil: 'b', title: 'long', header, texts }, systemClock(), () => {}, 0);
    while (view.snapshot().replay!.readUntil < view.snapshot().replay!.length) await pause();
    console.log(`  ${texts.length} entries read in the background in ${Math.round(performance.now() - startedMs)} ms`);
    console.log(`  keyframes take ${(view.keptBytes / 1e6).toFixed(1)} MB`);
    const spent = await seeks(view);
    console.log(
      `  ${SEEKS} seeks: middle ${at(spent, 0.5)}, 95 % ${at(spent, 0.95)}, longest ${at(spent, 1)} ms (goal: 50)`,
    );
    console.log(`  the event loop was held up at most ${loop.stop().toFixed(0)} ms (goal: 200)`);
    view.close();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const at = (sorted: readonly number[], share: number): string =>
  sorted[Math.ceil(share * sorted.length) - 1]!.toFixed(0);

async function seeks(view: ReplayView): Promise<number[]> {
  const { length } = view.snapshot().replay!;
  const stream = randomStream(1, 'seek');
  const spent: number[] = [];
  for (let count = 0; count < SEEKS; count += 1) {
    const t = Math.floor(nextUniform(stream) * length);
    const fromMs = performance.now();
    view.seek(t);
    while (!view.isThere) await new Promise<void>((goOn) => setImmediate(goOn));
    view.snapshot();
    spent.push(performance.now() - fromMs);
  }
  return spent.sort((one, other) => one - other);
}

function watchLoop(): { stop(): number } {
  let last = performance.now();
  let longest = 0;
  const timer = setInterval(() => {
    longest = Math.max(longest, performance.now() - last - 5);
    last = performance.now();
  }, 5);
  return {
    stop: () => {
      clearInterval(timer);
      return longest;
    },
  };
}
