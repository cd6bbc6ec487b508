// From the last byte on a pseudo terminal to the alarm in the page: quiet, with a hostile page, under 10,000 lines a second, and with 200 sockets asked for.
import { crowd, hostility } from './latency-crowd.ts';
import { quantile } from './latency-numbers.ts';
import { latencyRig } from './latency-rig.ts';
import type { Rig } from './latency-rig.ts';

const ALARMS = 200;
const FLOOD_LINES_A_SECOND = 10_000;
const SOCKETS = 200;

/** `words`: how many alarms, 200 unless said. */
export async function latency(words: readonly string[]): Promise<void> {
  const count = Number(words[0] ?? ALARMS);
  const rig = await latencyRig();
  try {
    console.log(`  from the write of "Tn=nan" to probe-lost (no on-delay) in the page's list, ${count} alarms each`);
    console.log(`  the clocks of page and process were compared to ± ${rig.clockErrorMs.toFixed(1)} ms`);
    console.log(
      '                                        p50      p99    worst    event loop held up: p99    worst    by its own work',
    );
    await measured(rig, 'quiet', count);
    const { origin } = new URL(rig.url);
    const stopAlone = hostility(origin);
    await measured(rig, 'a hostile page alone', count);
    console.log(`  wrong host, origin, token, 10 MB of headers, 50/s, answered: ${JSON.stringify(stopAlone())}`);
    const stop = await rig.flood(FLOOD_LINES_A_SECOND);
    await measured(rig, '10,000 lines/s on a second port', count);
    const cookie = (await rig.context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
    const guests = await crowd(origin, cookie, SOCKETS);
    console.log(
      `  ${SOCKETS} sockets asked for: ${guests.admitted} let in beside the page, ${guests.refused} turned away`,
    );
    await measured(rig, '10,000 lines/s and the sockets', count);
    const stopHostility = hostility(origin);
    await measured(rig, 'and a hostile page', count);
    console.log(`  wrong host, origin, token, 10 MB of headers, 50/s, answered: ${JSON.stringify(stopHostility())}`);
    guests.leave();
    await stop();
    const { said, kept } = await rig.sampled();
    console.log(`  of ${said} lines that the board of the pans said through all of it, ${kept} were kept`);
  } finally {
    await rig.close();
  }
}

async function measured(rig: Rig, name: string, count: number): Promise<void> {
  await rig.loopDelays();
  const found = await rig.alarms(count);
  const { p99Ms, worstMs, workMs } = await rig.loopDelays();
  const cells = [quantile(found, 0.5), quantile(found, 0.99), Math.max(...found)].map(milliseconds);
  console.log(
    `  ${name.padEnd(34)}${cells.join('')}${' '.repeat(18)}${milliseconds(p99Ms)}${milliseconds(worstMs)}${milliseconds(workMs)}`,
  );
}

const milliseconds = (value: number): string => `${value.toFixed(1)} ms`.padStart(9);
