// Loaded into the real program beside itself: tells on SIGUSR2 how long its event loop was held up since the last time, in a file.
import { renameSync, writeFileSync } from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';

const RESOLUTION_MS = 10;
const NANOSECONDS_PER_MS = 1e6;

/** What the file holds: the longest and the 99th percentile of how much later than due a timer came, ms. */
export interface LoopDelays {
  worstMs: number;
  p99Ms: number;
}

const file = process.env['LATENCY_LOOP_FILE'];
if (file !== undefined) watchInto(file);

function watchInto(path: string): void {
  const delays = monitorEventLoopDelay({ resolution: RESOLUTION_MS });
  delays.enable();
  const late = (nanoseconds: number): number => Math.max(0, nanoseconds / NANOSECONDS_PER_MS - RESOLUTION_MS);
  process.on('SIGUSR2', () => {
    const found: LoopDelays = { worstMs: late(delays.max), p99Ms: late(delays.percentile(99)) };
    delays.reset();
    // Whole or not at all: whoever waits for it looks whether it is there.
    writeFileSync(`${path}.new`, JSON.stringify(found));
    renameSync(`${path}.new`, path);
  });
}
