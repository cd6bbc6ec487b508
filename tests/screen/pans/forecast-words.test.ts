// When a pan is done, in words: nothing is expected of a boil that was ended.
import { expect, test } from 'vitest';
import { forecastWords } from '../../../src/screen/pans/forecast-words.ts';
import { moment, reading } from '../moment.ts';

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
