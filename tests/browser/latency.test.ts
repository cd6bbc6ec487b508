// A call stands in the page well within a second of the line that caused it, also while another port says 10,000 lines a second.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { crowd, hostility } from '../bench/latency-crowd.ts';
import { latencyRig } from '../bench/latency-rig.ts';
import type { Rig } from '../bench/latency-rig.ts';

/** The fault table's deadline for a call, and for what the event loop may be held up by its own work, ms. */
const CALL_WITHIN_MS = 1000;
const LOOP_FREE_WITHIN_MS = 200;
const FLOOD_LINES_A_SECOND = 10_000;

let rig: Rig;
beforeAll(async () => (rig = await latencyRig()));
afterAll(() => rig.close());

async function measured(count: number): Promise<{ calls: number[]; loopMs: number }> {
  await rig.loopDelays();
  const calls = await rig.alarms(count);
  return { calls, loopMs: (await rig.loopDelays()).workMs };
}

function inTime({ calls, loopMs }: { calls: number[]; loopMs: number }): void {
  for (const call of calls) {
    expect(call).toBeGreaterThan(0);
    expect(call).toBeLessThan(CALL_WITHIN_MS);
  }
  expect(loopMs).toBeLessThan(LOOP_FREE_WITHIN_MS);
}

test('quiet, a call stands in the page within a second of the last byte on the wire', async () => {
  inTime(await measured(10));
});

test('with 10,000 lines a second, 200 sockets asked for and a hostile page it does so too, and no line is lost', async () => {
  const stopFlood = await rig.flood(FLOOD_LINES_A_SECOND);
  const cookie = (await rig.context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
  const { origin } = new URL(rig.url);
  const guests = await crowd(origin, cookie, 200);
  // One page stands open already.
  expect(guests.admitted).toBeLessThanOrEqual(19);
  const stopHostility = hostility(origin);
  inTime(await measured(10));
  const answers = stopHostility();
  expect(Object.keys(answers).filter((status) => status.startsWith('2'))).toEqual([]);
  guests.leave();
  await stopFlood();
  const { said, kept } = await rig.sampled();
  expect(kept).toBe(said);
});
