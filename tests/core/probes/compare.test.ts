// Several tips in one pan: what they show together, which one is at odds, and when nobody can tell.
import { expect, test } from 'vitest';
import { APART_C, compareTips, type Tip } from '../../../src/core/probes/compare.ts';
import { noteRecent, startRecent } from '../../../src/core/probes/recent.ts';

const NOW_MS = 60_000;

/** A tip that showed one temperature for a minute, once a second, until `untilMs`. */
function tip(probe: string, celsius: number, over: Partial<Tip> = {}, untilMs = NOW_MS): Tip {
  const recent = startRecent();
  for (let t = 0; t <= untilMs; t += 1000) noteRecent(recent, t, celsius);
  return { probe, recent, correctionC: 0, doubted: false, ...over };
}

test('two that agree are their mean, each made true first', () => {
  const tips = [tip('A/1', 101, { correctionC: 0.2 }), tip('A/2', 101.8, { correctionC: -0.2 })];
  expect(compareTips(tips, null, NOW_MS)).toEqual({
    meanC: expect.closeTo(101.4) as number,
    apartC: expect.closeTo(0.4) as number,
    odd: null,
  });
});

test('of two that differ nobody can tell which is right, and the mean is of both', () => {
  expect(compareTips([tip('A/1', 101), tip('A/2', 104)], null, NOW_MS)).toEqual({ meanC: 102.5, apartC: 3, odd: null });
});

test.each<[string, Tip[], number | null, string | null, number]>([
  ['the doubted one', [tip('A/1', 101), tip('A/2', 104, { doubted: true })], null, 'A/2', 101],
  ['the one too cold for this pan', [tip('A/1', 101), tip('A/2', 97)], 99, 'A/2', 101],
  ['of three the one far from the middle', [tip('A/1', 101), tip('A/2', 101.2), tip('A/3', 105)], null, 'A/3', 101.1],
  ['nobody where two of three are far apart', [tip('A/1', 99), tip('A/2', 101), tip('A/3', 103)], null, null, 101],
  [
    'nobody where both are doubted',
    [tip('A/1', 101, { doubted: true }), tip('A/2', 104, { doubted: true })],
    null,
    null,
    102.5,
  ],
])('at odds is %s', (_which, tips, leastC, odd, meanC) => {
  const compared = compareTips(tips, leastC, NOW_MS);
  expect(compared?.odd).toBe(odd);
  expect(compared?.meanC).toBeCloseTo(meanC);
});

test('closer than a degree nobody is at odds, doubted or not', () => {
  const tips = [tip('A/1', 101), tip('A/2', 101 + APART_C - 0.1, { doubted: true })];
  expect(compareTips(tips, null, NOW_MS)?.odd).toBeNull();
});

test('one that fell silent is not compared, and one alone is nothing', () => {
  const silent = tip('A/3', 60, {}, NOW_MS - 40_000);
  expect(compareTips([tip('A/1', 101), tip('A/2', 101), silent], null, NOW_MS)).toMatchObject({
    meanC: 101,
    apartC: 0,
  });
  expect(compareTips([tip('A/1', 101), silent], null, NOW_MS)).toBeNull();
});
