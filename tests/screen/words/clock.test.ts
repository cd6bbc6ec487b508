// Times of day come from boil time and the boil's own zone, whatever zone the machine is in.
import { lengthOfTime } from '../../../src/core/quantities/time.ts';
import { expect, test } from 'vitest';
import { settings } from '../../../src/screen/client/store.ts';
import type { Now } from '../../../src/screen/client/types.ts';
import { language, monthFirst } from '../../../src/screen/language/language.ts';
import { temperature } from '../../../src/screen/words/amounts.ts';
import {
  ago,
  asAtItsEnd,
  dayAndTime,
  dayInWords,
  fromTo,
  hoursAndMinutes,
  offsetMinutes,
  shortDay,
  timeOfDay,
} from '../../../src/screen/words/clock.ts';
import { metric, moment } from '../moment.ts';

test('the zone is read off an ISO time', () => {
  expect(offsetMinutes('2027-04-18T07:30:00-07:00')).toBe(-420);
  expect(offsetMinutes('2027-04-18T07:30:00+05:30')).toBe(330);
  expect(offsetMinutes('2027-04-18T14:30:00Z')).toBe(0);
});

test('a live time of day follows the wall clock of now, which may have been set since the boil was lit', () => {
  const anHourOn = { ...moment, clock: '2027-04-18T16:00:00.000Z' };
  expect(timeOfDay(moment, moment.t + 600_000)).toBe('08:10');
  expect(timeOfDay(anHourOn, moment.t + 600_000)).toBe('09:10');
});

test('a fire that was lit at a full minute shows that minute, though the two clocks are read some ms apart', () => {
  const lit = { ...moment, t: 3_600_000, header: { ...moment.header!, started: '2027-04-18T18:20:00-07:00' } };
  for (const clock of ['2027-04-19T02:19:59.960Z', '2027-04-19T02:20:00.030Z'])
    expect(timeOfDay({ ...lit, clock }, 0)).toBe('18:20');
});

test('a practice boil and a replay count from their own start', () => {
  const practice = { ...moment, mode: 'practice' as const, clock: '2030-01-01T00:00:00Z' };
  expect(timeOfDay(practice, 4 * 3_600_000)).toBe('11:30');
});

test('what has been is told as the clock beside the pans showed it, what is expected to the nearest minute', () => {
  const started = '2027-04-18T07:30:40-07:00';
  const lit = { ...moment, mode: 'replay' as const, header: { ...moment.header!, started } };
  // 07:31:10 and 07:32:00 were; 08:30:20 and 08:30:40 are to come.
  expect([30_000, 80_000].map((at) => timeOfDay(lit, at))).toEqual(['07:31', '07:32']);
  expect([3_580_000, 3_600_000].map((at) => timeOfDay(lit, at))).toEqual(['08:30', '08:31']);
});

test('what was noted a moment after the page was told is told by the same minute then and later', () => {
  const started = '2027-04-18T07:30:40-07:00';
  const at = 3_600_000;
  const told = (t: number) =>
    timeOfDay({ ...moment, mode: 'practice', speed: 60, t, header: { ...moment.header!, started } }, at);
  expect([told(at - 60_000), told(at), told(at + 60_000)]).toEqual(['08:30', '08:30', '08:30']);
  expect(timeOfDay({ ...moment, clock: '2027-04-18T15:00:59.000Z' }, moment.t + 800)).toBe('08:00');
});

test('another day is named', () => {
  expect(timeOfDay(moment, 18 * 3_600_000)).toBe('tomorrow 01:30');
  expect(timeOfDay(moment, -8 * 3_600_000)).toBe('yesterday 23:30');
  expect(timeOfDay(moment, 60 * 3_600_000)).toBe('19:30, in 2 days');
  expect(timeOfDay(moment, -36 * 3_600_000)).toBe('19:30, 2 days ago');
});

test('in a practice, past its own midnight within seconds, a day is named only where a time of day alone is not enough', () => {
  const started = '2027-04-18T23:50:00-07:00';
  const practice = { ...moment, mode: 'practice' as const, speed: 600, t: 3_600_000 };
  const now = { ...practice, header: { ...moment.header!, started } };
  expect([timeOfDay(now, 0), timeOfDay({ ...now, t: 0 }, 3_600_000)]).toEqual(['23:50', '00:50']);
  expect(timeOfDay(now, -23 * 3_600_000)).toBe('yesterday 00:50');
  expect(timeOfDay({ ...now, mode: 'live', clock: '2027-04-19T07:50:00Z' }, 0)).toBe('yesterday 23:50');
});

test('lengths of time are said in the largest unit that is honest, on one line, from 90 min on with their hours, full ones alone', () => {
  expect([0, 119, 120, 3600, 89 * 60, 90 * 60, 6720, 7200, 11_100].map(lengthOfTime)).toEqual([
    '0\u00a0s',
    '119\u00a0s',
    '2\u00a0min',
    '60\u00a0min',
    '89\u00a0min',
    '1\u00a0h\u00a030\u00a0min',
    '1\u00a0h\u00a052\u00a0min',
    '2\u00a0h',
    '3\u00a0h\u00a005\u00a0min',
  ]);
  expect(lengthOfTime(-5)).toBe('0\u00a0s');
  expect([ago(3), ago(300)]).toEqual(['just now', '5\u00a0min ago']);
});

test('a day is written in its own zone; what is no time stays as it is', () => {
  expect(dayAndTime('2027-04-18T23:30:00-07:00')).toBe('18 Apr 2027, 23:30');
  expect(dayAndTime('soon')).toBe('soon');
  try {
    monthFirst.value = true;
    expect(dayAndTime('2027-04-18T23:30:00-07:00')).toBe('Apr 18, 2027, 23:30');
    expect(shortDay('2027-04-01')).toBe('Apr 1');
    expect(dayInWords('2027-04-05')).toBe('Monday, April 5, 2027');
  } finally {
    monthFirst.value = false;
  }
});

test('in French the days and months are French, and decimals have a comma', () => {
  language.value = 'fr';
  try {
    expect(timeOfDay(moment, 18 * 3_600_000)).toBe('demain 01:30');
    expect(dayAndTime('2027-04-18T23:30:00-07:00')).toBe('18 avr. 2027, 23:30');
    expect(shortDay('2027-04-01')).toBe('1er avr.');
    expect([ago(3), ago(300)]).toEqual(['à l’instant', 'il y a 5\u00a0min']);
    expect(temperature(101.34, metric)).toBe('101,3\u00a0°C');
  } finally {
    language.value = 'en';
  }
});

test('a day is said in words, so that nobody reads the month for the day', () => {
  expect(dayInWords('2027-04-05')).toBe('Monday 5 April 2027');
  expect(dayInWords('2027-04-05T07:30Z')).toBe('Monday 5 April 2027, 07:30');
  expect(dayInWords('soon')).toBe('soon');
  language.value = 'fr';
  expect(dayInWords('2027-04-01')).toBe('jeudi 1er avril 2027');
  language.value = 'en';
});

test('on the clock of twelve hours times of day have their half, said once of two of one half', () => {
  const before = settings.value;
  settings.value = { ...before, clock: '12' };
  const at = (hour: number, minute = 0): string => hoursAndMinutes((hour * 60 + minute) * 60_000);
  expect([at(0), at(9, 5), at(12), at(16, 40), at(23, 59)]).toEqual([
    '12:00\u00a0am',
    '9:05\u00a0am',
    '12:00\u00a0pm',
    '4:40\u00a0pm',
    '11:59\u00a0pm',
  ]);
  expect(fromTo(at(16, 32), at(16, 55))).toBe('4:32–4:55\u00a0pm');
  expect(fromTo(at(11, 50), at(12, 10))).toBe('11:50\u00a0am–12:10\u00a0pm');
  expect(timeOfDay(moment, 18 * 3_600_000)).toBe('tomorrow 1:30\u00a0am');
  settings.value = before;
  expect(fromTo(at(16, 32), at(16, 55))).toBe('16:32–16:55');
});

test('at the end of a boil its clock stands still, and so does the age of what was read; the times of day stay', () => {
  const endedAt = moment.t;
  const later = (seconds: number): Now => ({
    ...{ ...moment, ended: true, endedAt, t: endedAt + seconds * 1000 },
    clock: new Date(Date.parse(moment.clock) + seconds * 1000).toISOString(),
  });
  for (const seconds of [0, 96, 7200]) {
    const then = asAtItsEnd(later(seconds));
    expect(then.t).toBe(endedAt);
    expect(Date.parse(then.clock)).toBe(Date.parse(moment.clock));
    expect(timeOfDay(then, endedAt - 96_000)).toBe(timeOfDay(moment, endedAt - 96_000));
  }
  const zoned = { ...later(0), t: endedAt + 60_000, clock: '2027-04-18T08:31:00-07:00' };
  expect(asAtItsEnd(zoned).clock).toBe('2027-04-18T08:30:00.000-07:00');
  // One that runs goes on, and a replay has its own clock.
  const runs = { ...moment, t: endedAt + 5000 };
  expect(asAtItsEnd(runs)).toBe(runs);
  const replayed = { ...later(60), view: 'replay' as const };
  expect(asAtItsEnd(replayed)).toBe(replayed);
});
