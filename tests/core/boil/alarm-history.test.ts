// The history of a boil's alarms through the real fold: answers, ends, put-asides, a person's word, and that it stays short.
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import type { BoilState } from '../../../src/core/boil/fold.ts';
import {
  type AlarmHistory,
  alarmHistory,
  answerByDeed,
  MOST_RAISINGS,
  rememberTransitions,
  startHistory,
} from '../../../src/core/boil/alarm-history.ts';
import { listAlarms, observe, startAlarms } from '../../../src/core/alarms/engine.ts';
import { foldAll, inOrder, lines, mark, tarnHollow } from './tarn-hollow.ts';

const historyOf = (state: BoilState): AlarmHistory => alarmHistory(state.history, state.marks, state.header);
const answer = (t: number, what: Extract<Entry, { answer: unknown }>['answer']): Entry => ({ t, answer: what });

/** Both probes are silent from 30 s to 60 s: two alarms, raised at 34 s. */
const silent = inOrder(
  lines(0, 30_000, { T1: () => 60, T2: () => 60 }),
  lines(60_000, 90_000, { T1: () => 60, T2: () => 60 }),
);
const folded = (...more: Entry[]): BoilState => foldAll(tarnHollow(), inOrder(silent, more), 90_000).state;

test('each raising is remembered with its first answer and its end', () => {
  const state = folded(
    answer(40_000, { acknowledge: { pan: 'p1', alarm: 'probe-lost' } }),
    answer(45_000, { acknowledge: { pan: 'p1', alarm: 'probe-lost' } }),
  );
  const { raisings, lookBack } = historyOf(state);
  const raisedAt = raisings[0]!.raisedAt;
  expect(raisings).toEqual([
    {
      ...{ alarm: 'probe-lost', pan: 'p1', port: null, priority: 'medium', why: 'nothing comes from the probe' },
      ...{ raisedAt, answeredAt: 40_000, clearedAt: 63_000, asides: [], noUse: false },
    },
    expect.objectContaining({ pan: 'p2', raisedAt, answeredAt: null, clearedAt: 63_000 }),
  ]);
  expect(lookBack).toMatchObject({ raised: 2, answered: 1, answeredAfterS: (40_000 - raisedAt) / 1000 });
});

test('what was raised while all sound was off is remembered so, until the silence was ended', () => {
  const silenced = answer(20_000, { silence: { seconds: 120 } });
  const ended = answer(25_000, { silence: { seconds: 0 } });
  const inQuiet = (...more: Entry[]) => historyOf(folded(...more)).raisings.map((each) => each.inQuiet ?? false);
  expect(inQuiet(silenced)).toEqual([true, true]);
  expect(inQuiet(silenced, ended)).toEqual([false, false]);
});

test('a put-aside is remembered with its end and its reason', () => {
  const put_aside = { pan: 'p2', alarm: 'probe-lost', seconds: 300, reason: 'it was pulled out' };
  const { raisings } = historyOf(folded(answer(40_000, { put_aside })));
  expect(raisings.map(({ asides }) => asides)).toEqual([
    [],
    [{ at: 40_000, until: 340_000, reason: 'it was pulled out' }],
  ]);
});

test('what came back after a put-aside and was answered again keeps its first answer', () => {
  const acknowledge = { pan: 'p1', alarm: 'probe-lost' };
  const put_aside = { ...acknowledge, seconds: 5, reason: 'the plug is being dried' };
  const more = [answer(40_000, { acknowledge }), answer(41_000, { put_aside }), answer(50_000, { acknowledge })];
  expect(historyOf(folded(...more)).raisings[0]).toMatchObject({ answeredAt: 40_000, asides: [{ until: 46_000 }] });
});

test('what was answered only after it was over is answered', () => {
  const { raisings } = historyOf(folded(answer(80_000, { acknowledge: { pan: 'p1', alarm: 'probe-lost' } })));
  expect(raisings[0]).toMatchObject({ clearedAt: 63_000, answeredAt: 80_000 });
});

test('a person’s word that it was of no use is for that raising alone, and can be taken back', () => {
  const raised = historyOf(folded()).raisings[0]!.raisedAt;
  const about = { alarm: 'probe-lost', pan: 'p1', raised };
  const word = mark(70_000, { kind: 'note', id: 'm1', text: 'this was no use', about, no_use: true });
  const other = mark(71_000, { kind: 'note', text: 'it fell out', about: { ...about, pan: 'p2' } });
  const noUse = (...more: Entry[]) => historyOf(folded(...more)).raisings.map((one) => one.noUse);
  expect(noUse(word, other)).toEqual([true, false]);
  expect(noUse(word, mark(75_000, { kind: 'withdraw', id: 'm1' }))).toEqual([false, false]);
});

const low = { t: 1000, pan: 'p1', alarm: 'low-level', priority: 'medium', why: '' } as const;
const noted = (at: number, mark: Mark, withdrawn = false) => ({ at, mark, withdrawn, questioned: false });

test('what a call asks for, noted by a person while it stands, answers it as well as a word', () => {
  const history = startHistory();
  rememberTransitions(history, startAlarms(), [
    { ...low, event: 'raised' },
    { ...low, t: 9000, event: 'cleared' },
  ]);
  const pour = { kind: 'top-up', pan: 'p1', litres: 2 } as const;
  const asked = (one: ReturnType<typeof noted>, header: object | null = null) => {
    const { raisings, lookBack } = alarmHistory(history, [one], header);
    return [raisings[0]?.doneAt, lookBack.answered, lookBack.answeredAfterS];
  };
  expect(asked(noted(9000, pour))).toEqual([9000, 1, 8]);
  expect(asked(noted(5000, { kind: 'transfer', from: 'p2', to: 'p1', all: true }))).toEqual([5000, 1, 4]);
  const nothing = [undefined, 0, null];
  expect(asked(noted(5000, pour, true))).toEqual(nothing);
  expect(asked({ ...noted(5000, pour), questioned: true })).toEqual(nothing);
  expect(asked(noted(5000, { kind: 'draw-off', pan: 'p1', all: true }))).toEqual([5000, 1, 4]);
  expect(asked(noted(5000, { kind: 'draw-off', pan: 'p1', litres: 1 }))).toEqual(nothing);
  expect(asked(noted(500, pour))).toEqual(nothing);
  expect(asked(noted(9001, pour))).toEqual(nothing);
  expect(asked(noted(5000, { ...pour, pan: 'p2' }))).toEqual(nothing);
  expect(asked(noted(5000, { kind: 'density', pan: 'p1', brix: 3 }))).toEqual(nothing);
  // What the practice does by itself is nobody's answer; a note of that id in a real boil is a person's.
  const byItself = noted(5000, { ...pour, id: 'hand-7' });
  expect(asked(byItself, { practice: true })).toEqual(nothing);
  expect(asked(byItself, {})).toEqual([5000, 1, 4]);
});

test('two reminders with one text are two raisings, each with its own answer', () => {
  const remind = (t: number) => mark(t, { kind: 'remind', text: 'skim', seconds: 5 });
  const seen = answer(8000, { acknowledge: { pan: null, alarm: 'reminder' } });
  const { raisings } = historyOf(folded(remind(1000), seen, remind(10_000)));
  const reminders = raisings.filter(({ alarm }) => alarm === 'reminder');
  expect(reminders.map(({ raisedAt, answeredAt }) => [raisedAt, answeredAt])).toEqual([
    [6000, 8000],
    [15_000, null],
  ]);
  expect(Object.keys(reminders[0]!)).not.toContain('about');
});

test('of two reminders that stand at once each has its own end', () => {
  const remind = (t: number, id: string) => mark(t, { kind: 'remind', id, text: 'skim', seconds: 5 });
  const { raisings } = historyOf(
    folded(remind(1000, 'r1'), remind(3000, 'r2'), mark(9000, { kind: 'withdraw', id: 'r1' })),
  );
  const reminders = raisings.filter(({ alarm }) => alarm === 'reminder');
  expect(reminders.map(({ clearedAt }) => clearedAt)).toEqual([9000, null]);
});

test('the last 200 raisings are kept, and those before them counted', () => {
  const history = startHistory();
  const book = startAlarms();
  for (let t = 0; t < 250; t += 1) {
    const call = { t, pan: 'p1', alarm: 'low-level', priority: 'medium', why: '' } as const;
    rememberTransitions(history, book, [
      { ...call, event: 'raised' },
      { ...call, event: 'cleared' },
    ]);
  }
  const { raisings, earlier } = alarmHistory(history, [], null);
  expect([raisings.length, earlier, raisings[0]?.raisedAt]).toEqual([MOST_RAISINGS, 50, 50]);
  expect(raisings.every(({ raisedAt, clearedAt }) => clearedAt === raisedAt)).toBe(true);
});

/** A pot with a little in it, in which the thermometer shows a boil, is called; what is listed of that after 3 min. */
const lowPot = (over: { practice?: true }, ...more: Entry[]) => {
  const vessel = { shape: 'round' as const, diameter_mm: 300 };
  const header = tarnHollow({ pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1', vessel }], ...over });
  const little = mark(0, { kind: 'top-up', pan: 'p1', litres: 1.5, brix: 2, celsius: 99 });
  const boils = lines(1000, 180_000, { T1: (t) => 100.1 + 0.02 * Math.sin(t) });
  const { state } = foldAll(header, inOrder([little], boils, more), 180_000);
  return {
    listed: listAlarms(state.book).filter(({ alarm }) => alarm === 'low-level'),
    raisings: historyOf(state).raisings,
  };
};

test('a call that was answered by doing what it asks for is gone with its cause, and one that nobody answered is over and listed', () => {
  const pour = (id: string) => mark(120_000, { kind: 'top-up', pan: 'p1', litres: 8, brix: 2, id });
  expect(lowPot({}).listed).toMatchObject([{ condition: 'active', answered: false }]);
  const done = lowPot({}, pour('screen-1'));
  expect(done.raisings.find(({ alarm }) => alarm === 'low-level')).toMatchObject({ clearedAt: 120_000 });
  expect(done.listed).toEqual([]);
  // What a practice poured in by itself answers nothing.
  expect(lowPot({ practice: true }, pour('hand-1')).listed).toMatchObject([{ condition: 'over', answered: false }]);
});

test('what takes a little more out answers no call of a pan that runs low', () => {
  const sip = mark(120_000, { kind: 'draw-off', pan: 'p1', litres: 0.05, id: 'screen-3' });
  const enough = mark(130_000, { kind: 'top-up', pan: 'p1', litres: 8, brix: 2, id: 'hand-1' });
  const seen = lowPot({ practice: true }, sip, enough);
  expect(seen.listed).toMatchObject([{ condition: 'over', answered: false }]);
  expect(seen.raisings.find(({ alarm }) => alarm === 'low-level')).not.toHaveProperty('doneAt');
});

test('a mark that is asked about answers no call that is over and that nobody saw', () => {
  const unseen = (over: { questioned: boolean }) => {
    const book = startAlarms();
    const delays = { onDelayMs: 0, offDelayMs: 0 };
    const finding = { over: true, inside: false, priority: 'medium', why: () => '' } as const;
    observe(book, { alarm: 'finish', pan: 'p1' }, delays, finding, 1000);
    observe(book, { alarm: 'finish', pan: 'p1' }, delays, { ...finding, over: false, inside: true }, 3000);
    answerByDeed(book, { ...noted(2000, { kind: 'density', pan: 'p1', brix: 3 }), ...over }, null);
    return listAlarms(book).length;
  };
  expect(unseen({ questioned: true })).toBe(1);
  expect(unseen({ questioned: false })).toBe(0);
});
