// What holds of the alarms whatever happens: thousands of random sequences of findings, waiting and answers.
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import { type AlarmBook, listAlarms } from '../../../src/core/alarms/engine.ts';
import type { AlarmName, Priority } from '../../../src/core/boil/entries.ts';
import { between, inside, over, Watched } from './watched.ts';

// Ten thousand runs take a second or two, and more on a machine that does other things.
vi.setConfig({ testTimeout: 60_000 });

type Step = (one: Watched) => void;

const alarms = ['near-finish', 'scorch-risk', 'low-level'] as const satisfies AlarmName[];
const alarm = fc.constantFrom(...alarms);
const findings = [over('medium'), over('high'), inside, between, { ...inside, atOnce: true }, null];

const looks: fc.Arbitrary<Step> = fc.tuple(fc.constantFrom(...findings), alarm).map(
  ([finding, name]) =>
    (one) =>
      one.find(finding, name),
);
const waits: fc.Arbitrary<Step> = fc.integer({ min: 1, max: 12 }).map((count) => (one) => one.seconds(count));
/** Long enough for an acknowledged high alarm to come back. */
const longWaits: fc.Arbitrary<Step> = fc.constant((one) => one.later(301));
const acknowledges: fc.Arbitrary<Step> = alarm.map((name) => (one) => one.acknowledge(name));
const silences: fc.Arbitrary<Step> = fc
  .integer({ min: 1, max: 20 })
  .map((seconds) => (one) => one.answer({ silence: { seconds } }));
const asides: fc.Arbitrary<Step> = fc.tuple(fc.integer({ min: 1, max: 20 }), alarm).map(
  ([seconds, name]) =>
    (one) =>
      one.putAside(seconds, name),
);
const steps = fc.array(fc.oneof(looks, looks, waits, waits, longWaits, acknowledges, silences, asides), {
  maxLength: 16,
  size: 'medium',
});

/** Random stories for each invariant. */
const RUNS = 10_000;

/** Runs so many random stories; `hold` looks after every step, with what was before it. */
function always(hold: (one: Watched, before: { book: AlarmBook; told: number }) => void): void {
  fc.assert(
    fc.property(steps, (story) => {
      const one = new Watched();
      for (const step of story) {
        const before = { book: structuredClone(one.book), told: one.told.length };
        step(one);
        hold(one, before);
      }
    }),
    { numRuns: RUNS },
  );
}

interface Shown {
  active: boolean;
  answered: boolean;
  priority: Priority;
  aside: boolean;
}

/** What the kept transitions alone say of each alarm: an alarm put aside shows its end by `returned` or not at all. */
function fromTransitions(told: AlarmTransition[]): Map<string, Shown> {
  const shown = new Map<string, Shown>();
  for (const { alarm: name, event, priority } of told) {
    const one = shown.get(name) ?? { active: false, answered: false, priority, aside: false };
    shown.set(name, one);
    if (event === 'raised') Object.assign(one, { active: true, answered: false, priority });
    if (event === 'escalated') Object.assign(one, { answered: false, priority });
    if (event === 'cleared') one.active = false;
    if (event === 'acknowledged') one.answered = true;
    if (event === 'put-aside') one.aside = true;
    if (event === 'returned') Object.assign(one, { aside: false, answered: false });
  }
  return shown;
}

const loudness = { low: 0, medium: 1, high: 2 };

test('the sound is on exactly when an active, unanswered alarm is not aside, and the sound is not silenced', () => {
  always((one) => {
    const aside = new Set(one.list.filter((listed) => listed.asideUntil !== null).map((listed) => listed.alarm));
    const sounding = [...fromTransitions(one.told)]
      .filter(([name, shown]) => shown.active && !shown.answered && !aside.has(name as AlarmName))
      .map(([, shown]) => shown.priority)
      .sort((a, b) => loudness[b] - loudness[a]);
    const silenced = one.book.silencedUntil !== null && one.t < one.book.silencedUntil;
    expect(one.sound).toBe(silenced ? null : (sounding[0] ?? null));
  });
});

test('folding the kept transitions gives the same active alarms, answers and priorities', () => {
  always((one) => {
    const shown = fromTransitions(one.told);
    const listed = one.list.filter((each) => each.condition === 'active');
    expect(new Set(listed.map((each) => each.alarm))).toEqual(
      new Set([...shown].filter(([, each]) => each.active).map(([name]) => name)),
    );
    for (const each of listed) {
      const { answered, priority } = shown.get(each.alarm)!;
      expect([each.answered, each.priority]).toEqual([answered, priority]);
    }
  });
});

test('acknowledging never changes a condition', () => {
  fc.assert(
    fc.property(steps, alarm, (story, name) => {
      const one = new Watched();
      for (const step of story) step(one);
      const conditions = (): string[] =>
        alarms.map((each) => one.book.alarms.find((state) => state.alarm === each)?.condition ?? 'ok');
      const before = conditions();
      one.acknowledge(name);
      expect(conditions()).toEqual(before);
    }),
    { numRuns: RUNS },
  );
});

test('no alarm leaves the list that nobody has seen since it was raised', () => {
  always((one, before) => {
    const now = new Set(one.list.map((listed) => listed.alarm));
    for (const listed of listAlarms(before.book)) {
      if (now.has(listed.alarm)) continue;
      const told = one.told.filter((each) => each.alarm === listed.alarm);
      const raised = told.findLastIndex(({ event }) => event === 'raised');
      const wasSeen = told.slice(raised).some(({ event }) => event === 'acknowledged');
      expect(wasSeen, `${listed.alarm} left the list`).toBe(true);
    }
  });
});

test('no data never turns to ok: while nothing is known no condition changes', () => {
  fc.assert(
    fc.property(steps, fc.integer({ min: 1, max: 100 }), (story, seconds) => {
      const one = new Watched();
      for (const step of story) step(one);
      const before = one.book.alarms.map((state) => [state.alarm, state.condition]);
      for (const name of alarms) one.find(null, name);
      one.seconds(seconds);
      const after = new Map(one.book.alarms.map((state) => [state.alarm, state.condition]));
      for (const [name, condition] of before) expect(after.get(name as AlarmName) ?? 'ok').toBe(condition);
    }),
    { numRuns: RUNS },
  );
});

test('putting aside always ends', () => {
  always((one) => {
    for (const state of one.book.alarms) {
      if (state.asideUntil !== null) expect(state.asideUntil - one.t).toBeLessThanOrEqual(20_000);
    }
    const past = one.book.alarms.filter((state) => state.asideUntil !== null && state.asideUntil <= one.t);
    expect(past).toEqual([]);
  });
});

test('an alarm is raised only when it is not active, escalated and cleared only when it is', () => {
  always((one) => {
    const active = new Set<string>();
    for (const { alarm: name, event } of one.told) {
      if (event === 'raised') expect(active.has(name)).toBe(false);
      if (event === 'escalated' || event === 'cleared' || event === 'returned') expect(active.has(name)).toBe(true);
      if (event === 'raised') active.add(name);
      if (event === 'cleared') active.delete(name);
    }
  });
});

/** Two things that happen at the same moment to two alarms. */
const happenings: fc.Arbitrary<(one: Watched, name: AlarmName) => void> = fc.oneof(
  fc.constantFrom(...findings).map((finding) => (one: Watched, name: AlarmName) => void one.find(finding, name)),
  fc.constant((one: Watched, name: AlarmName) => void one.acknowledge(name)),
  fc.constant((one: Watched, name: AlarmName) => void one.putAside(5, name)),
);

test('what happens to two alarms in one tick gives the same in either order', () => {
  fc.assert(
    fc.property(steps, happenings, happenings, (story, first, second) => {
      const [one, other] = [watchingAll(), watchingAll()];
      for (const each of [one, other]) for (const step of story) step(each);
      first(one, 'near-finish');
      second(one, 'low-level');
      second(other, 'low-level');
      first(other, 'near-finish');
      expect(states(other)).toEqual(states(one));
      expect(other.sound).toBe(one.sound);
    }),
    { numRuns: RUNS },
  );
});

/** Alarms by name: of those raised in one tick the list keeps the order in which they were looked at. */
const states = (one: Watched) => new Map(one.book.alarms.map((state) => [state.alarm, state]));

test('of an answer and what falls due in the same tick, the answer counts first: a call is never answered unheard', () => {
  fc.assert(
    fc.property(steps, alarm, (story, name) => {
      const one = new Watched();
      for (const step of story) step(one);
      one.t += 1000;
      const told = one.told.length;
      one.acknowledge(name).seconds(0).find(over('high'), name);
      const calls = one.told.slice(told).filter(({ alarm: each, event }) => each === name && event !== 'cleared');
      const last = calls.findLast(({ event }) => event !== 'put-aside')?.event;
      const state = one.book.alarms.find((each) => each.alarm === name);
      if (last !== undefined && last !== 'acknowledged') expect(state?.answered).toBe(false);
    }),
    { numRuns: RUNS },
  );
});

/** Looked at in one order from the start on, so that two books tell in the same order. */
function watchingAll(): Watched {
  const one = new Watched();
  for (const name of alarms) one.find(between, name);
  return one;
}

test('a book that is kept and taken up again goes on as if nothing had been', () => {
  fc.assert(
    fc.property(steps, steps, (first, second) => {
      const one = watchingAll();
      for (const step of first) step(one);
      for (const name of alarms) one.find(between, name);
      const again = watchingAll();
      Object.assign(again.book, structuredClone(one.book));
      again.t = one.t;
      one.told = [];
      for (const step of second) {
        step(one);
        step(again);
      }
      expect(again.told).toEqual(one.told);
      expect(again.list).toEqual(one.list);
    }),
    { numRuns: RUNS },
  );
});
