// Loaded into the real program beside itself: tells on SIGUSR2 how long its event loop was held up since the last time, in a file.
import { renameSync, writeFileSync } from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';

const RESOLUTION_MS = 10;
const NANOSECONDS_PER_MS = 1e6;
const MICROSECONDS_PER_MS = 1000;

/** What the file holds: the longest and the 99th percentile of how much later than due a timer came, ms. */
export interface LoopDelays {
  worstMs: number;
  p99Ms: number;
  /** The most work of the loop's own, in processor time, between two turns of a timer, ms: a crowded machine adds none. */
  workMs: number;
}

const file = process.env['LATENCY_LOOP_FILE'];
if (file !== undefined) watchInto(file);

function watchInto(path: string): void {
  const delays = monitorEventLoopDelay({ resolution: RESOLUTION_MS });
  delays.enable();
  let workMs = 0;
  let before = process.threadCpuUsage();
  setInterval(() => {
    const { user, system } = process.threadCpuUsage(before);
    workMs = Math.max(workMs, (user + system) / MICROSECONDS_PER_MS);
    before = process.threadCpuUsage();
  }, RESOLUTION_MS).unref();
  const late = (nanoseconds: number): number => Math.max(0, nanoseconds / NANOSECONDS_PER_MS - RESOLUTION_MS);
  process.on('SIGUSR2', () => {
    const found: LoopDelays = { worstMs: late(delays.max), p99Ms: late(delays.percentile(99)), workMs };
    delays.reset();
    workMs = 0;
    // Whole or not at all: whoever waits for it looks whether it is there.
    writeFileSync(`${path}.new`, JSON.stringify(found));
    renameSync(`${path}.new`, path);
  });
}
