// An amount that its pan's dip contradicts by half or double is asked about, counts as the two weighed, and a second word counts.
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import type { BoilState } from '../../../src/core/boil/fold.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { onePot, wholeBoil } from '../simulation/one-pot.ts';
import { foldAll, inOrder, mark, readingAt } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const POURED_AT = 50 * MINUTE_MS;
const UNTIL = 72 * MINUTE_MS;
const POURED_L = 3;

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

const pour = (litres: number, at: number, over: Partial<Mark> = {}): Entry =>
  mark(at, { kind: 'top-up', pan: 'p1', litres, brix: 2, celsius: 5, id: `m${litres}`, ...over } as Mark);

function after(...noted: Entry[]): BoilState {
  return foldAll(
    pot.header,
    inOrder(
      boil.filter(({ t }) => t <= UNTIL),
      noted,
    ),
    UNTIL,
  ).state;
}
const litresOf = (state: BoilState): number => readingAt(state, 'p1', UNTIL).litres!;
const asked = (state: BoilState): number => state.marks.filter(({ questioned }) => questioned).length;
const typedAt = POURED_AT + 30_000;

test('what was noted as it was is not asked about, nor is an eighth more or less', () => {
  for (const litres of [POURED_L, 0.88 * POURED_L, 1.12 * POURED_L]) {
    const state = after(pour(litres, typedAt));
    expect(asked(state), `${litres} L`).toBe(0);
  }
});

test.each([0.25, 3.5])(
  '%d times as much as was poured is asked about, with both amounts, and is weighed against what was seen',
  (factor) => {
    const state = after(pour(factor * POURED_L, typedAt));
    expect(asked(state)).toBe(1);
    expect(boilView(state, UNTIL).marks.at(-1)!.questioned).toBe(true);
    const noted = `${factor * POURED_L} L`;
    const { sentence } = state.notices.at(-1)!;
    expect(sentence).toContain(`you noted ${noted}, but it cooled as by about `);
    expect(sentence).toContain(`If ${noted} is right, note it once more`);
    const { seenAs, countsAs } = state.marks.at(-1)!;
    expect(Math.sign(countsAs! - seenAs!)).toBe(Math.sign(factor - 1));
    const right = litresOf(after(pour(POURED_L, typedAt)));
    expect(Math.abs(litresOf(state) - right)).toBeLessThan(1.2);
  },
);

test.each([{ sure: true }, { corrects: 'before' }])(
  'who corrects an amount, or says that it is so, is not asked',
  (over) => {
    const state = after(pour(10.5, typedAt, over));
    expect(asked(state)).toBe(0);
    expect(litresOf(state)).toBeGreaterThan(litresOf(after(pour(10.5, typedAt))) + 4);
  },
);

test('said again after being asked it counts as it was said, and is not asked about again', () => {
  const wrong = pour(10.5, typedAt);
  const again = pour(10.5, POURED_AT + 18 * MINUTE_MS, { id: 'again' });
  const state = after(wrong, again);
  expect(litresOf(state)).toBeGreaterThan(litresOf(after(wrong)) + 4);
  expect(state.notices.filter(({ sentence }) => sentence.includes('note it once more')).length).toBe(1);
});
