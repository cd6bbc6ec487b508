// A pour that nobody noted is said of once; a yes counts it once, a no leaves no trace, and either can be taken back.
import { describe, expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import type { BoilState } from '../../../src/core/boil/fold.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { onePot, wholeBoil } from '../simulation/one-pot.ts';
import { foldAll, foldOn, inOrder, mark, readingAt } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const POURED_AT = 30 * MINUTE_MS;
const POURED_L = 3;
const SEEN_BY = 45 * MINUTE_MS;

const pot = onePot({
  endsAt: 120 * MINUTE_MS,
  probe: { noiseCelsius: 0.05 },
  deeds: [
    {
      when: { at: POURED_AT },
      acts: [{ act: 'pour', pan: 'p1', litres: POURED_L, brix: 2, celsius: 5 }],
      forgotten: 1,
    },
  ],
});
const told = [
  mark(0, { kind: 'pressure', hpa: 940 }),
  mark(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 20, celsius: 95 }),
];
const boil = inOrder(told, wholeBoil(pot).entries).filter((entry) => !('run' in entry));

/** The boil until a time, ms, with what somebody notes in between. */
function after(until: number, ...noted: Entry[]): BoilState {
  const entries = boil.filter(({ t }) => t <= until);
  return foldAll(pot.header, inOrder(entries, noted), until).state;
}

const contents = (state: BoilState) => {
  const { litres, brix } = readingAt(state, 'p1', state.now);
  return { litres: litres!, brix: brix! };
};
const near = (one: BoilState, other: BoilState): void => {
  expect(contents(one).litres).toBeCloseTo(contents(other).litres, 1);
  expect(contents(one).brix).toBeCloseTo(contents(other).brix, 0);
};

const seen = boilView(after(SEEN_BY), SEEN_BY).pours;

test('the pour is seen with its time, its litres and their range', () => {
  expect(seen).toHaveLength(1);
  const [pour] = seen;
  expect(Math.abs(pour!.at - POURED_AT)).toBeLessThan(MINUTE_MS);
  expect(pour!.litres).toBeGreaterThan(2);
  expect(pour!.litres).toBeLessThan(4.5);
  expect(pour!.low).toBeLessThan(POURED_L);
  expect(pour!.high).toBeGreaterThan(POURED_L);
});

const at = seen[0]!.at;
const yes: Mark = { kind: 'top-up', pan: 'p1', id: 'y', litres: POURED_L, brix: 2, happened: at };
const no: Mark = { kind: 'no-top-up', pan: 'p1', id: 'n', happened: at };

// Within the last half hour the course is run again; later what was counted is taken out.
describe.each([
  ['soon', SEEN_BY + MINUTE_MS],
  ['late', POURED_AT + 55 * MINUTE_MS],
])('answered %s', (_, answered) => {
  const until = answered + 2 * MINUTE_MS;
  const back = (id: string) => mark(answered + MINUTE_MS, { kind: 'withdraw', id });
  const asked = after(until);

  test('a yes counts it once', () => {
    const state = after(until, mark(answered, yes));
    expect(boilView(state, until).pours).toEqual([]);
    const inTime = after(until, mark(POURED_AT, { ...yes, happened: POURED_AT }));
    expect(Math.abs(contents(state).litres - contents(inTime).litres)).toBeLessThan(0.8);
    // Twice would be three litres more.
    expect(Math.abs(contents(state).litres - contents(asked).litres)).toBeLessThan(2);
  });

  test('a no takes it out', () => {
    const state = after(until, mark(answered, no));
    expect(boilView(state, until).pours).toEqual([]);
    expect(contents(state).litres).toBeLessThan(contents(asked).litres - 0.5);
  });

  test.each([yes, no])('taken back, $kind is as if nothing had been said', (said) => {
    const state = after(until, mark(answered, said), back(said.id!));
    expect(boilView(state, until).pours).toMatchObject([{ pan: 'p1', at }]);
    near(state, asked);
  });

  test('what is noted later from before the answer does not ask again', () => {
    const late: Mark = { kind: 'flame', pan: 'p1', level: 1, happened: answered - 20 * MINUTE_MS };
    const state = after(until, mark(answered, no), mark(answered + MINUTE_MS, late));
    expect(boilView(state, until).pours).toEqual([]);
    near(foldOn(state, [], until).state, after(until, mark(answered, no)));
  });
});
