// The fan of a forecast begins at the pan, opens, and crosses the finish when the forecast says.
import { expect, test } from 'vitest';
import { panAhead } from '../../../src/core/boil/readings.ts';
import { startBoil } from '../../../src/core/boil/fold.ts';
import { panLimits } from '../../../src/core/boil/view.ts';
import { onePot, wholeBoil } from '../simulation/one-pot.ts';
import { foldAll, inOrder, mark, readingAt } from '../boil/tarn-hollow.ts';

const MINUTE_MS = 60_000;
const UNTIL = 75 * MINUTE_MS;
const pot = onePot({ endsAt: 4 * 60 * MINUTE_MS, probe: { noiseCelsius: 0.05 } });
const told = [
  mark(0, { kind: 'pressure', hpa: 940 }),
  mark(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 20, celsius: 95 }),
];
const entries = inOrder(told, wholeBoil(pot).entries).filter(({ t }) => t <= UNTIL);
const { state } = foldAll(pot.header, entries, UNTIL);
const reading = readingAt(state, 'p1', UNTIL);
const limits = panLimits(state, 'p1');
const ahead = panAhead(state, 'p1', UNTIL)!;

/** When a line first stands at a temperature, s from now. */
function reaches(line: readonly number[], celsius: number): number {
  const i = line.findIndex((one) => one >= celsius);
  return i < 0 ? Infinity : (ahead.t[i]! - UNTIL) / 1000;
}

test('it begins where the pan stands and rises', () => {
  expect(ahead.t[0]).toBe(UNTIL);
  expect(new Set([ahead.low[0], ahead.middle[0], ahead.high[0]]).size).toBe(1);
  expect(Math.abs(ahead.middle[0]! - reading.temperature_c!)).toBeLessThan(0.4);
  expect(ahead.middle).toEqual(ahead.middle.toSorted((a, b) => a - b));
});

test('its lines cross the finish at the times of the forecast', () => {
  const step = (ahead.t[1]! - ahead.t[0]!) / 1000;
  const off = (line: readonly number[], seconds: number) => Math.abs(reaches(line, limits.finish_c!) - seconds);
  expect(off(ahead.middle, reading.finish_in_s!)).toBeLessThan(1.5 * step);
  expect(off(ahead.high, reading.finish_low_s!)).toBeLessThan(1.5 * step);
  expect(Math.abs((ahead.t.at(-1)! - UNTIL) / 1000 - reading.finish_high_s!)).toBeLessThan(step);
});

test('the low edge is never over the high one, and nothing is drawn beyond the scorch limit', () => {
  ahead.t.forEach((_, i) => {
    expect(ahead.low[i]!).toBeLessThanOrEqual(ahead.high[i]!);
  });
  expect(Math.max(...ahead.low, ...ahead.middle, ...ahead.high)).toBeLessThanOrEqual(limits.scorch_c! + 0.01);
});

test('a pan that warms up has none: what it will show is not what it boils at', () => {
  const at = 2 * MINUTE_MS;
  const sap = onePot({ endsAt: at, pan: { celsius: 6 } });
  const poured = mark(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 20, celsius: 6 });
  const cold = foldAll(sap.header, inOrder([told[0]!, poured], wholeBoil(sap).entries), at).state;
  expect(readingAt(cold, 'p1', at).stage).toBe('warming');
  expect(panAhead(cold, 'p1', at)).toBeNull();
});

test('where the finish is not known there is none, and for a pan that is not there', () => {
  expect(panAhead(startBoil(pot.header), 'p1', 0)).toBeNull();
  expect(panAhead(state, 'nowhere', UNTIL)).toBeNull();
});
