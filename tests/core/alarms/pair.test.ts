// Every row of "The pair" in reference/alarms.md, one test each: the condition, a person's answer, and the sound.
import { expect, test } from 'vitest';
import { called, inside, over, Watched } from './watched.ts';

const OFF = 11;

test('ok, over the limit: pending, and no sound yet', () => {
  const one = new Watched().find(over('medium'));
  expect(one.book.alarms[0]?.condition).toBe('pending');
  expect([one.seen, one.sound, one.events()]).toEqual(['not listed', null, []]);
});

test('pending, back inside: ok, as if nothing had been', () => {
  const one = new Watched().find(over('medium')).seconds(2).find(inside).seconds(20);
  expect([one.seen, one.sound, one.events()]).toEqual(['not listed', null, []]);
  expect(one.book.alarms).toEqual([]);
});

test('pending that was interrupted waits its whole on-delay again', () => {
  const one = new Watched().find(over('medium')).seconds(2).find(inside).find(over('medium')).seconds(2);
  expect(one.events()).toEqual([]);
  expect(one.seconds(1).events()).toEqual(['raised']);
});

test('pending, on-delay over: active, unanswered, and the sound starts', () => {
  const one = new Watched().find(over('medium')).seconds(2);
  expect(one.sound).toBeNull();
  one.seconds(1);
  expect([one.seen, one.sound, one.events()]).toEqual(['active, unanswered', 'medium', ['raised']]);
});

test('active, unanswered, acknowledge: active, acknowledged, and the sound stops', () => {
  const one = called().acknowledge().seconds(60);
  expect([one.seen, one.sound]).toEqual(['active, acknowledged', null]);
  expect(one.events()).toEqual(['raised', 'acknowledged']);
});

test('active, acknowledged, higher priority: unanswered again, and the sound starts', () => {
  const one = called('medium').acknowledge().find(over('high'));
  expect([one.seen, one.sound]).toEqual(['active, unanswered', 'high']);
  expect(one.events()).toEqual(['raised', 'acknowledged', 'escalated']);
});

test('active, acknowledged, lower priority: nothing changes', () => {
  const one = called('high').acknowledge().find(over('medium')).seconds(5);
  expect([one.seen, one.sound, one.events()]).toEqual(['active, acknowledged', null, ['raised', 'acknowledged']]);
});

test('active, inside for less than the off-delay: still active and sounding', () => {
  const one = called().find(inside).seconds(9);
  expect([one.seen, one.sound, one.events()]).toEqual(['active, unanswered', 'medium', ['raised']]);
});

test('active, acknowledged, inside for the off-delay: ok, and off the list', () => {
  const one = called().acknowledge().find(inside).seconds(OFF);
  expect([one.seen, one.sound, one.events()]).toEqual(['not listed', null, ['raised', 'acknowledged', 'cleared']]);
});

test('active, unanswered, inside for the off-delay: over, not yet seen, silent and listed', () => {
  const one = called().find(inside).seconds(OFF).seconds(3600);
  expect([one.seen, one.sound, one.events()]).toEqual(['over, unanswered', null, ['raised', 'cleared']]);
});

test('over and unseen, acknowledge: ok, and off the list', () => {
  const one = called().find(inside).seconds(OFF).acknowledge();
  expect([one.seen, one.sound]).toEqual(['not listed', null]);
  expect(one.book.alarms).toEqual([]);
});

test('over and unseen, over the limit again: active, unanswered, and the sound starts', () => {
  const one = called().find(inside).seconds(OFF).find(over('medium')).seconds(3);
  expect([one.seen, one.sound]).toEqual(['active, unanswered', 'medium']);
  expect(one.events()).toEqual(['raised', 'cleared', 'raised']);
});

test('over and unseen, a short touch of the limit: still over and unseen', () => {
  const one = called().find(inside).seconds(OFF).find(over('medium')).seconds(1).find(inside).seconds(5);
  expect([one.seen, one.sound]).toEqual(['over, unanswered', null]);
});

test('put aside: silent for this one until its end, and the condition goes on', () => {
  const one = called().putAside(120).seconds(119);
  expect([one.seen, one.sound, one.events()]).toEqual(['active, unanswered, aside', null, ['raised', 'put-aside']]);
  expect(one.list[0]?.asideReason).toBe('sap is on its way');
  one.find(inside).seconds(1);
  expect(one.book.alarms[0]?.condition).toBe('clearing');
});

test('put aside stops the sound for this one alone', () => {
  const one = called('high').find(over('medium'), 'boil-lost').seconds(5).putAside(120);
  expect(one.sound).toBe('medium');
});

test('aside, its time over while active: active, unanswered, and it sounds at once', () => {
  const one = called().acknowledge().putAside(120).seconds(120);
  expect([one.seen, one.sound]).toEqual(['active, unanswered', 'medium']);
  expect(one.events()).toEqual(['raised', 'acknowledged', 'put-aside', 'returned']);
});

test('aside, its time over when long ok and answered: off the list without a sound', () => {
  const one = called().acknowledge().putAside(120).find(inside).seconds(120);
  expect([one.seen, one.sound]).toEqual(['not listed', null]);
});

test('aside and unanswered, over before its end: stays listed until it is seen', () => {
  const one = called().putAside(120).find(inside).seconds(121);
  expect(one.seen).toBe('over, unanswered');
  expect(one.acknowledge().seen).toBe('not listed');
});

test('over and unseen, put aside: listed until it is seen all the same', () => {
  const one = called().find(inside).seconds(OFF).putAside(60).seconds(61);
  expect(one.seen).toBe('over, unanswered');
});

test('start of the program: a kept book goes on in the same state', () => {
  const one = called().acknowledge();
  const kept = structuredClone(one.book);
  const again = new Watched();
  Object.assign(again.book, kept);
  again.t = one.t;
  again.find(over('medium')).seconds(60);
  expect([again.seen, again.sound, again.events()]).toEqual(['active, acknowledged', null, []]);
});

test('a silence stops every sound until its end, and answers nothing', () => {
  const one = called('high').answer({ silence: { seconds: 120 } });
  expect([one.seen, one.sound]).toEqual(['active, unanswered', null]);
  expect(one.seconds(119).sound).toBeNull();
  expect(one.seconds(1).sound).toBe('high');
});

test('what is not known leaves everything as it is, however long', () => {
  const one = called().find(null).seconds(3600);
  expect([one.seen, one.sound, one.events()]).toEqual(['active, unanswered', 'medium', ['raised']]);
});

test('an answer to an alarm that is not listed does nothing', () => {
  const one = new Watched().find(over('medium')).acknowledge().putAside(60).seconds(5);
  expect([one.seen, one.sound, one.events()]).toEqual(['active, unanswered', 'medium', ['raised']]);
});

test('the list is sorted: active before over, high before medium, unanswered before acknowledged', () => {
  const one = called('medium').find(inside).seconds(OFF);
  one.find(over('medium'), 'boil-lost').seconds(4).acknowledge('boil-lost');
  one.find(over('medium'), 'near-finish').seconds(4).find(over('high'), 'finish').seconds(4);
  expect(one.list.map(({ alarm }) => alarm)).toEqual(['finish', 'near-finish', 'boil-lost', 'low-level']);
});
