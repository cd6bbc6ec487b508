// Faults 1, 2, 4, 5, 6: a board that falls silent, is pulled, comes back, and a port that cannot be had.
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { openSerialPort } from '../../src/ingest/open-port.ts';
import { until } from '../ingest/until.ts';
import { descriptors, faultRig, printRows } from './always-true.ts';
import type { FaultRig } from './always-true.ts';

let rig: FaultRig;
beforeEach(async () => {
  rig = await faultRig();
});
afterEach(() => rig.remove());
afterAll(printRows);

const stateOf = (id: string) => rig.now().ports.find((port) => port.id === id)?.state;
const lines = () => rig.record().filter((entry) => entry['port'] === 'A' && 'line' in entry);

test('1: a board that falls silent', async () => {
  await rig.warmUp();
  await until('the call', () => rig.raised('probe-lost', 'a1').length > 0);
  const { board } = rig;
  const again = setInterval(() => void board.send('T1=98.1 T2=98.2 T3=98.3\n'), 100);
  try {
    await until('it to clear by itself', () =>
      rig.alarms.some(({ alarm, pan, event }) => alarm === 'probe-lost' && pan === 'a1' && event === 'cleared'),
    );
  } finally {
    clearInterval(again);
  }
  expect(rig.now().alarms.some(({ alarm, pan }) => alarm === 'probe-lost' && pan === 'a1')).toBe(true);
  await rig.alwaysTrue(1, 'silent, then heard again');
});

test('2 and 4: pulled in the middle of a line, and back in the middle of another', async () => {
  await rig.warmUp();
  await rig.board.send('T1=10');
  await rig.board.pull();
  await until('the loss to be called', () => rig.raised('port-lost').length > 0);
  expect(rig.notices.join()).toMatch(/Port A .* went away: check the cable/);
  await rig.board.plugIn();
  await until('the port to be open again', () => stateOf('A') === 'open');
  await rig.board.send('4.9\nT1=98.7\n');
  await until('the whole line', () => lines().some(({ line }) => line === 'T1=98.7'));
  expect(lines().filter(({ line }) => /104|^4\.9|T1=10$/.test(String(line)))).toEqual([]);
  expect(
    rig
      .record()
      .filter((entry) => entry['port'] === 'A' && 'state' in entry)
      .map(({ state }) => state),
  ).toEqual(['open', 'lost', 'open']);
  await rig.alwaysTrue(2, 'pulled and back in the middle of lines');
});

test('5: gone and back as fast as it can', async () => {
  await rig.warmUp();
  const before = descriptors();
  const untilMs = performance.now() + 10_000;
  for (let round = 0; round < 100 && performance.now() < untilMs; round += 1) {
    await rig.board.pull();
    await rig.board.plugIn();
  }
  await until('the port to be open', () => stateOf('A') === 'open');
  await rig.warmUp();
  await until('a line after it', () => lines().length > 10);
  await until('the descriptors to be given back', () => descriptors() <= before + 2);
  expect(rig.now().alarms.filter(({ alarm }) => alarm === 'port-lost').length).toBeLessThanOrEqual(1);
  await rig.alwaysTrue(5, 'gone and back, as often as 10 s allow');
});

test('6: a port that another program holds', async () => {
  await rig.board.pull();
  await until('the loss', () => stateOf('A') === 'lost');
  await rig.board.plugIn();
  // Another program may be quicker than the next try, or slower; where it is slower it is refused itself.
  await openSerialPort(rig.board.path, 9600, { bytes: () => undefined, gone: () => undefined }).then(
    async (held) => {
      await until('the sentence', () =>
        rig.notices.some((sentence) => /is held by another program: close/.test(sentence)),
      );
      await held.close();
    },
    (error: Error) => expect(error.message).toMatch(/lock/i),
  );
  await until('it to open when it is let go', () => stateOf('A') === 'open');
  await rig.alwaysTrue(6, 'held by another program');
});
