// A replay comes at the pace of its clock, in order, and ends.
import { expect, test } from 'vitest';
import type { Entry } from '../../src/core/boil/entries.ts';
import { replaySource } from '../../src/ingest/replay-source.ts';
import { handTimekeeper, listen } from './heard.ts';

const line = (t: number): Entry => ({ t, port: 'A', line: `T1=${t}` });

test('entries come when their time is reached, idle between them, and end after the last', async () => {
  const timekeeper = handTimekeeper();
  const heard = listen();
  replaySource({ entries: [line(0), line(150), line(150)], timekeeper }).start(heard);
  await timekeeper.pass(100);
  expect(heard.items).toEqual([
    { kind: 'entry', entry: line(0) },
    { kind: 'idle', t: 100 },
  ]);
  await timekeeper.pass(1000);
  expect(heard.items.slice(2)).toEqual([
    { kind: 'entry', entry: line(150) },
    { kind: 'entry', entry: line(150) },
    { kind: 'end', t: 150 },
  ]);
  expect(timekeeper.waiting()).toBe(0);
});

test('a recording without entries ends at once', async () => {
  const timekeeper = handTimekeeper();
  const heard = listen();
  replaySource({ entries: () => null, timekeeper }).start(heard);
  await timekeeper.pass(0);
  expect(heard.items).toEqual([{ kind: 'end', t: 0 }]);
});

test('many entries due at once are handed on in portions, with room for other work between', async () => {
  const timekeeper = handTimekeeper();
  const heard = listen();
  const entries = Array.from({ length: 5000 }, (_, t) => line(t));
  let portions = 0;
  replaySource({
    entries,
    timekeeper: {
      ...timekeeper,
      now: () => 10_000,
      after: (ms, call) => ((portions += 1), timekeeper.after(ms, call)),
    },
  }).start(heard);
  await timekeeper.pass(0);
  expect(heard.entries()).toEqual(entries);
  expect(portions).toBe(3);
});
