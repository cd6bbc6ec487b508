// What tuning says of a boil whose end nobody can tell: what was noted of it, and what that lacks.
import { expect, test } from 'vitest';
import {
  alikeWords,
  fieldWords,
  isMeasured,
  offsetWords,
  SCORE_LINES,
  sumTitle,
  truthWords,
  untoldWords,
} from '../../../src/screen/words/tune-words.ts';
import { SEARCHED, trialsOf } from '../../../src/core/tuning/search.ts';
import { LEADS } from '../../../src/screen/settings/lead-field.tsx';
import { TRIED } from '../../../src/screen/tune/tune-draft.ts';
import { metric } from '../moment.ts';
import { language } from '../../../src/screen/language/language.ts';
import { say } from '../../../src/screen/language/say.ts';
import { settings } from '../../../src/screen/client/store.ts';

const untold = { pan: 'Back pot', brix: 66, finishBrix: 67 };

test.each([
  [null, /^no density was noted near its finish$/],
  [{ ...untold, why: 'left-out' as const }, /^Back pot: 66\.0\u00a0°Bx was noted, but it was asked about and left out/],
  [
    { ...untold, brix: 40, why: 'too-early' as const },
    /^Back pot: 40\.0\u00a0°Bx was noted, too far from .* 67\.0\u00a0°Bx/,
  ],
  [{ ...untold, why: 'not-followed' as const }, /^Back pot: 66\.0\u00a0°Bx was noted; missing is a thermometer/],
])('%o', (what, words) => {
  expect(untoldWords(what, settings.value)).toMatch(words);
});

const offset = { probe: 'A/1', boils: 5, too_high_c: 0.6, low_c: 0.4, high_c: 0.8, offset_c: -0.6, why: null };
const told = (temperature: 'C' | 'F', part: object = {}): string =>
  offsetWords({ ...offset, sentence: 'Probe A/1: too few boils.', ...part }, { ...settings.value, temperature });

test('how much a probe shows too much is said in the degrees that were chosen', () => {
  expect(told('C')).toBe(
    'Probe A/1 shows 0.6\u00a0°C too much (0.4 to 0.8), from 5 boils: an offset of −0.6\u00a0°C would make it right.',
  );
  expect(told('F')).toBe(
    'Probe A/1 shows 1.1\u00a0°F too much (0.7 to 1.4), from 5 boils: an offset of −1.1\u00a0°F would make it right.',
  );
  expect(told('F', { too_high_c: -0.6, low_c: -0.8, high_c: -0.4, offset_c: 0.6 })).toBe(
    'Probe A/1 shows 1.1\u00a0°F too little (0.7 to 1.4), from 5 boils: an offset of +1.1\u00a0°F would make it right.',
  );
  expect(told('F', { low_c: -0.1 })).toMatch(/no error that 5 boils can tell from none \(−0\.2 to \+1\.4\u00a0°F\)/);
  expect(told('F', { too_high_c: null })).toBe('Probe A/1: too few boils.');
});

const nothing = { near_finish_lead_s: null, finish_brix: null, scorch_lead_s: null, false_calls: 0, alarms: 10 };
const sum = { ...nothing, calls_per_hour: 1 };

test('what was measured short of the finish rests on nothing, and that is said in place of a count of boils', () => {
  expect(isMeasured([{ sum }])).toBe(false);
  expect(isMeasured([{ sum }, { sum: { ...sum, finish_brix: 66 } }])).toBe(true);
  expect(truthWords(1, 2, false)).toMatch(
    /^Of 2 boils one was measured, but not up to the finish: nothing can be told/,
  );
  expect(truthWords(1, 2, true)).toMatch(/^Rests on 1 of 2 boils/);
});

test('French says no without a second no', () => {
  language.value = 'fr';
  expect(truthWords(0, 2, false)).toMatch(/^D’aucune de ces 2 cuissons on ne sait quand/);
  expect(truthWords(0, 1, false)).toMatch(/^De cette cuisson, on ne sait pas quand/);
  language.value = 'en';
});

test('a lead is told as it was set, with its half minute', () => {
  expect(fieldWords('near_finish_lead_s', 450)).toMatch(/7\.5\u00a0min/);
  expect(fieldWords('near_finish_lead_s', 900)).toMatch(/15\u00a0min/);
});

test('two boils have no middle: theirs is called a mean, and counts are of all together', () => {
  expect(say('tune.middle', { boils: 2 })).toBe('Mean of the two boils that can tell');
  expect(say('tune.middle', { boils: 3 })).toBe('In the middle of the boils that can tell');
});

test('sums are called a mean only of boils that can tell; where none can, they are counts of all', () => {
  const untold = { sum, truths: 0, done: 2 };
  expect(sumTitle([untold, untold])).toBe('In these 2 boils');
  expect(sumTitle([{ ...untold, done: 1 }])).toBe('In this one boil');
  // Measured, but not up to the finish.
  expect(sumTitle([{ ...untold, truths: 2 }])).toBe('In these 2 boils');
  const told = { sum: { ...sum, finish_brix: 66 }, truths: 2, done: 5 };
  expect(sumTitle([untold, told])).toBe('Mean of the two boils that can tell');
});

test('a call that never came is no length of time, nor is what no pan came to', () => {
  const words = (scorch: number | null): string | undefined =>
    SCORE_LINES.find(({ label }) => label === 'tune.line.scorch')?.words(
      { ...nothing, scorch_lead_s: scorch, calls_per_hour: 1 },
      metric,
    );
  expect([words(0), words(null), words(240)]).toEqual([
    'no call before it',
    'no pan was measured so far on',
    '4\u00a0min',
  ]);
});

test('only what Settings offers is tried', () => {
  const offers = [...LEADS.map(({ name }) => name as string), 'finish_probability'];
  expect(SEARCHED.filter((field) => !offers.includes(field))).toEqual([]);
  expect(TRIED.map(({ field }) => field).filter((field) => !offers.includes(field))).toEqual([]);
  const now = { near_finish_lead_s: 1, scorch_lead_s: 1, finish_probability: 0.5 };
  const offered = (name: string): number[] =>
    (LEADS.find((lead) => lead.name === name)?.minutes ?? []).map((minutes) => 60 * minutes);
  const tried = trialsOf(['near_finish_lead_s', 'scorch_lead_s'], now);
  expect(tried).toHaveLength(5);
  for (const { settings } of tried) {
    expect(offered('near_finish_lead_s')).toContain(settings.near_finish_lead_s);
    expect(offered('scorch_lead_s')).toContain(settings.scorch_lead_s);
  }
});

test('settings that did the same in every line are named, where anybody can tell how good the calls were', () => {
  const measured = { ...sum, near_finish_lead_s: 300 };
  const row = (name: string, of: typeof measured) => ({ name, sum: of, done: 3 });
  const twenty = row('20 min', measured);
  const ten = row('10 min', measured);
  expect(alikeWords([twenty, ten, row('5 min', { ...measured, near_finish_lead_s: 200 })], metric)).toBe(
    'The same result: 20\u00a0min; 10\u00a0min. What differs between them changed nothing in these boils.',
  );
  expect(alikeWords([twenty, row('10 min', { ...measured, alarms: 11 })], metric)).toBeNull();
  const untold = { ...measured, near_finish_lead_s: null };
  expect(alikeWords([row('20 min', untold as never), row('10 min', untold as never)], metric)).toBeNull();
});
