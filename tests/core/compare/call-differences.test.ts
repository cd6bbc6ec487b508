// Calls of one boil under two choices are paired with their like, and what has none is told as missing.
import { expect, test } from 'vitest';
import { callDifferences } from '../../../src/core/compare/call-differences.ts';
import { type Call, Calls } from '../../../src/core/compare/calls.ts';

const MINUTE = 60_000;
const call = (alarm: Call['alarm'], minute: number, pan = 'p1'): Call => ({
  ...{ alarm, pan, port: null, priority: 'high', why: '' },
  ...{ raised: minute * MINUTE, ended: null },
});
const words = (was: Call[], would: Call[]) =>
  callDifferences(was, would).map(({ alarm, pan, words: said }) => `${pan} ${alarm}: ${said}`);

test('what stays as it was is not told; what moves, goes or comes is, in order of time', () => {
  const was = [call('finish', 100), call('near-finish', 90), call('boil-lost', 10)];
  const would = [call('finish', 100), call('near-finish', 78), call('scorch-risk', 95)];
  expect(words(was, would)).toEqual([
    'p1 boil-lost: would not be called',
    'p1 near-finish: 12 min sooner',
    'p1 scorch-risk: would be called',
  ]);
  expect(callDifferences(was, would)[1]).toMatchObject({ was: 90 * MINUTE, would: 78 * MINUTE, later_s: -720 });
});

test('of several calls of one alarm each finds the nearest, whichever is left out', () => {
  const was = [call('near-finish', 20), call('near-finish', 200), call('near-finish', 300)];
  expect(words(was, [call('near-finish', 201), call('near-finish', 305)])).toEqual([
    'p1 near-finish: would not be called',
    'p1 near-finish: 60 s later',
    'p1 near-finish: 5 min later',
  ]);
});

test('another pan is another call, and two hours apart are two calls', () => {
  expect(words([call('finish', 10, 'p1')], [call('finish', 10, 'p2')])).toEqual([
    'p1 finish: would not be called',
    'p2 finish: would be called',
  ]);
  expect(words([call('finish', 10)], [call('finish', 130)])).toEqual([
    'p1 finish: would not be called',
    'p1 finish: would be called',
  ]);
});

test('a raising that grows and ends is one call with its highest priority and its end', () => {
  const calls = new Calls();
  const change = { pan: 'p1', alarm: 'scorch-risk', why: 'about 2 min' } as const;
  calls.take({ ...change, t: 1000, event: 'raised', priority: 'medium' });
  calls.take({ ...change, t: 2000, event: 'escalated', priority: 'high' });
  calls.take({ ...change, t: 3000, event: 'acknowledged', priority: 'high' });
  calls.take({ ...change, t: 4000, event: 'cleared', priority: 'high' });
  expect(calls.all).toEqual([
    { pan: 'p1', port: null, alarm: 'scorch-risk', priority: 'high', raised: 1000, ended: 4000, why: 'about 2 min' },
  ]);
});

test('what the program called of itself counts; what it called of a pan is made anew by the fold', () => {
  const calls = new Calls();
  calls.takeCalled(5000, { pan: null, alarm: 'power-low', event: 'raised', priority: 'medium', why: '12 %' });
  calls.takeCalled(6000, { pan: 'p1', alarm: 'finish', event: 'raised', priority: 'high', why: '' });
  expect(calls.all.map(({ alarm }) => alarm)).toEqual(['power-low']);
});
