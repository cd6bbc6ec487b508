// How well a probe does, said in words: what is not known is said so, and what is bad is marked.
import { expect, test } from 'vitest';
import type { ProbeHealth } from '../../../src/screen/client/types.ts';
import { healthWords, refusedWords, togetherWords } from '../../../src/screen/words/health-words.ts';
import { american, metric } from '../moment.ts';

type Probe = ProbeHealth['probes'][number];

const good: Probe = {
  id: 'A/1',
  channel: 'T1',
  port: 'A',
  pan: 'p1',
  isReference: false,
  noiseC: 0.04,
  stepC: 0.0625,
  lagS: 3.14,
  losses: 0,
  lostSeconds: 0,
  error: { tooHighC: 0.4, sigmaC: 0.1 },
  driftC: null,
  checkedAt: '2027-04-18T08:10:00-07:00',
  doubt: null,
};
const said = (over: Partial<Probe>): string => healthWords({ ...good, ...over }, metric);

test('a good probe in one sentence', () => {
  expect(said({})).toMatch(
    /^Quiet, within 0\.04 °C; tells steps of 0\.06 °C; follows within 3\.1\u00a0s; never lost; shows 0\.40 °C too much \(.*\), checked 18 Apr 2027, 08:10\.$/,
  );
});

test.each<[Partial<Probe>, string]>([
  [{ noiseC: null }, 'Its noise is not known yet'],
  [{ noiseC: 0.3 }, '▲ it jumps about by 0.30 °C'],
  [{ stepC: null }, 'its steps are not known yet'],
  [{ lagS: null }, 'its lag is not known: dip the cold tip into boiling water once'],
  [{ lagS: 14.4 }, '; follows within 14\u00a0s'],
  [{ lagS: 16 }, '▲ slow, follows within 16\u00a0s'],
  [{ losses: 1, lostSeconds: 60 }, 'lost once, 60\u00a0s in all'],
  [{ losses: 3, lostSeconds: 300 }, 'lost 3 times, 5\u00a0min in all'],
  [{ driftC: 0.31 }, 'checked 18 Apr 2027, 08:10, 0.3 °C more than at the check before'],
  [{ driftC: -0.31 }, '0.3 °C less than at the check before'],
  [{ driftC: 0.04 }, 'as at the check before'],
])('%o', (over, words) => {
  expect(said(over)).toContain(words);
});

test('a probe that was never checked says that its error is not known, and no date', () => {
  const words = said({ error: null, checkedAt: null });
  expect(words).toMatch(/; not checked; how much it is off is not known\.$/);
  expect(words).not.toContain('checked 1');
});

test('differences in Fahrenheit are differences, without the 32', () => {
  const words = healthWords({ ...good, noiseC: 0.1, driftC: 1 }, american);
  expect(words).toContain('within 0.18 °F');
  expect(words).toContain('1.8 °F more than at the check before');
});

const together = { pan: 'p1', meanC: 101.3, apartC: 0.24, odd: [], probes: ['A/1', 'A/2'] };

test('two that agree, two that differ, and the odd one out', () => {
  const of = (over: Partial<ProbeHealth['together'][number]>): string =>
    togetherWords('Back pot', { ...together, ...over }, metric);
  expect(of({})).toBe('✓ The 2 probes of Back pot agree within 0.2 °C: 101.3\u00a0°C together.');
  expect(of({ apartC: 3 })).toBe(
    '▲ The 2 probes of Back pot are 3.0 °C apart, and nobody can tell which is wrong: check both in boiling water.',
  );
  expect(of({ apartC: 3, odd: ['A/2'] })).toBe(
    '▲ The 2 probes of Back pot are 3.0 °C apart: A/2 is at odds. Without it: 101.3\u00a0°C.',
  );
  expect(of({ apartC: 3, odd: ['A/2', 'A/3'], probes: ['A/1', 'A/2', 'A/3'] })).toBe(
    '▲ The 3 probes of Back pot are 3.0 °C apart: A/2 and A/3 are at odds. Without them: 101.3\u00a0°C.',
  );
  expect(of({ apartC: 3, odd: ['A/1', 'A/2'] })).toBe(
    '▲ None of the 2 probes of Back pot can be believed now; they are 3.0 °C apart. Look at each, then check them in boiling water.',
  );
});

test('lines are counted in words', () => {
  expect(refusedWords('A', 'no value', 1)).toBe('A: no value, 1 line');
  expect(refusedWords('A', 'no value', 12)).toBe('A: no value, 12 lines');
});

test('a check that was too unsure to count is said as such, with its date', () => {
  expect(said({ error: null })).toContain('▲ its check of 18 Apr 2027, 08:10 was too unsure to count: check it again.');
});
