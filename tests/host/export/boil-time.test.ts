// Times of a report are on the clock beside the pans, of 24 or of 12 hours as it was chosen.
import { expect, test } from 'vitest';
import { timeText } from '../../../src/host/export/boil-time.ts';
import { languages } from '../../../src/host/languages.ts';

const [english, french] = ['en', 'fr'].map((language) => languages().tongue(language));
const STARTED = '2027-04-18T07:30:00-07:00';
const HOUR_MS = 3_600_000;

test('07:30, or half past seven in the morning', () => {
  const at = (hours: number, clock: '24' | '12', tongue = english!): string =>
    timeText(STARTED, hours * HOUR_MS, { clock }, tongue);
  expect([at(0, '24'), at(9, '24')]).toEqual(['07:30', '16:30']);
  expect([at(0, '12'), at(5, '12'), at(9, '12'), at(17, '12')]).toEqual([
    '7:30\u00a0am',
    '12:30\u00a0pm',
    '4:30\u00a0pm',
    '12:30\u00a0am',
  ]);
  expect(at(9, '12', french)).toBe('4:30\u00a0p.m.');
});
