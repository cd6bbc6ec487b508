// What was said at a moment and what came later are told apart in words, and so are calls under other choices.
import { expect, test } from 'vitest';
import { openedTitle, type PanKnown } from '../../../src/protocol/replay-messages.ts';
import { language } from '../../../src/screen/language/language.ts';
import {
  cameWords,
  differenceWords,
  printedWords,
  saidWords,
  stillReadWords,
  titleWords,
} from '../../../src/screen/words/replay-words.ts';
import type { Now } from '../../../src/screen/client/types.ts';
import { moment } from '../moment.ts';

const HOUR = 3_600_000;
const MINUTE = 60_000;
const started = '2027-04-18T07:30:00-07:00';
const now: Now = {
  ...moment,
  view: 'replay',
  mode: 'replay',
  t: 8 * HOUR,
  header: { ...moment.header!, started },
  replay: {
    playing: false,
    length: 12 * HOUR,
    title: 'First run, invented',
    started,
    readUntil: 12 * HOUR,
    choices: null,
    known: [],
  },
};

/** It said 16:40, between 16:32 and 16:55. */
const at = (hours: number, minutes: number): number => (hours - 7.5) * HOUR + minutes * MINUTE;
const known: PanKnown = {
  pan: 'p1',
  said: { at: at(16, 40), low: at(16, 32), high: at(16, 55) },
  was: { at: at(16, 47), by: 'called' },
  later_s: 420,
  inRange: true,
};

test('it said 16:40, it was 16:47', () => {
  expect(saidWords(known, now)).toBe('it said 16:40, between 16:32 and 16:55');
  expect(cameWords(known, now)).toBe('it was 16:47, as it was called: 7\u00a0min later, within what it said');
});

test('what is not known is said as not known', () => {
  expect(saidWords({ ...known, said: null }, now)).toBe('it said nothing of the finish yet');
  const open = { ...known, was: null, later_s: null, inRange: null };
  expect(cameWords(open, now)).toBe('no finish came after this');
  expect(cameWords(open, { ...now, replay: { ...now.replay!, readUntil: HOUR } })).toBe('not read so far yet');
});

test('a finish outside of the range is told so, and one on the minute has no way', () => {
  expect(cameWords({ ...known, was: { at: at(16, 20), by: 'density' }, later_s: -1200, inRange: false }, now)).toBe(
    'it was 16:20, as an instrument told: 20\u00a0min sooner, outside of what it said',
  );
  expect(cameWords({ ...known, later_s: 12 }, now)).toContain('to the half minute');
});

test('calls that moved, went or came are told with their times', () => {
  const one = { pan: 'p1', port: null, alarm: 'near-finish' as const };
  const words = (rest: Pick<Parameters<typeof differenceWords>[0], 'was' | 'would' | 'later_s' | 'words'>): string =>
    differenceWords({ ...one, ...rest }, now);
  expect(words({ was: at(16, 0), would: at(15, 48), later_s: -720, words: '12 min sooner' })).toMatch(
    /: 12\u00a0min sooner, at 15:48 and not at 16:00$/u,
  );
  expect(words({ was: at(16, 0), would: null, later_s: null, words: 'would not be called' })).toMatch(
    /would not be called \(it was at 16:00\)$/u,
  );
  expect(words({ was: null, would: at(15, 48), later_s: null, words: 'would be called' })).toMatch(
    /would be called at 15:48$/u,
  );
});

test('a printed page says that it is of a replay', () => {
  expect(printedWords(now)).toBe('Printed from a replay of “First run, invented” at 15:30. Nothing here is live.');
});

test('of a past boil it is said that it is still being read, until the end of it is read and shown', () => {
  const replay = now.replay!;
  const { length } = replay;
  const stillRead = expect.stringContaining('still being read');
  expect(stillReadWords({ ...now, t: 0, replay: { ...replay, readUntil: 0 } })).toEqual(stillRead);
  expect(stillReadWords({ ...now, t: length, replay: { ...replay, readUntil: length - 1 } })).toEqual(stillRead);
  expect(stillReadWords({ ...now, t: length - 1, replay })).toEqual(stillRead);
  expect(stillReadWords({ ...now, t: length, replay })).toBeNull();
  expect(stillReadWords({ ...now, replay: null })).toBeNull();
});

test('a pan that was taken off short of its finish is not told as finished then', () => {
  const off: PanKnown = { ...known, was: { at: at(13, 29), by: 'unfinished' }, later_s: null, inRange: null };
  expect(cameWords(off, now)).toBe('it was taken off unfinished at 13:29');
});

test('a recording that was opened is said to be so in the language of the page, and a kept boil keeps its name', () => {
  const titled = (title: string): string => titleWords({ header: null, replay: { title } as Now['replay'] });
  expect(titled(openedTitle('Bouleau essai'))).toBe('Bouleau essai (opened, not in the notebook)');
  language.value = 'fr';
  expect(titled(openedTitle('Bouleau essai'))).toBe('Bouleau essai (ouverte, pas dans le cahier)');
  expect(titled('Running low')).toBe('Running low');
  language.value = 'en';
});
