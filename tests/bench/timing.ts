// How long something takes: the middle of several runs after a warm-up, in ms.
import { median } from '../../src/core/pan/robust-statistics.ts';

export async function middleMilliseconds(runs: number, work: () => Promise<void> | void): Promise<number> {
  await work();
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return median(times);
}
