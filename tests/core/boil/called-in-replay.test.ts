// The calls that a live boil wrote down change nothing of what a replay works out, to the millisecond.
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/core/boil/entries.ts';
import { foldAll, inOrder, lines, mark, tarnHollow, waterCelsius } from './tarn-hollow.ts';

const END_MS = 40_000;

test('a port that is lost 42 ms after a call was written down is called at the same moment with and without it', () => {
  const celsius = waterCelsius(1013.25) + 6;
  const good = (from: number, to: number): Entry[] => lines(from, to, { T1: () => celsius, T2: () => 99 });
  const entries = inOrder(
    [{ t: 0, port: 'A', state: 'open' }, mark(0, { kind: 'pressure', hpa: 1013.25 })],
    good(250, 18_000),
    [{ t: 18_250, port: 'A', line: `T1=${celsius.toFixed(2)}C T2=nan` }],
    good(19_250, 27_000),
  );
  const before = foldAll(tarnHollow(), entries, END_MS).transitions;
  const back = before.find(({ alarm, event }) => alarm === 'probe-lost' && event === 'cleared')!;
  // Only a call on the whole second, at which no pan was looked at, can make a look of its own.
  expect([back.t % 1000, back.t % 5000 === 0]).toEqual([0, false]);
  const lost: Entry = { t: back.t + 42, port: 'A', state: 'lost' };
  const live = [...entries.filter(({ t }) => t <= back.t), lost];
  const without = foldAll(tarnHollow(), live, END_MS).transitions;
  const called = without.map(({ t, ...one }): Entry => ({ t, called: one }));
  const again = foldAll(tarnHollow(), inOrder(live, called), END_MS).transitions;
  expect(without.some(({ alarm, event }) => alarm === 'port-lost' && event === 'raised')).toBe(true);
  expect(again).toEqual(without);
});
