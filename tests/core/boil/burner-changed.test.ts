// A burner's power that is said otherwise during a boil: its steam is supposed anew, and a change too small to count changes nothing.
import { expect, test } from 'vitest';
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import { onePot, wholeBoil } from '../simulation/one-pot.ts';
import { foldAll, inOrder, mark, readingAt } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const CHANGED_AT = 20 * MINUTE_MS;
const TRUE_W = 17_600;

const pot = onePot({
  endsAt: 60 * MINUTE_MS,
  setup: { heat: { kind: 'propane', power_w: TRUE_W } },
  pan: { litres: 30, brix: 10 },
});
const heard = wholeBoil(pot).entries.filter((entry) => 'line' in entry || 'run' in entry);
const told = [
  mark(0, { kind: 'pressure', hpa: 940 }),
  mark(0, { kind: 'top-up', pan: 'p1', litres: 30, brix: 10, celsius: 95 }),
];

const withPower = (power_w: number): Header => {
  const [first, ...rest] = pot.header.pans!;
  return { ...pot.header, pans: [{ ...first!, heat: { kind: 'propane', power_w } }, ...rest] };
};
const changed = (power_w: number): Entry => ({ t: CHANGED_AT, set: { pans: withPower(power_w).pans! } });

function at(t: number, power_w: number, ...more: Entry[]) {
  const entries = inOrder(told, heard, more).filter((entry) => !('run' in entry) && entry.t <= t);
  return readingAt(foldAll(withPower(power_w), entries, t).state, 'p1', t);
}

test('a power that was typed a thousand times too small and is corrected moves the rate and the finish at once', () => {
  const soon = CHANGED_AT + 1000;
  const right = at(soon, TRUE_W);
  const wrong = at(soon, TRUE_W / 1000);
  const corrected = at(soon, TRUE_W / 1000, changed(TRUE_W));
  expect(wrong.evaporation_l_per_h!).toBeLessThan(right.evaporation_l_per_h! / 10);
  expect(corrected.evaporation_l_per_h! / right.evaporation_l_per_h!).toBeGreaterThan(0.6);
  expect(corrected.evaporation_l_per_h! / right.evaporation_l_per_h!).toBeLessThan(1.7);
  expect(corrected.finish_in_s! / right.finish_in_s!).toBeGreaterThan(0.6);
  expect(corrected.finish_in_s! / right.finish_in_s!).toBeLessThan(1.7);
});

test('how sure the finish is opens to what a nominal power misses by', () => {
  const soon = CHANGED_AT + 1000;
  const { finish_low_s: low, finish_high_s: high } = at(soon, 1000, changed(TRUE_W));
  expect(high! / low!).toBeGreaterThan(2);
});

test('a change by less than such a figure misses by anyhow leaves what the boil taught', () => {
  const soon = CHANGED_AT + 1000;
  expect(at(soon, TRUE_W, changed(TRUE_W * 1.1)).evaporation_l_per_h).toBe(at(soon, TRUE_W).evaporation_l_per_h);
});
