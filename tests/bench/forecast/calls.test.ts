// The judge of calls: leads, finishes, burnings, and what counts as a cause.
import { expect, test } from 'vitest';
import {
  episodes,
  falseHighCalls,
  finishCall,
  lostBoils,
  nearFinishLead,
  scorchCalls,
  secondsToBurning,
} from './calls.ts';
import { call, minute, panCase, type CasePlan } from './pan-case.ts';

/** 1 °Bx a minute from 7 °Bx: 67 °Bx after an hour. */
const rising = (given: Partial<CasePlan> = {}) =>
  panCase({ minutes: 80, truly: (at) => ({ brix: 7 + at, massKg: 500 / (7 + at) }), ...given });
const finishT = 60 * minute;

test('a call lasts from raised to cleared', () => {
  const calls = [call(1, 'finish'), call(2, 'finish', 'cleared'), call(3, 'low-level'), call(4, 'finish')];
  expect(episodes(calls, 'finish')).toEqual([
    { from: minute, to: 2 * minute },
    { from: 4 * minute, to: Infinity },
  ]);
});

test('the first near-finish call counts, however often it comes again; none is missing, not nothing', () => {
  const calls = [call(41, 'near-finish'), call(43, 'near-finish', 'cleared'), call(50, 'near-finish')];
  expect(nearFinishLead(rising({ calls }), finishT)).toEqual([{ lead: 19 }]);
  expect(nearFinishLead(rising(), finishT)).toEqual([{ lead: null }]);
});

test('a lead is judged only 25 min after the last hand, and a call from before the pour must outlast it', () => {
  const calls = [call(20, 'near-finish'), call(31, 'near-finish', 'cleared'), call(52, 'near-finish')];
  const disturbed = [{ t: 30 * minute, poured: true }];
  expect(nearFinishLead(rising({ calls, disturbed }), finishT)).toEqual([{ lead: 8 }]);
  expect(nearFinishLead(rising({ calls: [call(20, 'near-finish')], disturbed }), finishT)).toEqual([{ lead: 40 }]);
  expect(nearFinishLead(rising({ calls, disturbed: [{ t: 36 * minute, poured: false }] }), finishT)).toEqual([]);
});

test('a finish is off by the true strength at its first call since the last pour; after the next pour it is missing', () => {
  expect(finishCall(rising({ calls: [call(59, 'finish')] }), finishT)).toBeCloseTo(-1, 9);
  expect(finishCall(rising({ calls: [call(62, 'past-finish')] }), finishT)).toBeCloseTo(2, 9);
  expect(finishCall(rising({ calls: [call(20, 'finish')] }), finishT)).toBeCloseTo(-40, 9);
  const disturbed = [
    { t: 30 * minute, poured: true },
    { t: 61 * minute, poured: true },
  ];
  expect(finishCall(rising({ calls: [call(20, 'finish'), call(63, 'finish')], disturbed }), finishT)).toBeNull();
});

test('burning counts the call that stands or ended shortly before; for want of depth or for its strength', () => {
  const burned = { t: 70 * minute, what: 'burned' as const, pan: 'p1', depth_mm: 30 };
  const judged = (...calls: ReturnType<typeof call>[]) => scorchCalls(rising({ calls }), [burned]);
  expect(judged(call(66, 'scorch-risk'))).toEqual([{ way: 'too-strong', lead: 4 }]);
  expect(judged(call(50, 'scorch-risk'), call(59, 'scorch-risk', 'cleared'))).toEqual([
    { way: 'too-strong', lead: null },
  ]);
  expect(judged(call(50, 'scorch-risk'), call(62, 'scorch-risk', 'cleared'))).toEqual([
    { way: 'too-strong', lead: 20 },
  ]);
  expect(
    scorchCalls(rising(), [
      { ...burned, depth_mm: 3.9 },
      { ...burned, pan: 'p2' },
    ]),
  ).toEqual([{ way: 'too-shallow', lead: null }]);
});

test('a pan burns when its strength or its depth is gone, at the rate of the last minute', () => {
  const { samples } = panCase({
    minutes: 10,
    truly: (at) => ({ massKg: 5 - 0.1 * at, brix: (100 * 2) / (5 - 0.1 * at), depthMm: 10 * (5 - 0.1 * at) }),
  });
  const now = samples[30]!;
  expect(secondsToBurning(samples, now) / 60).toBeCloseTo((4.5 - 2 / 0.78) / 0.1, 6);
  expect(secondsToBurning(samples, { ...now, depthMm: 5 }) / 60).toBeCloseTo((4.5 * 0.2) / 0.1, 6);
  expect(secondsToBurning(samples, { ...now, level: 0 })).toBe(Infinity);
});

const alarmsOf = (given: Partial<CasePlan>) => falseHighCalls(rising(given)).map(({ alarm }) => alarm);

test('a finish has a cause from 1.5 °Bx under it on; only calls of high priority are judged', () => {
  expect(alarmsOf({ calls: [call(58.6, 'finish')] })).toEqual([]);
  expect(alarmsOf({ calls: [call(58, 'finish')] })).toEqual(['finish']);
  expect(alarmsOf({ calls: [call(20, 'past-finish')] })).toEqual(['past-finish']);
  expect(alarmsOf({ calls: [call(20, 'finish', 'cleared'), call(20, 'low-level', 'raised', 'medium')] })).toEqual([]);
  expect(alarmsOf({ calls: [call(20, 'low-level', 'escalated')] })).toEqual(['low-level']);
});

test('a low level has a cause within 5 mm or 30 % of the least depth', () => {
  const at = (depthMm: number, minDepthMm: number): string[] =>
    alarmsOf({ calls: [call(20, 'low-level')], truly: () => ({ depthMm }), facts: { minDepthMm } });
  expect(at(19, 15)).toEqual([]);
  expect(at(25, 20)).toEqual([]);
  expect(at(21, 15)).toEqual(['low-level']);
});

test('scorch-risk has a cause when it would burn within 15 min, is beyond the limits, or has burned', () => {
  const calls = [call(20, 'scorch-risk')];
  expect(alarmsOf({ calls })).toEqual(['scorch-risk']);
  expect(alarmsOf({ calls: [call(57, 'scorch-risk')] })).toEqual([]);
  expect(alarmsOf({ calls, truly: () => ({ brix: 76 }) })).toEqual([]);
  expect(alarmsOf({ calls, truly: () => ({ burned: true }) })).toEqual([]);
  expect(alarmsOf({ calls, truly: () => ({ celsius: 95 }), facts: { ceilingC: 94 } })).toEqual([]);
  expect(alarmsOf({ calls, truly: () => ({ brix: 40, tipBare: true, probed: false }) })).toEqual([]);
});

test('a pan that was lifted off a minute ago is judged by what it was', () => {
  const truly = (at: number) => (at < 62 ? { brix: 7 + at } : { off: true, brix: 0 });
  expect(alarmsOf({ calls: [call(63, 'finish')], truly })).toEqual([]);
  expect(alarmsOf({ calls: [call(70, 'finish')], truly })).toEqual(['finish']);
});

test('a boil that died is one that stays dead with no pour and no noted flame; other calls of it are invented', () => {
  const truly = (at: number) => ({ boiling: at < 30 });
  const calls = [call(31, 'boil-lost')];
  expect(lostBoils(rising({ truly, calls }), [])).toEqual({ truly: 1, called: 1, invented: 0 });
  expect(lostBoils(rising({ truly }), [])).toEqual({ truly: 1, called: 0, invented: 0 });
  expect(lostBoils(rising({ truly, calls }), [29 * minute])).toEqual({ truly: 0, called: 0, invented: 1 });
  const disturbed = [{ t: 29 * minute, poured: true }];
  expect(lostBoils(rising({ truly, calls, disturbed }), [])).toEqual({ truly: 0, called: 0, invented: 1 });
});
