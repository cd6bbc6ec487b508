// Faults 7 to 10, 12, 16, 17: what a board may send that is no reading, or far too much of it.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { until } from '../ingest/until.ts';
import { faultRig } from './always-true.ts';
import type { FaultRig } from './always-true.ts';

let rig: FaultRig;
beforeEach(async () => {
  rig = await faultRig();
});
afterEach(() => rig.remove());

const lines = () => rig.record().filter((entry) => entry['port'] === 'A' && 'line' in entry);
const heard = (line: string) => until(`the line ${line}`, () => lines().some((each) => each['line'] === line));

test('7: malformed lines give no value, and the good one after them does', async () => {
  await rig.warmUp();
  const shown = rig.pan('a1')?.temperature_c;
  await rig.board.send(
    '\r\n\0\0\nT1=\n=98\nT1 98\nT1=9 8\nT1==98\nT1=98.5.1\n\xc3\xa9=98\nT1=\xff98\nboot v0 ok\n{"T1":98\nT1=12e\nT1=97.9\r\n',
  );
  await heard('T1=97.9');
  expect(shown).not.toBeNull();
  expect(rig.raised('scorch')).toEqual([]);
  await rig.alwaysTrue(7, 'malformed lines');
});

test('8: a hundred megabytes without a line end', async () => {
  await rig.warmUp();
  const before = process.memoryUsage().rss;
  const block = 'x'.repeat(1024 * 1024);
  const megabytes = Number(process.env['FAULT_MEGABYTES'] ?? 16);
  for (let n = 0; n < megabytes; n += 1) await rig.board.send(block);
  await rig.board.send('\nT1=97.9\n');
  await until('the line after it', () => lines().some(({ line }) => line === 'T1=97.9'), 50_000);
  expect(rig.notices.join()).toMatch(/unreadable data, more than 4096 bytes/);
  expect(process.memoryUsage().rss - before).toBeLessThan(150 * 1024 * 1024);
  await rig.alwaysTrue(8, `${megabytes} MB without a line end`);
});

test('9: bytes at a wrong rate are said to be that within five seconds', async () => {
  const garbage = Uint8Array.from({ length: 200 }, (_, n) => (n * 167 + (n >> 3) * 91) % 256);
  const { board } = rig;
  const timer = setInterval(() => void board.send(garbage), 250);
  try {
    await until('the sentence', () => rig.notices.some((each) => /cannot be read: check the baud rate/.test(each)));
  } finally {
    clearInterval(timer);
  }
  await rig.alwaysTrue(9, 'a wrong baud rate');
});

test('10 and 12: what is written like a number and is none, and the codes of broken probes', async () => {
  await rig.warmUp();
  for (const value of ['NaN', 'Inf', '1e999', '0x1F', '12,5', '', '-127', '85.000', '-127'])
    await rig.board.send(`T1=${value} T2=98.2\n`);
  // A board whose probe broke goes on speaking: its other probe is not lost.
  const { board } = rig;
  const goesOn = setInterval(() => void board.send('T1=-127 T2=98.2\n'), 100);
  try {
    await until('the broken probe to be called', () => rig.raised('probe-lost', 'a1').length > 0);
  } finally {
    clearInterval(goesOn);
  }
  expect(rig.raised('probe-lost', 'a2')).toEqual([]);
  expect(rig.raised('scorch', 'a1')).toEqual([]);
  await rig.alwaysTrue(10, 'numbers that are none, broken probes');
});

test('16: a minute of lines at once gives no rate of rise that is not there', async () => {
  await rig.warmUp();
  await rig.board.send(Array.from({ length: 60 }, (_, n) => `T1=${(98 + n / 20).toFixed(2)}\n`).join(''));
  await heard('T1=100.95');
  const rate = rig.pan('a1')?.rate_c_per_min ?? null;
  expect(rate === null || Math.abs(rate) < 5).toBe(true);
  expect(rig.raised('scorch', 'a1')).toEqual([]);
  await rig.alwaysTrue(16, 'a burst after a stall');
});

test('17: ten thousand lines a second', async () => {
  await rig.warmUp();
  const block = 'T1=98.25C\n'.repeat(500);
  const { board } = rig;
  const timer = setInterval(() => void board.send(block), 50);
  try {
    await until('twenty thousand lines', () => (rig.host.running?.entries ?? 0) > 20_000, 40_000);
    await rig.alwaysTrue(17, '10,000 lines a second');
  } finally {
    clearInterval(timer);
  }
});
