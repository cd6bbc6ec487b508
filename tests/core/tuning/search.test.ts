// What settings cost, which a search tries, and what it proposes; with too few known ends it says so.
import { expect, test } from 'vitest';
import { type Cost, costOf, wholeCost, worstOf } from '../../../src/core/tuning/cost.ts';
import type { BoilScore, PanScore } from '../../../src/core/tuning/score.ts';
import { type Outcome, propose, type SearchedSettings, trialsOf } from '../../../src/core/tuning/search.ts';

const HOUR = 3_600_000;
const pan = (more: Partial<PanScore> = {}): PanScore => ({
  ...{ pan: 'p1', near_finish_lead_s: 600, finish_brix: 67, scorch_lead_s: 240 },
  ...{ finished_t: HOUR, called_t: HOUR, too_early: false },
  ...more,
});
const score = (pans: PanScore[], more: Partial<BoilScore> = {}): BoilScore => ({
  ...{ near_finish_lead_s: null, finish_brix: null, scorch_lead_s: null, false_calls: 0, alarms: 0 },
  pans,
  ...more,
});
const asked = () => 67;
const cost = (one: BoilScore): number => wholeCost(costOf(one, asked)!);

test('calls in time, at the finish, cost nothing; each fault costs, and late costs more than early', () => {
  expect(cost(score([pan()]))).toBe(0);
  const late = cost(score([pan({ near_finish_lead_s: 300 })]));
  const early = cost(score([pan({ near_finish_lead_s: 900 })]));
  expect(late).toBeGreaterThan(early);
  expect(early).toBeGreaterThan(0);
  // A minute short before burning outweighs a minute short before the finish.
  expect(cost(score([pan({ scorch_lead_s: 180 })]))).toBeGreaterThan(cost(score([pan({ near_finish_lead_s: 540 })])));
  expect(cost(score([pan({ finish_brix: 69 })]))).toBeGreaterThan(cost(score([pan({ finish_brix: 65 })])));
  expect(cost(score([pan()], { false_calls: 1, alarms: 3 }))).toBeGreaterThan(cost(score([pan()], { alarms: 3 })));
  expect(costOf(score([]), asked)).toBeNull();
});

test('the worst is named with its pan and the moment to open', () => {
  expect(worstOf(score([pan()]), asked)).toBeNull();
  const two = score([pan({ near_finish_lead_s: 120 }), pan({ pan: 'p2', finish_brix: 71, called_t: 2 * HOUR })]);
  expect(worstOf(two, asked)).toEqual({
    at: 2 * HOUR,
    pan: 'p2',
    words: 'the finish was called at 71.0 °Bx, 67.0 was asked for',
  });
  const never = score([pan({ finish_brix: null, called_t: null })]);
  expect(worstOf(never, asked)).toMatchObject({ at: HOUR, words: 'the finish was never called' });
});

const NOW: SearchedSettings = {
  near_finish_lead_s: 600,
  scorch_lead_s: 240,
  finish_probability: 0.5,
};

test('fields of different alarms are tried in one run, and what holds now not again', () => {
  const trials = trialsOf(['near_finish_lead_s', 'scorch_lead_s'], NOW);
  const leads = trials.flatMap(({ settings }) => settings.near_finish_lead_s ?? []);
  expect(leads).toEqual([300, 900, 1200, 1800]);
  expect(trials.filter(({ settings }) => settings.scorch_lead_s !== undefined)).toHaveLength(4);
  expect(trials.every(({ tries }) => tries.length === 2)).toBe(true);
  expect(new Set(trials.map(({ name }) => name)).size).toBe(trials.length);
});

const outcome = (part: Partial<Cost>, more: Partial<Outcome> = {}): Outcome => ({
  cost: { nearFinish: 0, finish: 0, scorch: 0, falseCalls: 0, calls: 0, ...part },
  ...{ near_finish_lead_s: 360, finish_brix: 66, scorch_lead_s: 240, falseCalls: 0, alarms: 10 },
  ...more,
});

test('each field is judged by its own alarm, and what it gains and costs is told', () => {
  const [first, second] = trialsOf(['near_finish_lead_s', 'scorch_lead_s'], { ...NOW, near_finish_lead_s: 300 });
  const trials = [
    { trial: first!, outcome: outcome({ nearFinish: 12, scorch: 0 }) },
    { trial: second!, outcome: outcome({ nearFinish: 2, scorch: 9 }, { near_finish_lead_s: 630, alarms: 12 }) },
  ];
  const proposal = propose(outcome({ nearFinish: 20, scorch: 3 }), trials, 5);
  expect(proposal).toEqual({
    settings: { near_finish_lead_s: second!.settings.near_finish_lead_s, scorch_lead_s: first!.settings.scorch_lead_s },
    gains: [
      expect.stringMatching(
        /^15 min before the finish: the call came 10.5 min before the true finish rather than 6 min\.$/,
      ),
      expect.stringMatching(/^1 min before burning: /),
    ],
    costs: ['15 min before the finish: up to 2 more calls in all.'],
  });
});

test('too few known ends, or nothing better, is said', () => {
  const [trial] = trialsOf(['near_finish_lead_s'], NOW);
  const better = [{ trial: trial!, outcome: outcome({ nearFinish: 1 }) }];
  expect(propose(outcome({ nearFinish: 20 }), better, 2)).toEqual({
    why: expect.stringMatching(/^Only 2 boils were measured near the finish/),
  });
  expect(propose(outcome({ nearFinish: 20 }), better, 0)).toEqual({
    why: expect.stringMatching(/^No boil was measured near the finish/),
  });
  // A twentieth less is chance.
  expect(propose(outcome({ nearFinish: 1.05 }), better, 9)).toEqual({
    why: expect.stringMatching(/^Nothing that was tried/),
  });
});
