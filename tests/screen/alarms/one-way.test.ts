// Of one pan's way over its finish the worst call stands for the lesser ones: one row, and one answer for all of them.
import { expect, test } from 'vitest';
import { withCovered } from '../../../src/screen/alarms/one-way.ts';
import type { AlarmView } from '../../../src/screen/client/types.ts';
import { firstUnseen, inOrder } from '../../../src/screen/words/alarm-words.ts';
import { alarm } from '../moment.ts';

const call = (name: AlarmView['alarm'], more: Partial<AlarmView> = {}): AlarmView => ({
  ...alarm,
  alarm: name,
  priority: 'high',
  ...more,
});
const past = call('past-finish');
const names = (alarms: readonly AlarmView[]): string[] => alarms.map((each) => each.alarm);

test('a reading that jumps past the finish is one call: that it was at it, and nearly syrup, is listed no more', () => {
  const overs = [call('finish', { condition: 'over' }), call('near-finish', { condition: 'over' })];
  expect(names(inOrder([...overs, past]))).toEqual(['past-finish']);
  expect(names(inOrder([call('finish'), past]))).toEqual(['past-finish']);
  expect(firstUnseen([...overs, { ...past, answered: true }])).toBeNull();
});

test('a call of another pan, one that tells another thing, and what came of one that is over are listed still', () => {
  const other = call('finish', { pan: 'p2', condition: 'over' });
  const burns = call('scorch-risk');
  expect(names(inOrder([past, other]))).toEqual(['past-finish', 'finish']);
  expect(names(inOrder([past, burns]))).toEqual(['scorch-risk', 'past-finish']);
  const over = [call('past-finish', { condition: 'over' }), call('finish', { condition: 'over' })];
  expect(inOrder(over)).toHaveLength(2);
});

test('the answer to the worse one is the answer to what it stands for, as far as nobody has given it yet', () => {
  const finish = call('finish', { condition: 'over' });
  const seen = call('near-finish', { answered: true });
  expect(names(withCovered(past, [finish, seen, past, call('low-level')]))).toEqual(['past-finish', 'finish']);
  expect(names(withCovered(finish, [finish, past]))).toEqual(['finish']);
});
