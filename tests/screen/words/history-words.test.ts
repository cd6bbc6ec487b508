// A raising is told with its answer, what was put aside and its end; the look back counts in plain words.
import { expect, test } from 'vitest';
import { lookBack } from '../../../src/core/boil/look-back.ts';
import type { RaisingShown } from '../../../src/screen/client/types.ts';
import { courseWords, lookBackLines, raisingWords } from '../../../src/screen/words/history-words.ts';
import { alarm, moment } from '../moment.ts';

const minute = 60_000;
const raising: RaisingShown = {
  alarm: 'low-level',
  pan: 'p1',
  port: null,
  priority: 'medium',
  why: '14 mm deep',
  raisedAt: 10 * minute,
  answeredAt: null,
  clearedAt: null,
  asides: [],
  noUse: false,
};

test('a raising is called by its pan and title, a reminder by its own words', () => {
  expect(raisingWords(raising, moment)).toBe('Front pot: Running low');
  expect(raisingWords({ ...raising, alarm: 'reminder', pan: null, why: 'Skim' }, moment)).toBe('Reminder: Skim');
});

test('while its call stands a raising is called by the word that stands over that', () => {
  const call = {
    ...alarm,
    alarm: 'scorch-risk' as const,
    pan: 'p1',
    port: null,
    since: raising.raisedAt,
    title: 'Burning',
  };
  const burning: RaisingShown = { ...raising, alarm: 'scorch-risk' };
  expect(raisingWords(burning, { ...moment, alarms: [call] })).toBe('Front pot: Burning');
  expect(raisingWords({ ...burning, raisedAt: 0 }, { ...moment, alarms: [call] })).toBe('Front pot: About to burn');
});

test('its course says what was done and when', () => {
  expect(courseWords(raising, moment)).toEqual(['not seen yet', 'still there']);
  expect(courseWords({ ...raising, clearedAt: 25 * minute }, moment)).toEqual(['not seen', 'over at 07:55']);
  const asides = [
    { at: 11 * minute, until: 21 * minute, reason: 'I stand beside it' },
    { at: 15 * minute, until: 15 * minute, reason: 'taken up again' },
  ];
  const whole = { ...raising, answeredAt: 10 * minute + 40_000, clearedAt: 25 * minute, asides };
  expect(courseWords(whole, moment)).toEqual([
    'seen after 40\u00a0s',
    'put aside at 07:41 for 10\u00a0min, “I stand beside it”',
    'taken up again at 07:45',
    'over at 07:55',
  ]);
});

test('what was done for it is told beside that it was seen, or in its place', () => {
  const done = { ...raising, doneAt: 12 * minute, clearedAt: 12 * minute };
  expect(courseWords(done, moment)).toEqual(['what it asks for noted after 2\u00a0min', 'over at 07:42']);
  expect(courseWords({ ...done, answeredAt: 11 * minute }, moment)).toEqual([
    'seen after 60\u00a0s',
    'what it asks for noted after 2\u00a0min',
    'over at 07:42',
  ]);
});

test('of a boil that is over a call that nobody ended stood at its end, and is seen by nobody any more', () => {
  expect(courseWords(raising, { ...moment, ended: true })).toEqual(['not seen', 'stood at the end of the boil']);
  const over = { ...raising, clearedAt: 25 * minute };
  expect(courseWords(over, { ...moment, ended: true })).toEqual(['not seen', 'over at 07:55']);
});

test('what was over before anybody saw it is told in that order', () => {
  const late = { ...raising, answeredAt: 38 * minute, clearedAt: 21 * minute };
  expect(courseWords(late, moment)).toEqual(['over at 07:51', 'seen after 28\u00a0min']);
  const asides = [{ at: 11 * minute, until: 16 * minute, reason: '' }];
  expect(courseWords({ ...late, asides }, moment)[0]).toBe('put aside at 07:41 for 5\u00a0min');
  // Nobody saw it: that is said first, whatever was put aside.
  expect(courseWords({ ...raising, asides }, moment)[0]).toBe('not seen yet');
});

test('a call that came while all sound was off says so first, and the look back counts it', () => {
  const silent = { ...raising, inQuiet: true as const };
  expect(courseWords(silent, moment)[0]).toBe('came while all sound was off');
  const history = { ...moment.history, raisings: [silent, raising] };
  const lines = Object.fromEntries(lookBackLines(lookBack([silent, raising]), 0, { ...moment, history }));
  expect(lines['Came while all sound was off']).toBe('1');
  expect(Object.fromEntries(lookBackLines(lookBack([raising]), 0, moment))).not.toHaveProperty(
    'Came while all sound was off',
  );
});

test('calls that are kept no more, that came at once and that flooded are counted in words', () => {
  const look = {
    ...lookBack([raising]),
    raised: 200,
    answered: 5,
    answeredAfterS: 40,
    chatter: 2,
    floods: 1,
    noUse: 0,
  };
  const lines = Object.fromEntries(lookBackLines(look, 12, moment));
  expect(lines).toMatchObject({
    Calls: '200, and 12 before those',
    'Seen or acted on': '5 of 200, usually after 40\u00a0s',
    'Came and was over at once': '2 times: one call, over 3 times a minute',
    'Too many at once': 'once: over 10 within 10\u00a0min',
    'Of no use, you said': 'none',
  });
});

test('the look back says how many, how fast, and which most often', () => {
  const again = { ...raising, raisedAt: 20 * minute, answeredAt: 21 * minute, noUse: true };
  const lines = Object.fromEntries(lookBackLines(lookBack([raising, again]), 0, moment));
  expect(lines).toEqual({
    Calls: '2',
    'Seen or acted on': '1 of 2, after 60\u00a0s',
    'Most in one hour': '2',
    'Came and was over at once': 'none',
    'Too many at once': 'never',
    'Most often': 'Front pot: Running low, 2 times',
    'Of no use, you said': '1',
  });
});

test('what happened once is no habit, and three times is', () => {
  const seen = (after: number[]): string => {
    const answered = after.map((seconds) => ({ ...raising, answeredAt: raising.raisedAt + seconds * 1000 }));
    return Object.fromEntries(lookBackLines(lookBack(answered), 0, moment))['Seen or acted on']!;
  };
  expect(seen([40])).toBe('after 40\u00a0s');
  expect(seen([40, 60])).toBe('all');
  const unseen = Object.fromEntries(lookBackLines(lookBack([raising]), 0, moment));
  expect(unseen['Seen or acted on']).toBe('none');
  expect(seen([40, 60, 20])).toBe('all, usually after 40\u00a0s');
});

test('a boil without alarms says so in one line', () => {
  expect(lookBackLines(lookBack([]), 0, moment)).toEqual([['Calls', 'none']]);
});
