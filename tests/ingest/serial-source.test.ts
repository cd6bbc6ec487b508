// The real serial binding over pseudo terminals: pulled cables, wrong speeds, floods and ports that will not open.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { serialSource } from '../../src/ingest/serial-source.ts';
import type { Source, Timekeeper } from '../../src/ingest/source.ts';
import { descriptors, readerDescriptors } from '../faults/turns.ts';
import { listen, runningTimekeeper, type Heard } from './heard.ts';
import { pretendBoard, type PretendBoard } from './pretend-board.ts';
import { until } from './until.ts';

let board: PretendBoard;
let sources: Source[] = [];

beforeEach(() => {
  board = pretendBoard();
});

afterEach(async () => {
  await Promise.all(sources.map((source) => source.stop()));
  sources = [];
  await board.remove();
});

function watch(path = board.path, timekeeper: Timekeeper = runningTimekeeper()): Heard & { stop(): Promise<void> } {
  const source = serialSource({ ports: [{ id: 'A', path, baud: 9600 }], timekeeper });
  const heard = listen();
  source.start(heard);
  sources.push(source);
  return Object.assign(heard, { stop: () => source.stop() });
}

/** Real pauses are 0.25 s and more; where only the reconnecting counts they are cut short. */
function hurriedTimekeeper(): Timekeeper {
  const real = runningTimekeeper();
  return { now: real.now, after: (milliseconds, call) => real.after(milliseconds / 25, call) };
}

const opened = (heard: Heard, times: number) =>
  until(`the port to open ${times} times`, () => heard.states().filter((state) => state === 'open').length >= times);
const lost = (heard: Heard, times: number) =>
  until(`the port to be lost ${times} times`, () => heard.states().filter((state) => state === 'lost').length >= times);
const sentences = (heard: Heard) => heard.notices.map(({ sentence }) => sentence).join('\n');

test('lines come with the time they came at, whatever ends them', async () => {
  await board.plugIn();
  const heard = watch();
  await opened(heard, 1);
  await board.send('boot\r\nT1=98.5C T2=97.1\r\nT1=98.6\n\xe9\r\n');
  await until('three lines', () => heard.lines().length === 3);
  expect(heard.lines()).toEqual(['T1=98.5C T2=97.1', 'T1=98.6', '\xe9']);
  const times = heard.entries().map(({ t }) => t);
  expect(times).toEqual([...times].sort((a, b) => a - b));
  expect(heard.notices).toEqual([]);
});

test('a cable pulled in the middle of a line leaves no value, neither then nor after it is back', async () => {
  await board.plugIn();
  const heard = watch();
  await opened(heard, 1);
  await board.send('\nT1=98\nT1=10');
  await until('the whole line', () => heard.lines().length === 1);
  await board.pull();
  await lost(heard, 1);
  await board.plugIn();
  await opened(heard, 2);
  await board.send('4.9\nT1=99\n');
  await until('the line after it', () => heard.lines().length === 2);
  expect(heard.lines()).toEqual(['T1=98', 'T1=99']);
  expect(heard.states()).toEqual(['open', 'lost', 'open']);
  expect(sentences(heard)).toBe(
    `Port A (${board.path}) went away: check the cable and the board's power. It is tried again until it opens.`,
  );
});

const LOSSES = 100;

/** How much there is of all that a lost port could leave behind, here and in the process that reads for it. */
function held(): Record<string, number> {
  const readers = [...readerDescriptors().values()];
  const isTimer = (name: string): boolean => name === 'Timeout' || name === 'Immediate';
  return {
    descriptors: descriptors(),
    listeners: process.eventNames().reduce((sum, name) => sum + process.listenerCount(name), 0),
    resources: process.getActiveResourcesInfo().filter((name) => !isTimer(name)).length,
    readers: readers.length,
    ofReader: Math.max(0, ...readers),
  };
}

test('a hundred losses leave no descriptor and no listener behind', async () => {
  const timekeeper = hurriedTimekeeper();
  const heard = watch(board.path, timekeeper);
  await lost(heard, 1);
  let before = held();
  const fromMs = performance.now();
  for (let round = 1; round <= LOSSES; round++) {
    await board.plugIn();
    await opened(heard, round);
    await board.send(`\nT1=${round}\n`);
    await until('its line', () => heard.lines().length === round);
    await board.pull();
    await lost(heard, round + 1);
    // The first ones make what is then used again.
    if (round === 2) before = held();
  }
  const seconds = (performance.now() - fromMs) / 1000;
  expect(heard.states().filter((state) => state === 'lost')).toHaveLength(LOSSES + 1);
  // A descriptor is given back a moment after its port is, and a reader that nobody needs ends after a while.
  const more = (): string[] =>
    Object.entries(held()).flatMap(([what, n]) => (n > before[what]! ? [`${what} ${n}`] : []));
  await until('all to be given back', () => more().length === 0).catch(() => expect(more()).toEqual([]));
  expect(before).toMatchObject({ readers: 1 });
  console.log(`  ${LOSSES} losses in ${seconds.toFixed(1)} s: ${JSON.stringify(held())}`);
});

test('a megabyte without a line end is dropped and said, and the next line is read', async () => {
  await board.plugIn();
  const heard = watch();
  await opened(heard, 1);
  const block = 'x'.repeat(64 * 1024);
  for (let n = 0; n < 16; n++) await board.send(block);
  await board.send('\nT1=98\n');
  await until('the line after it', () => heard.lines().length === 1);
  expect(heard.lines()).toEqual(['T1=98']);
  expect(sentences(heard)).toMatch(/^Port A .* sends unreadable data, more than 4096 bytes without a line end/);
});

test('bytes at a wrong speed are said to be one within five seconds, once', async () => {
  await board.plugIn();
  const timekeeper = runningTimekeeper();
  let ahead = 0;
  const heard = watch(board.path, { ...timekeeper, now: () => timekeeper.now() + ahead });
  await opened(heard, 1);
  const garbage = Uint8Array.from({ length: 200 }, (_, n) => (n * 167 + (n >> 3) * 91) % 256);
  await board.send(garbage);
  await until('the first bytes', () => heard.lines().length > 0);
  expect(heard.notices).toEqual([]);
  ahead = 4000;
  for (let n = 0; n < 3; n++) await board.send(garbage);
  await until('the notice', () => heard.notices.length > 0);
  expect(sentences(heard)).toBe(
    `Port A (${board.path}) is open; data arrives but cannot be read: check the baud rate (it is 9600).`,
  );
});

test('a port that is not there is said once, waited for, and opened when it comes', async () => {
  const heard = watch(board.path, hurriedTimekeeper());
  await lost(heard, 1);
  await until('time to pass', () => heard.items.some((item) => item.kind === 'idle' && item.t > 200));
  expect(heard.states()).toEqual(['lost']);
  expect(heard.entries()[0]).toMatchObject({ port: 'A', state: 'lost', why: sentences(heard) });
  expect(sentences(heard)).toBe(
    `Port A (${board.path}) is not there: plug the board in, or choose the port it has now. It is tried again until it opens.`,
  );
  await board.plugIn();
  await opened(heard, 1);
  await board.send('\nT1=98\n');
  await until('a line', () => heard.lines().length === 1);
});

test('a port that is held is said once, and opened when it is let go', async () => {
  await board.plugIn();
  const holder = watch();
  await opened(holder, 1);
  const heard = watch(board.path, hurriedTimekeeper());
  await lost(heard, 1);
  expect(sentences(heard)).toMatch(/^Port A .* is held by another program: close that program/);
  await holder.stop();
  await opened(heard, 1);
  expect(heard.states()).toEqual(['lost', 'open']);
});

test('what is no serial port is said to be none', async () => {
  const heard = watch('/dev/null', hurriedTimekeeper());
  await lost(heard, 1);
  expect(sentences(heard)).toMatch(/^Port A \(\/dev\/null\) is no serial port/);
});

test('ten thousand lines sent at once are all handed on', async () => {
  await board.plugIn();
  const heard = watch();
  await opened(heard, 1);
  const lines = Array.from({ length: 10_000 }, (_, n) => `T1=${(n % 100) + 1}`);
  await board.send(`\n${lines.join('\n')}\n`);
  await until('all lines', () => heard.lines().length >= lines.length);
  expect(heard.lines()).toEqual(lines);
});
