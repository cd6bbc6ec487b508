// Faults 7 to 10, 16, 17: what a board may send that is no reading, or far too much of it.
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { ProbeHealth } from '../../src/protocol/probe-setup-messages.ts';
import { until } from '../ingest/until.ts';
import { faultRig } from './always-true.ts';
import type { FaultRig } from './always-true.ts';
import { badLines } from './fuzz.ts';
import { heldBytes } from './turns.ts';

let rig: FaultRig;
beforeEach(async () => {
  rig = await faultRig();
});
afterEach(() => rig.remove());

const lines = () => rig.record().filter((entry) => entry['port'] === 'A' && 'line' in entry);
const MIB = 1024 * 1024;

async function refusedOf(port: string): Promise<{ reason: string; count: number }[]> {
  const answer = await rig.host.command({ ref: 'h', probe_health: true });
  const { refused } = (answer.ok ? answer.data : { refused: [] }) as Pick<ProbeHealth, 'refused'>;
  return refused.find((one) => one.port === port)?.reasons ?? [];
}

const heard = (line: string) => until(`the line ${line}`, () => lines().some((each) => each['line'] === line));

const FUZZED = 3000;
const LONGEST = 4096;

test('7: malformed lines are counted by reason and give no value, and the good one after them does', async () => {
  const seed = Number(process.env['FAULT_SEED'] ?? Date.now() % 1_000_000);
  await rig.warmUp();
  const sent = badLines(seed, FUZZED);
  await rig.board.send(sent.join(''));
  await rig.board.send('T1=97.9\r\n');
  await heard('T1=97.9');
  await until('the good line to be shown', () => rig.shown('A/1').includes(97.9));
  const which = `FAULT_SEED=${seed} sends the same lines`;
  expect([rig.shown('A/1'), rig.shown('A/2'), rig.shown('A/3')], which).toEqual([[98.1, 97.9], [98.2], [98.3]]);
  const counted = (await refusedOf('A')).map(({ count }) => count);
  const tooLong = sent.filter((line) => line.trimEnd().length > LONGEST).length;
  expect(
    counted.reduce((sum, one) => sum + one, 0),
    which,
  ).toBe(FUZZED - tooLong);
  expect(rig.raised('scorch-risk')).toEqual([]);
  await rig.alwaysTrue(7, `${FUZZED} malformed lines`, `${counted.length} reasons, 0 values, seed ${seed}`);
});

/** Of a hundred; the boil itself goes on meanwhile. */
const MOST_GROWN_MIB = 10;

test('8: a hundred megabytes without a line end', async () => {
  await rig.warmUp();
  const block = 'x'.repeat(MIB);
  const megabytes = Number(process.env['FAULT_MEGABYTES'] ?? 100);
  const before = heldBytes();
  for (let n = 0; n < megabytes; n += 1) await rig.board.send(block);
  await rig.board.send('\nT1=97.9\n');
  // By what is shown: to read the record over and over would take the time of what is waited for.
  await until('the line after it', () => rig.shown('A/1').includes(97.9), 110_000);
  await heard('T1=97.9');
  expect(rig.notices.join()).toMatch(/unreadable data, more than 4096 bytes/);
  let grown = Number.NaN;
  // What was read last is let go a moment after it was shown.
  await until('what was read to be let go', () => (grown = (heldBytes() - before) / MIB) < MOST_GROWN_MIB, 10_000);
  await rig.alwaysTrue(
    8,
    `${megabytes} MB without a line end`,
    `memory ${grown < 0 ? '−' : '+'}${Math.abs(grown).toFixed(1)} MiB`,
  );
}, 120_000);

const SAID_WITHIN_MS = 5000;

test('9: bytes at a wrong rate are said to be that within five seconds', async () => {
  const garbage = Uint8Array.from({ length: 50 }, (_, n) => (n * 167 + (n >> 3) * 91) % 256);
  const { board } = rig;
  const fromMs = performance.now();
  const timer = setInterval(() => void board.send(garbage), 50);
  try {
    await until('the sentence', () => rig.notices.some((each) => /cannot be read: check the baud rate/.test(each)));
  } finally {
    clearInterval(timer);
  }
  const tookMs = performance.now() - fromMs;
  expect(tookMs).toBeLessThan(SAID_WITHIN_MS);
  await rig.alwaysTrue(9, 'a wrong baud rate', `said after ${(tookMs / 1000).toFixed(1)} s`);
});

test('10: what is written like a number and is none', async () => {
  await rig.warmUp();
  const wrong = ['Inf', '1e999', '0x1F', '12,5', '-0', '+', ''];
  for (const value of wrong) await rig.board.send(`T1=${value} T2=98.4\n`);
  await until('its neighbour to be read', () => rig.shown('A/2').includes(98.4));
  expect(rig.shown('A/1')).toEqual([98.1]);
  expect(rig.raised('probe-lost')).toEqual([]);
  // NaN is the board's own word: the probe is broken. Its other probe is not lost.
  const { board } = rig;
  const goesOn = setInterval(() => void board.send('T1=NaN T2=98.4\n'), 100);
  try {
    await until('the broken probe to be called', () => rig.raised('probe-lost', 'a1').length > 0);
  } finally {
    clearInterval(goesOn);
  }
  expect(rig.raised('probe-lost', 'a2')).toEqual([]);
  expect(rig.raised('scorch-risk', 'a1')).toEqual([]);
  expect(rig.shown('A/1')).toEqual([98.1]);
  await rig.alwaysTrue(10, 'numbers that are none', `0 values of ${wrong.length}, NaN called`);
});

test('16: a minute of lines at once gives no rate of rise that is not there', async () => {
  await rig.warmUp();
  await rig.board.send(Array.from({ length: 60 }, (_, n) => `T1=${(98 + n / 20).toFixed(2)}\n`).join(''));
  await heard('T1=100.95');
  const rate = rig.pan('a1')?.rate_c_per_min ?? null;
  expect(rate === null || Math.abs(rate) < 5).toBe(true);
  expect(rig.raised('scorch-risk', 'a1')).toEqual([]);
  await rig.alwaysTrue(16, 'a minute of lines at once');
});

const TEN_THOUSAND = 10_000;
const MOST_TOLD_HZ = 10;

test('17: ten thousand lines a second', async () => {
  await rig.warmUp();
  const block = 'T1=98.25C\n'.repeat(500);
  const { board } = rig;
  const kept = (): number => rig.host.running?.entries ?? 0;
  const [toldBefore, keptBefore, fromMs] = [rig.published(), kept(), performance.now()];
  let sentBlocks = 0;
  const timer = setInterval(
    () => {
      sentBlocks += 1;
      void board.send(block);
    },
    (500 / TEN_THOUSAND) * 1000,
  );
  try {
    await until('twenty thousand lines', () => kept() - keptBefore > 2 * TEN_THOUSAND, 40_000);
    const seconds = (performance.now() - fromMs) / 1000;
    const toldHz = (rig.published() - toldBefore) / seconds;
    expect(toldHz).toBeLessThan(MOST_TOLD_HZ);
    // What is not kept yet is no more than what came in the last seconds: nothing piles up.
    const waiting = sentBlocks * 500 - (kept() - keptBefore);
    expect(waiting).toBeLessThan(3 * TEN_THOUSAND);
    await rig.alwaysTrue(17, '10,000 lines a second', `screen ${toldHz.toFixed(1)} Hz`);
  } finally {
    clearInterval(timer);
  }
});
