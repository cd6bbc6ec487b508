// When a pan is done, in words: nothing is expected of a boil that was ended.
import { expect, test } from 'vitest';
import type { MarkView } from '../../../src/screen/client/types.ts';
import { forecastWords, whyMoved } from '../../../src/screen/pans/forecast-words.ts';
import { metric, moment, reading } from '../moment.ts';

test('a pan that was left on the fire has no forecast once the boil was ended, and has it in a replay', () => {
  expect(forecastWords(moment, reading)).toEqual({ headline: 'Done about 08:09', range: '08:07–08:12' });
  expect(forecastWords({ ...moment, ended: true }, reading)).toBeNull();
  expect(forecastWords({ ...moment, ended: true, view: 'replay' }, reading)?.headline).toBe('Done about 08:09');
});

test('of a pan off the fire, which its card says at its head, nothing is expected', () => {
  const off = { ...reading, stage: 'off' as const };
  for (const ended of [false, true]) expect(forecastWords({ ...moment, ended }, off)).toBeNull();
});

test('a pan that is called at its finish a little before the middle of what is believed is not done about some time', () => {
  const called = { ...reading, stage: 'finished' as const };
  expect(forecastWords(moment, called)).toEqual({ headline: 'May be done: check', range: null });
  expect(forecastWords(moment, { ...called, finish_in_s: 0 })?.headline).toBe('Done now');
});

test('a count that has run to the finish, of a pan that is not called yet, is a question and no word that it is done', () => {
  const counted = {
    ...reading,
    stage: 'boiling' as const,
    brix: null,
    finish_in_s: 0,
    finish_low_s: 0,
    finish_high_s: 0,
  };
  expect(forecastWords(moment, counted)).toEqual({ headline: 'May be done: check', range: null });
});

const poured = (mark: MarkView['mark'], at: number, finishAt: number | null): MarkView => ({
  t: at,
  at,
  mark,
  withdrawn: false,
  questioned: false,
  doubt: null,
  corrections: [
    {
      t: at,
      pan: 'p1',
      before: { brix: 40, litres: 5, finishAt: 2_000_000 },
      after: { brix: 20, litres: 9, finishAt },
    },
  ],
  cameTo: null,
  takenC: null,
});
const topUp = { kind: 'top-up', pan: 'p1', litres: 12.5 } as const;
const why = (...marks: MarkView[]): string | null => whyMoved({ ...moment, marks }, reading, metric);

test('a pour that moved the finish is told with its amount and its time', () => {
  expect(why(poured(topUp, 1_200_000, 5_000_000))).toMatch(/^Changed: poured in 12\.5\sL at 07:50$/u);
  expect(why(poured({ kind: 'top-up', pan: 'p1' }, 1_200_000, 5_000_000))).toBe('Changed: poured in at 07:50');
  const from = { kind: 'transfer', from: 'p2', to: 'p1', all: true } as const;
  expect(why(poured(from, 1_200_000, 5_000_000))).toBe('Changed: poured in from Pan 2 at 07:50');
});

test('nothing is told where no finish was said before or is said now, it hardly moved, it is long ago, or it was taken back', () => {
  expect(why(poured(topUp, 1_200_000, null))).toBeNull();
  expect(why(poured(topUp, 1_200_000, 2_030_000))).toBeNull();
  const long = poured(topUp, 1_200_000, 5_000_000);
  expect(whyMoved({ ...moment, t: moment.t + 40 * 60_000, marks: [long] }, reading, metric)).toBeNull();
  expect(why({ ...long, withdrawn: true })).toBeNull();
  expect(why({ ...long, questioned: true })).toBeNull();
  expect(why(poured({ ...topUp, pan: 'p2' }, 1_200_000, 5_000_000))).toBeNull();
  const one = { pan: 'p1', ask: null, shallow: null, tooLittle: true, roomLitres: null, smallestBatch: null };
  const little = {
    ...moment,
    marks: [poured(topUp, 1_200_000, 5_000_000)],
    advice: [{ ...one, fellC: null, moreThanNoted: false, litresRoughly: null, readAgainAt: null }],
  };
  expect(whyMoved(little, reading, metric)).toBeNull();
});

test('what was drawn off after a pour moved the finish, too: the pour alone explains it no more', () => {
  const drawn = poured({ kind: 'draw-off', pan: 'p1', litres: 7 }, 1_250_000, 4_000_000);
  expect(why(poured(topUp, 1_200_000, 5_000_000), drawn)).toBeNull();
  expect(why(drawn, poured(topUp, 1_260_000, 5_000_000))).toContain('poured in');
  const elsewhere = poured({ kind: 'draw-off', pan: 'p2', litres: 7 }, 1_250_000, 4_000_000);
  expect(why(poured(topUp, 1_200_000, 5_000_000), elsewhere)).toContain('poured in');
});

test('when it is done is called a count while no thermometer shows the pan', () => {
  expect(forecastWords(moment, { ...reading, temperature_c: null })?.headline).toBe('By count: done about 08:09');
});
