// When the fire was lit, by the host's clock on the wall: earlier today, yesterday, or nothing that can be used.
import { expect, test } from 'vitest';
import { litExample, litOf, type Lit } from '../../../src/screen/boil/lit.ts';
import { moment } from '../moment.ts';

/** Eight in the morning of the 18th by the host's clock. */
const now = { ...moment, clock: '2027-04-18T08:00:20-07:00' };
const at = (day: Lit['day'], time: string): unknown => litOf({ day, time }, now);

test('nothing said is now', () => {
  expect(litOf(null, now)).toEqual({});
});

test('a time of day that has passed is one of today, and any is one of yesterday', () => {
  expect(at('today', '6:05')).toEqual({ lit: '2027-04-18T06:05:00' });
  expect(at('today', '8.00')).toEqual({ lit: '2027-04-18T08:00:00' });
  expect(at('yesterday', '11 pm')).toEqual({ lit: '2027-04-17T23:00:00' });
  expect(at('yesterday', '0:00')).toEqual({ lit: '2027-04-17T00:00:00' });
});

test('what is still to come, no time or none at all is asked for again, with an example', () => {
  for (const time of ['08:01', '', 'six', '25:00'])
    expect(at('today', time)).toEqual({
      wrong: expect.stringMatching(/^Type a time of day that has passed, such as/u),
    });
});

test('the example is of the real clock: a practice that just ended had its own', () => {
  const practised = { ...now, mode: 'practice' as const, ended: true, t: 9 * 3_600_000 };
  expect(litExample(practised)).toBe('07:59');
  expect(litOf({ day: 'today', time: '' }, practised)).toEqual({ wrong: expect.stringContaining('07:59') });
});
