// A press of "I have seen it" answers what stood in front long enough to be seen, and what is over in one go.
import { expect, test } from 'vitest';
import { answeredBy, foremost, NO_CALL, sameHand, SEEING_MS } from '../../../src/screen/alarms/seen-press.ts';
import type { Foremost } from '../../../src/screen/alarms/seen-press.ts';
import type { AlarmView } from '../../../src/screen/client/types.ts';
import { alarm } from '../moment.ts';

const near = { ...alarm, alarm: 'near-finish' as const, priority: 'medium' as const };
const burning = { ...alarm, alarm: 'scorch-risk' as const, priority: 'high' as const };
const over = (pan: string): AlarmView => ({ ...near, pan, condition: 'over' });

const look = (last: Foremost, alarms: AlarmView[], atMs: number, shown = alarms): Foremost =>
  foremost(last, alarms, shown, atMs);
const names = (alarms: AlarmView[]): string[] => alarms.map((each) => each.alarm);
const pressed = (front: Foremost, alarms: AlarmView[], atMs: number): string[] =>
  names(answeredBy(front, alarms, alarms, atMs));
const past = { ...alarm, alarm: 'past-finish' as const, priority: 'high' as const };
const elsewhere = { ...burning, pan: 'c' };

test('a worse call that came a moment ago is not answered by the press that was meant for the one before', () => {
  const first = look(NO_CALL, [near], 1000);
  const then = look(first, [elsewhere, near], 5000);
  expect(pressed(then, [elsewhere, near], 5000 + SEEING_MS - 1)).toEqual([]);
  expect(pressed(then, [elsewhere, near], 5000 + SEEING_MS)).toEqual(['scorch-risk']);
});

test('to read a call and to find the key takes longer than a second', () => {
  const then = look(look(NO_CALL, [past], 1000), [burning, past], 12_000);
  expect(pressed(then, [burning, past], 13_200)).toEqual([]);
});

test('a call that was pushed away before it was seen is not what the press was meant for either', () => {
  const first = look(NO_CALL, [near], 1000);
  const second = look(first, [past, near], 9000);
  const third = look(second, [elsewhere, past, near], 9500);
  expect(pressed(third, [elsewhere, past, near], 9600)).toEqual([]);
});

test('one that followed an answered call is what the press was meant for when a worse one comes', () => {
  const seen = { ...near, answered: true };
  const second = look(look(NO_CALL, [near], 1000), [past, seen], 9000);
  const third = look(second, [elsewhere, past, seen], 9500);
  expect(pressed(third, [elsewhere, past, seen], 9600)).toEqual([]);
});

test('once the one before was answered or is gone, a press answers the new one at once', () => {
  const then = look(look(NO_CALL, [near], 1000), [burning, near], 5000);
  expect(pressed(then, [burning, { ...near, answered: true }], 5001)).toEqual(['scorch-risk']);
  expect(pressed(then, [burning], 5001)).toEqual(['scorch-risk']);
});

test('looking again changes nothing: since when a call is in front is counted from its coming', () => {
  const then = look(look(NO_CALL, [near], 1000), [burning, near], 5000);
  expect(look(then, [burning, near], 5600).sinceMs).toBe(5000);
});

test('the first call of all is answered at once, and with none there is nothing to answer', () => {
  expect(pressed(look(NO_CALL, [near], 1000), [near], 1001)).toEqual(['near-finish']);
  expect(answeredBy(look(NO_CALL, [], 0), [], [], 0)).toEqual([]);
});

test('the calls of one pan that ask for the same hand are answered together once all were seen, other pans never', () => {
  const other = { ...past, pan: 'c' };
  const all = [burning, past, other];
  const first = look(NO_CALL, [past, other], 0);
  const then = look(first, all, 5000);
  expect(pressed(then, all, 5000 + SEEING_MS)).toEqual(['scorch-risk', 'past-finish']);
  const late = look(look(NO_CALL, [burning], 0), [burning, past], 5000);
  expect(pressed(late, [burning, past], 5001)).toEqual(['scorch-risk']);
  expect(names(sameHand({ ...alarm, alarm: 'probe-lost' }, all))).toEqual([]);
});

test('what is over is answered together, as far as it was shown long enough; what still calls is never among it', () => {
  const all = [over('a'), over('b'), over('c')];
  const shown = all.slice(0, 2);
  const front = look(NO_CALL, all, 0, shown);
  const pans = (atMs: number): (string | null)[] => answeredBy(front, all, shown, atMs).map(({ pan }) => pan);
  expect(pans(SEEING_MS)).toEqual(['a', 'b']);
  expect(pans(SEEING_MS - 1)).toEqual(['a']);
  const calling = [near, ...all];
  expect(pressed(look(NO_CALL, calling, 0), calling, 5000)).toEqual(['near-finish']);
});

test('with another list open that shows none of them, the foremost is answered', () => {
  const all = [over('a'), over('b')];
  expect(answeredBy(look(NO_CALL, all, 0, []), all, [], 5000).map(({ pan }) => pan)).toEqual(['a']);
});
