// The bell of the terminal is the sound of `watch` without a screen: for what somebody has to come for, and only on a terminal.
import { PassThrough } from 'node:stream';
import { expect, test } from 'vitest';
import type { AlarmTransition } from '../../src/core/alarms/alarm.ts';
import { bellOf, jsonOutput, plainOutput } from '../../src/cli/live-output.ts';
import type { Printer } from '../../src/cli/printer.ts';

const raised: AlarmTransition = {
  t: 61_000,
  pan: 'p1',
  alarm: 'scorch-risk',
  event: 'raised',
  priority: 'high',
  why: 'about 2 min until it burns',
};

function paper() {
  const lines: string[] = [];
  const keep = (text: string): void => void lines.push(text);
  const out: Printer = { line: keep, lineNow: keep, flush: async () => {}, isClosed: false, isFull: false };
  return { out, lines };
}

test.each([
  ['raised', 1],
  ['escalated', 1],
  ['returned', 1],
  ['acknowledged', 0],
  ['cleared', 0],
  ['put-aside', 0],
] as const)('%s rings %i times', (event, times) => {
  let rung = 0;
  const { out, lines } = paper();
  plainOutput(out, () => (rung += 1)).alarm?.({ ...raised, event });
  expect(rung).toBe(times);
  expect(lines).toEqual([`  0:01:01  ${event.toUpperCase()}  scorch-risk  p1: about 2 min until it burns`]);
});

test('a call that nobody answered is printed and rings again', () => {
  let rung = 0;
  const { out, lines } = paper();
  plainOutput(out, () => (rung += 1)).call('Panwarden: Back pot: About to burn.');
  expect([rung, lines]).toEqual([1, ['Panwarden: Back pot: About to burn.']]);
});

/** A stream of the process, a terminal or not, with what was written to it. */
function stream(isTTY: boolean) {
  const through = new PassThrough();
  return Object.assign(through, { isTTY, said: () => through.read()?.toString() as string | undefined });
}

test('the bell rings on the first terminal, and there is none without one', () => {
  const [file, terminal] = [stream(false), stream(true)];
  bellOf([file, terminal] as never)?.();
  expect([file.said(), terminal.said()]).toEqual([undefined, '\u0007']);
  expect(bellOf([file] as never)).toBe(null);
});

test('with JSON lines nothing rings and nothing else is printed', () => {
  const { out, lines } = paper();
  const output = jsonOutput(out);
  output.call('Panwarden: Back pot: About to burn.');
  output.alarm?.(raised);
  expect(lines.map((line) => JSON.parse(line) as unknown)).toEqual([{ kind: 'alarm', ...raised }]);
});
