// When a check in boiling water is due: none today, or a front that came through since the last one.
import { expect, test } from 'vitest';
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import type { BoilState } from '../../../src/core/boil/state.ts';
import { checkDue } from '../../../src/host/probes/check-due.ts';
import { foldAll, mark, tarnHollow } from '../../core/boil/tarn-hollow.ts';
import { boilingCheck, keptProbe } from './kept.ts';

const NOW = '2027-04-18T09:00:00-07:00';
const checkedAt = (at: string) => keptProbe({ checks: [boilingCheck(at)], error: { tooHighC: 0.4, sigmaC: 0.1 } });
const boil = (entries: Entry[], over: Partial<Header> = {}): BoilState =>
  foldAll(tarnHollow(over), entries, 3_600_000).state;

const pressure = (t: number, hpa: number): Entry => mark(t, { kind: 'pressure', hpa, at: 'station' });
const byHand: Entry = mark(60_000, { kind: 'water-check', celsius: 100 });
const check = (t: number): Entry => mark(t, { kind: 'water-check', probe: 'A/1', celsius: 100 });

test.each<[string, Parameters<typeof checkDue>, boolean]>([
  ['who has no probe', [[], null, NOW], false],
  ['who has one that was never checked', [[keptProbe()], null, NOW], true],
  ['who checked yesterday', [[checkedAt('2027-04-17T23:50:00-07:00')], null, NOW], true],
  ['who checked one today', [[checkedAt('2027-04-18T06:00:00-07:00'), keptProbe({ channel: 'T2' })], null, NOW], false],
  ['whose boil has no probe', [[], boil([], { probes: [], pans: [] }), NOW], false],
  ['whose boil has probes and no check', [[], boil([]), NOW], true],
  ['who checked today, before the boil', [[checkedAt('2027-04-18T06:00:00-07:00')], boil([]), NOW], false],
  ['who checked the thermometer in the hand', [[], boil([byHand]), NOW], true],
  ['who checked in the boil', [[], boil([check(60_000)]), NOW], false],
])('%s', (_who, asked, isDue) => {
  const sentence = checkDue(...asked);
  if (isDue) expect(sentence).toMatch(/^No probe has been checked in boiling water today\./);
  else expect(sentence).toBeNull();
});

test('the newest of two checks is the one that counts', () => {
  const twice = keptProbe({
    checks: [boilingCheck('2027-04-18T06:00:00-07:00'), boilingCheck('2027-04-10T06:00:00-07:00')],
  });
  expect(checkDue([twice], null, NOW)).toBeNull();
});

test.each([
  ['a front that lets water boil lower', 1005, /water now boils 0\.2 °C lower\. Check a probe/],
  ['one that lets it boil higher', 1021, /water now boils 0\.2 °C higher\. Check a probe/],
  ['a breath of weather', 1011, null],
])('%s after the check', (_what, hpa, words) => {
  const sentence = checkDue([], boil([pressure(0, 1013), check(60_000), pressure(1_800_000, hpa)]), NOW);
  if (words === null) expect(sentence).toBeNull();
  else expect(sentence).toMatch(words);
});

test('a front before the check is none since, and one pressure alone tells of no front', () => {
  expect(checkDue([], boil([pressure(0, 1013), pressure(60_000, 1005), check(120_000)]), NOW)).toBeNull();
  expect(checkDue([], boil([check(60_000), pressure(1_800_000, 1005)]), NOW)).toBeNull();
});
