// How a port is kept open, with a stand-in for the serial binding and time moved by hand.
import { expect, test } from 'vitest';
import type { PortFormat } from '../../src/core/boil/entries.ts';
import type { OpenPort, PortEvents } from '../../src/ingest/open-port.ts';
import { openingTrouble } from '../../src/ingest/port-trouble.ts';
import { serialSource } from '../../src/ingest/serial-source.ts';
import { handTimekeeper, listen } from './heard.ts';
import { until } from './until.ts';

const missing = 'Error: No such file or directory, cannot open x';

function standIn() {
  const state = {
    asked: [] as number[],
    openNow: 0,
    failure: null as string | null,
    events: null as PortEvents | null,
    hold: Promise.resolve(),
  };
  const timekeeper = handTimekeeper();
  const openPort: OpenPort = async (_path, _baud, events) => {
    state.asked.push(timekeeper.now());
    await state.hold;
    if (state.failure !== null) throw new Error(state.failure);
    state.openNow += 1;
    state.events = events;
    let isOpen = true;
    return {
      async close() {
        if (isOpen) state.openNow -= 1;
        isOpen = false;
      },
    };
  };
  return { state, timekeeper, openPort };
}

function watched(format?: PortFormat) {
  const { state, timekeeper, openPort } = standIn();
  const source = serialSource({ ports: [{ id: 'A', path: 'x', baud: 9600, format }], timekeeper, openPort });
  const heard = listen();
  return { state, timekeeper, source, heard };
}

const bytes = (text: string) => Buffer.from(text, 'latin1');

test('a port that stays away is asked for after 0.25 s, then twice as long each time up to 5 s', async () => {
  const { state, timekeeper, source, heard } = watched();
  state.failure = missing;
  source.start(heard);
  await timekeeper.pass(20_000);
  expect(state.asked).toEqual([0, 250, 750, 1750, 3750, 7750, 12750, 17750]);
  expect(heard.states()).toEqual(['lost']);
  expect(heard.notices).toHaveLength(1);
  state.failure = null;
  await timekeeper.pass(5000);
  expect(heard.states()).toEqual(['lost', 'open']);
  state.events!.gone();
  await timekeeper.pass(250);
  expect(heard.states()).toEqual(['lost', 'open', 'lost', 'open']);
  expect(state.openNow).toBe(1);
  await source.stop();
  expect(state.openNow).toBe(0);
  expect(timekeeper.waiting()).toBe(0);
});

test('a new cause is said while the port is still lost', async () => {
  const { state, timekeeper, source, heard } = watched();
  source.start(heard);
  await timekeeper.pass(0);
  state.failure = missing;
  state.events!.gone();
  await timekeeper.pass(1000);
  expect(heard.notices.map(({ sentence }) => sentence)).toEqual([expect.stringMatching(/went away/)]);
  state.failure = 'Error: Permission denied, cannot open x';
  await timekeeper.pass(1000);
  // Who may use a port is asked of the real system.
  await until('the new cause', () => heard.notices.length === 2);
  await timekeeper.pass(10_000);
  expect(heard.notices).toHaveLength(2);
  expect(heard.notices[1]!.sentence).toMatch(/may not be opened by this user, or is held by another program: close/);
  expect(heard.states()).toEqual(['open', 'lost']);
  await source.stop();
});

test('stopping while the port is being opened closes it and says nothing', async () => {
  const { state, timekeeper, source, heard } = watched();
  let letOpen = (): void => undefined;
  state.hold = new Promise((resolve) => (letOpen = resolve));
  source.start(heard);
  await timekeeper.pass(0);
  const stopped = source.stop();
  letOpen();
  await stopped;
  expect(state.asked).toHaveLength(1);
  expect(state.openNow).toBe(0);
  expect(heard.items).toEqual([]);
});

test('a silent port says that time passes, before the lines that come later', async () => {
  const { state, timekeeper, source, heard } = watched();
  source.start(heard);
  await timekeeper.pass(1000);
  expect(heard.items.slice(1)).toEqual([
    { kind: 'idle', t: 499 },
    { kind: 'idle', t: 749 },
    { kind: 'idle', t: 999 },
  ]);
  state.events!.bytes(bytes('\nT1=98\n'));
  expect(heard.entries().at(-1)).toEqual({ t: 1000, port: 'A', line: 'T1=98' });
  await source.stop();
});

test('plain text without a reading in it is a question of the format, not of the speed', async () => {
  const { state, timekeeper, source, heard } = watched({ kind: 'json', channels: { T1: '/t' } });
  source.start(heard);
  for (let second = 0; second < 6; second++) {
    await timekeeper.pass(1000);
    state.events!.bytes(bytes('T1=98.5 T2=97.1\r\n'));
  }
  expect(heard.notices.map(({ sentence }) => sentence)).toEqual([
    'Port A (x) sends text, but no readings are found in it (not a JSON object): check the format of its lines.',
  ]);
  await source.stop();
});

test('a pause in the middle of readings is no sign of a wrong speed', async () => {
  const { state, timekeeper, source, heard } = watched();
  source.start(heard);
  await timekeeper.pass(0);
  for (const part of ['\nT1=98.5\nT1=9', '8.6\nT1=', '98.7\n']) {
    state.events!.bytes(bytes(part));
    await timekeeper.pass(10_000);
  }
  expect(heard.lines()).toEqual(['T1=98.5', 'T1=98.6', 'T1=98.7']);
  expect(heard.notices).toEqual([]);
  await source.stop();
});

test.each([
  ['Error: No such file or directory, cannot open /dev/x', 'missing'],
  ['Opening COM3: File not found', 'missing'],
  ['Error Resource temporarily unavailable Cannot lock port', 'held'],
  ['Error: Resource busy, cannot open /dev/cu.x', 'held'],
  ['Error: Permission denied, cannot open /dev/x', 'forbidden'],
  ['Opening COM3: Access denied', 'forbidden'],
  ['Error: Inappropriate ioctl for device setting custom baud rate of 9600', 'no-port'],
  ['Error: Input/output error, cannot open /dev/x', 'other'],
])('"%s" is %s, in a sentence with the port and the cure', async (message, kind) => {
  const trouble = await openingTrouble({ id: 'A', path: '/dev/x' }, new Error(message));
  expect(trouble.kind).toBe(kind);
  expect(trouble.sentence).toMatch(
    /^Port A \(\/dev\/x\) .*(?:plug|close|choose|check).* It is tried again until it opens\.$/,
  );
});
