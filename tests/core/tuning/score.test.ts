// How settings are scored against a known end: leads, the strength at the call, and calls without a cause.
import { expect, test } from 'vitest';
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import type { RaisingShown } from '../../../src/core/boil/alarm-history.ts';
import { panDesign } from '../../../src/core/pan/setup.ts';
import { scoreOf } from '../../../src/core/tuning/score.ts';
import type { PanTruth } from '../../../src/core/tuning/truth.ts';

const MINUTE = 60_000;
const water = (brix: number) => (100 - brix) / brix;

/** Invented: 50 °Bx at 0 min, 80 at 60 min, water per sugar in a straight line. */
const truth: PanTruth = {
  pan: 'p1',
  at: 40 * MINUTE,
  brix: 67,
  sigmaBrix: 0.4,
  curve: Array.from({ length: 61 }, (_, minute) => ({
    t: minute * MINUTE,
    waterPerSugar: water(50) + ((water(80) - water(50)) * minute) / 60,
  })),
};
const designs = { p1: panDesign({ id: 'p1', finish: { brix: 67 } }) };
/** By hand: the shares of the straight line. */
const minuteOf = (brix: number) => ((water(50) - water(brix)) / (water(50) - water(80))) * 60;

const call = (alarm: AlarmTransition['alarm'], minute: number): AlarmTransition => ({
  ...{ t: Math.round(minute * MINUTE), pan: 'p1', alarm, event: 'raised' },
  ...{ priority: 'high', why: '' },
});
const word = (alarm: AlarmTransition['alarm'], minute: number, noUse: boolean): RaisingShown => ({
  ...{ alarm, pan: 'p1', port: null, priority: 'high', why: '', raisedAt: minute * MINUTE },
  ...{ answeredAt: null, clearedAt: null, asides: [], noUse },
});

test('leads count to the true finish and the true limit, and the strength is the true one at the call', () => {
  const finish = minuteOf(67);
  const calls = [call('near-finish', finish - 12), call('finish', finish + 0.5), call('scorch-risk', minuteOf(75) - 4)];
  const score = scoreOf(calls, designs, [truth], []);
  expect(score.near_finish_lead_s).toBeCloseTo(720, -1);
  expect(score.scorch_lead_s).toBeCloseTo(240, -1);
  expect(score.finish_brix).toBeGreaterThan(67);
  expect(score.finish_brix).toBeLessThan(67.5);
  expect(score).toMatchObject({ false_calls: 0, alarms: 3 });
});

test('a call that never came had no lead; a finish that was moved has its own true time', () => {
  expect(scoreOf([], designs, [truth], [])).toMatchObject({ near_finish_lead_s: 0, finish_brix: null, alarms: 0 });
  const moved = { p1: panDesign({ id: 'p1', finish: { brix: 60 } }) };
  const score = scoreOf([call('near-finish', minuteOf(60) - 5)], moved, [truth], []);
  expect(score.near_finish_lead_s).toBeCloseTo(300, -1);
});

test('without a truth nothing is said but the number of calls, unless a person said what was of no use', () => {
  const calls = [call('finish', 10), call('boil-lost', 20)];
  expect(scoreOf(calls, designs, [], [word('finish', 10, false)])).toMatchObject({
    near_finish_lead_s: null,
    finish_brix: null,
    false_calls: null,
    alarms: 2,
  });
  expect(scoreOf(calls, designs, [], [word('boil-lost', 18, true)]).false_calls).toBe(1);
  expect(scoreOf([calls[0]!], designs, [], [word('boil-lost', 18, true)]).false_calls).toBe(0);
});

test('a finish call well before the finish is a false one, and counts once', () => {
  const early = call('finish', minuteOf(63));
  expect(scoreOf([early], designs, [truth], []).false_calls).toBe(1);
  expect(scoreOf([early], designs, [truth], [word('finish', minuteOf(63), true)]).false_calls).toBe(1);
});
