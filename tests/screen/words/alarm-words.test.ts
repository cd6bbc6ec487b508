// Which alarm stands first, which is answered by a press, and when it sounds.
import { expect, test } from 'vitest';
import type { Now } from '../../../src/screen/client/types.ts';
import {
  asSentence,
  byPlaceWords,
  calledWords,
  firstUnseen,
  inOrder,
  isUnheard,
  pageTitle,
  quietHint,
  quietWords,
  seenWords,
  soundsNow,
} from '../../../src/screen/words/alarm-words.ts';
import { alarm, moment } from '../moment.ts';

const seenHigh = { ...alarm, alarm: 'scorch-risk' as const, priority: 'high' as const, answered: true };
const lowOld = { ...alarm, alarm: 'reminder' as const, priority: 'low' as const, since: 0 };
const over = { ...alarm, alarm: 'finish' as const, priority: 'high' as const, condition: 'over' as const };

test('what stands and is unseen comes first, then what is seen, then what is over', () => {
  expect(inOrder([over, seenHigh, lowOld, alarm]).map((each) => each.alarm)).toEqual([
    'near-finish',
    'reminder',
    'scorch-risk',
    'finish',
  ]);
});

test('of two that are for now, what burns comes before what is past its finish, though it came later', () => {
  const past = { ...alarm, alarm: 'past-finish' as const, priority: 'high' as const };
  const burns = { ...past, alarm: 'scorch-risk' as const, since: past.since + 60_000 };
  expect(inOrder([past, burns]).map((each) => each.alarm)).toEqual(['scorch-risk', 'past-finish']);
});

test('those that are alike stand as the host has them, whichever came first', () => {
  const low = { ...alarm, alarm: 'low-level' as const, since: alarm.since - 60_000 };
  const other = { ...alarm, alarm: 'boil-lost' as const, pan: 'p9', since: alarm.since + 60_000 };
  for (const asTheHostHasThem of [
    [alarm, low, other],
    [other, low, alarm],
  ])
    expect(inOrder(asTheHostHasThem)).toEqual(asTheHostHasThem);
  expect(inOrder([{ ...low, answered: true }, alarm]).map((each) => each.alarm)).toEqual(['near-finish', 'low-level']);
});

test('a press answers the foremost unseen alarm, at last those that are over', () => {
  expect(firstUnseen([over, seenHigh, lowOld])?.alarm).toBe('reminder');
  expect(firstUnseen([over, seenHigh])?.alarm).toBe('finish');
  expect(firstUnseen([seenHigh])).toBeNull();
});

test('the button tells whether its press is for one call, for the first of several, or for so many', () => {
  const away = { ...lowOld, asideUntil: moment.t + 60_000 };
  expect(seenWords([alarm], [alarm, seenHigh, away])).toBe('I have seen it');
  expect(seenWords([alarm], [alarm, lowOld])).toBe('I have seen the first');
  expect(seenWords([over, lowOld], [over, lowOld, alarm])).toBe('I have seen all 2');
});

test('what is put aside stands last and is not answered by a press', () => {
  const away = { ...lowOld, asideUntil: moment.t + 60_000 };
  expect(inOrder([away, over, alarm]).map((each) => each.alarm)).toEqual(['near-finish', 'finish', 'reminder']);
  expect(firstUnseen([away])).toBeNull();
});

test('a reminder is called by its own words, all else by its place and title', () => {
  expect(calledWords({ ...lowOld, pan: null, why: 'Skim the back pot' }, moment.header)).toBe(
    'Reminder: Skim the back pot',
  );
  expect(calledWords(alarm, moment.header)).toBe('Front pot: Nearly syrup');
});

test('the title of the page shows the alarm and where it is', () => {
  expect(pageTitle({ ...moment, alarms: [over, alarm] })).toBe('◆ Front pot: Nearly syrup – Panwarden');
  expect(pageTitle({ ...moment, mode: 'practice' })).toBe('Practice boil – Panwarden');
  expect(pageTitle(null)).toBe('Panwarden');
});

test('it sounds when the host calls and nobody has silenced it', () => {
  const calling = (silencedUntil: number | null): Now => ({ ...moment, sound: { priority: 'high', silencedUntil } });
  expect(soundsNow(calling(null))).toBe('high');
  expect(soundsNow(calling(moment.t + 1))).toBeNull();
  expect(soundsNow(calling(moment.t))).toBe('high');
  expect(soundsNow(moment)).toBeNull();
});

test('a sentence gets one full stop', () => {
  expect([asSentence('26 mm deep'), asSentence('Look!')]).toEqual(['26 mm deep.', 'Look!']);
});

test('how long it is quiet is told as a time of day, and in a practice in the time of whoever hears it', () => {
  const until = moment.t + 90 * 60_000;
  expect(quietWords(moment, until)).toBe('Quiet until 09:30');
  expect(quietWords({ ...moment, mode: 'practice', speed: 60 }, until)).toBe('Quiet, 90\u00a0s more by your own clock');
  expect(quietWords({ ...moment, mode: 'practice', speed: 1 }, moment.t + 90_000)).toBe('Quiet, 90\u00a0s more');
});

test('quiet in a practice that goes faster says whose minutes it means, the same before and after a call slows it', () => {
  expect(quietHint(moment)).toBe('all sound off, calls come back');
  for (const speed of [600, 60, 10])
    expect(quietHint({ ...moment, mode: 'practice', speed })).toBe('2\u00a0min by your own clock');
});

test('a quiet from a phone names it, and what came meanwhile was not heard until it ends', () => {
  const until = moment.t + 60_000;
  const now: Now = { ...moment, sound: { priority: null, silencedUntil: until, silencedBy: 'Blue phone' } };
  expect(quietWords(now, until)).toMatch(/^Quiet until \S+, by Blue phone$/);
  expect(quietWords({ ...now, sound: { priority: null, silencedUntil: until } }, until)).toMatch(/^Quiet until \S+$/);
  const came = { ...alarm, inQuiet: true as const };
  expect(isUnheard(came, now)).toBe(true);
  expect(isUnheard(alarm, now)).toBe(false);
  expect(isUnheard({ ...came, answered: true }, now)).toBe(false);
  expect(isUnheard(came, { ...now, t: until })).toBe(false);
});

test('a reason begins as a sentence does, but a name stays as it is written', () => {
  expect(asSentence('about 9 min to 66.9 °Bx')).toBe('About 9 min to 66.9 °Bx.');
  expect(asSentence('étape, puis')).toBe('Étape, puis.');
  expect(asSentence('ttyACM0 went away.')).toBe('ttyACM0 went away.');
  expect(asSentence('b1: nothing comes')).toBe('b1: nothing comes.');
});

test('the calls of a pan are named by time, whatever is most urgent', () => {
  const at = (each: Partial<typeof alarm>, since: number, title: string) => ({ ...alarm, ...each, since, title });
  const near = at({}, 10, 'Nearly syrup');
  const finish = at({ priority: 'high' }, 20, 'At its finish');
  const past = at({ priority: 'high' }, 30, 'Past its finish');
  expect(byPlaceWords([finish, past, near], moment)).toMatch(/: Nearly syrup, At its finish, Past its finish$/);
});
