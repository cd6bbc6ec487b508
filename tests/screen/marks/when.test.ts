// When something was: minutes ago, a time of day that has passed, or a pour that was seen.
import { expect, test } from 'vitest';
import {
  dayOf,
  daysToChoose,
  happenedAt,
  justPassed,
  litAt,
  momentOf,
  whyNoMoment,
} from '../../../src/screen/marks/when.ts';
import { timeOfDay } from '../../../src/screen/words/clock.ts';
import { moment } from '../moment.ts';

/** Half past seven in the morning is boil time 0, and it is eight now. */
const MINUTE_MS = 60_000;
const at = (typed: string): number | null | undefined => momentOf({ typed }, moment, undefined);

test('now is no time of its own, and minutes ago are taken off', () => {
  expect(momentOf({ ago: 0 }, moment, undefined)).toBeUndefined();
  expect(momentOf({ ago: 20 }, moment, undefined)).toBe(10 * MINUTE_MS);
});

test('a time of day is the last one that it was since the boil began', () => {
  expect(at('07:42')).toBe(12.5 * MINUTE_MS);
  expect(at('08:00')).toBe(30 * MINUTE_MS);
  for (const typed of ['7:42', '7.42', '7h42', '0742', '742', ' 7 h 42 ']) expect(at(typed)).toBe(12.5 * MINUTE_MS);
  expect(at('07:30')).toBe(MINUTE_MS / 2);
  for (const typed of ['7:42 am', '7:42 AM', '7.42 a.m.', '742am']) expect(at(typed)).toBe(12.5 * MINUTE_MS);
  expect(at('8 am')).toBe(30 * MINUTE_MS);
});

test('noon and midnight by am and pm are the ones meant', () => {
  const clock = moment.clock.replace('T15:00', 'T20:30');
  const now = { ...moment, clock, t: 6 * 60 * MINUTE_MS };
  expect(momentOf({ typed: '12:10 pm' }, now, undefined)).toBe(280.5 * MINUTE_MS);
  expect(momentOf({ typed: '1:30 pm' }, now, undefined)).toBe(now.t);
  expect(momentOf({ typed: '12:10 am' }, now, undefined)).toBeNull();
});

test('a time before the boil began is refused, and it is said when that was', () => {
  for (const typed of ['07:29', '05:00', '23:30']) {
    expect(at(typed)).toBeNull();
    expect(whyNoMoment({ typed }, moment)).toBe(
      `This boil began at 07:30: ${typed} was before it, or is still to come. What was in a pan by then is noted at 07:30.`,
    );
  }
  expect(whyNoMoment({ typed: 'eight' }, moment)).toContain('Type a time of day that has passed');
});

test('a time that is still to come, or none, is not taken for yesterday', () => {
  expect(at('08:10')).toBeNull();
  for (const typed of ['8 pm', '7:42 pm', '13:42 am', '0:10 am', '24:00', '7:60', '7', ''])
    expect(at(typed)).toBeNull();
});

test('in a boil of a day and more the day is chosen with the time of day, and is the last that it was until then', () => {
  // Lit at 07:30 the day before yesterday; it is eight now.
  const now = { ...moment, t: 48 * 60 * MINUTE_MS + moment.t };
  expect(daysToChoose(moment)).toEqual([]);
  expect(daysToChoose(now)).toEqual([0, 1, 2]);
  expect(dayOf({ typed: '07:42' }, now)).toBe(0);
  expect(dayOf({ typed: '23:50' }, now)).toBe(1);
  const typed = (time: string, days?: number) => momentOf({ typed: time, days }, now, undefined);
  expect(typed('07:42')).toBe(48 * 60 * MINUTE_MS + 12.5 * MINUTE_MS);
  expect(typed('07:42', 1)).toBe(24 * 60 * MINUTE_MS + 12.5 * MINUTE_MS);
  expect(typed('07:42', 2)).toBe(12.5 * MINUTE_MS);
  expect(typed('23:50')).toBe(typed('23:50', 1));
  expect(typed('23:50', 0)).toBeNull();
  expect(typed('07:00', 2)).toBeNull();
  expect(typed('', 2)).toBeNull();
});

test('the time at which the fire was lit is one that can be typed, on whichever day that was', () => {
  expect(litAt(moment)).toBeNull();
  for (const hours of [0.5, 9, 30, 47]) {
    const now = { ...moment, t: hours * 60 * MINUTE_MS, watchedFrom: hours * 60 * MINUTE_MS };
    expect(momentOf(litAt(now)!, now, undefined)).toBe(MINUTE_MS / 2);
  }
});

test('a fire is noted at its own minute whenever the button is pressed, though the wall clock is told to the second', () => {
  const started = '2027-04-18T15:30:00-07:00';
  const fire = Date.parse(started);
  // Each quarter of a second of a minute and more, by a clock that has drifted from boil time by up to 2 s.
  for (const driftMs of [-2000, -700, 0, 700, 2000]) {
    for (let t = 7_200_000; t < 7_262_000; t += 253) {
      const clock = `${new Date(Math.floor((fire + t + driftMs) / 1000) * 1000).toISOString().slice(0, 19)}Z`;
      const now = { ...moment, header: { ...moment.header!, started }, t, clock, watchedFrom: 7_000_000 };
      const lit = litAt(now)!;
      expect(lit).toEqual({ typed: '15:30', days: 0 });
      const at = momentOf(lit, now, undefined);
      expect(at).toBe(MINUTE_MS / 2);
      expect(timeOfDay(now, at!)).toBe('15:30');
    }
  }
});

test('the example that is shown is one that can be typed', () => {
  for (const t of [1_800_000, 1_829_000, 1_831_000, 1_859_000]) {
    const now = { ...moment, t, clock: new Date(Date.parse(moment.clock) + t - moment.t).toISOString() };
    expect(momentOf({ typed: justPassed(now) }, now, undefined)).not.toBeNull();
  }
});

test('a mark says when it happened only where that is not now', () => {
  const mark = { kind: 'flame', pan: 'p1', level: 1 } as const;
  expect(happenedAt(mark, undefined)).not.toHaveProperty('happened');
  expect(happenedAt(mark, 5)).toEqual({ ...mark, happened: 5 });
  const pour = { pan: 'p1', at: 300_000, litres: 4, low: 3, high: 5 };
  expect(momentOf('then', moment, pour)).toBe(300_000);
});
