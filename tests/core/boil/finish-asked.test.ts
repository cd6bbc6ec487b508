// Checks what a person asks of a finish: called the later the surer it shall be, and said where no thermometer can tell it.
import { expect, test } from 'vitest';
import type { Header } from '../../../src/core/boil/entries.ts';
import { startBoil } from '../../../src/core/boil/fold.ts';
import { foldAll, foldOn, inOrder, lines, mark, onePot, readingAt, steadyCelsius } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const climbing = { fromBrix: 58, k: 2e-4, start: 0, sap: 'maple' as const };
const heard = lines(0, 40 * MINUTE_MS, { T1: (t) => steadyCelsius(climbing, t) });

/** When the finish is called, ms. */
function calledAt(header: Header): number {
  const { transitions } = foldAll(header, heard, 40 * MINUTE_MS);
  return transitions.find(({ alarm, event }) => alarm === 'finish' && event === 'raised')?.t ?? Infinity;
}

const asked = (probability?: number): Header => ({
  ...onePot(),
  settings: probability === undefined ? {} : { finish_probability: probability },
});

test('the finish is called the later the likelier it shall be, and as likely as not unless it is said', () => {
  const calls = [0.05, 0.3, 0.5, 0.7, 0.95].map((probability) => calledAt(asked(probability)));
  expect(calls).toEqual([...calls].sort((a, b) => a - b));
  expect(calls[0]).toBeLessThan(calls[2]! - MINUTE_MS);
  expect(calls[4]).toBeGreaterThan(calls[2]! + MINUTE_MS);
  expect(calledAt(asked())).toBe(calls[2]);
});

test('asked for in the middle of a boil it holds from then on', () => {
  const set = { t: 1000, set: { settings: { finish_probability: 0.95 } } };
  const { transitions } = foldAll(asked(), inOrder([set], heard), 40 * MINUTE_MS);
  const call = transitions.find(({ alarm, event }) => alarm === 'finish' && event === 'raised');
  expect(call?.t).toBe(calledAt(asked(0.95)));
});

test.each([
  [{ brix: 85 }, 'a finish of 85 °Bx lies beyond what a thermometer can tell (80 °Bx)'],
  [{ rise_c: 20 }, 'a finish of a rise of 20 °C lies beyond what a thermometer can tell (80 °Bx)'],
])('%j is said once, and counts as 80 °Bx', (finish, sentence) => {
  const header: Header = { ...onePot(), pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1', finish }] };
  const state = startBoil(header);
  expect(state.notices.map((one) => one.sentence)).toEqual([expect.stringContaining(sentence)]);
  expect(state.designs['p1']!.finishBrix).toBe(80);
  const later = foldOn(state, [{ t: 1000, set: { name: 'another name' } }], 2000).state;
  expect(later.notices).toHaveLength(1);
});

test('a finish that a thermometer can tell is not spoken of', () => {
  for (const finish of [{ brix: 80 }, { rise_c: 4 }]) {
    const header: Header = { ...onePot(), pans: [{ id: 'p1', probe: 'A/1', finish }] };
    expect(startBoil(header).notices).toEqual([]);
  }
});

test('a probe that hung elsewhere before that was typed has not cooled the pan that it left', () => {
  const pans = [
    { id: 'p1', name: 'Back pot', probe: 'A/1' },
    { id: 'p2', name: 'Front pot' },
  ];
  const header: Header = { ...onePot(), pans };
  const moved = 20 * MINUTE_MS;
  const shown = lines(0, moved + MINUTE_MS, { T1: (t) => (t < moved ? steadyCelsius(climbing, t) : 60) });
  const told = [
    mark(0, { kind: 'pressure', hpa: 1013.25 }),
    mark(0, { kind: 'top-up', pan: 'p1', litres: 5, brix: 58, celsius: 95 }),
  ];
  const typed = mark(moved + 40_000, { kind: 'move-probe', probe: 'A/1', pan: 'p2', happened: moved });
  const { state } = foldAll(header, inOrder(told, shown, [typed]), moved + MINUTE_MS);
  const before = foldAll(
    header,
    inOrder(
      told,
      shown.filter(({ t }) => t < moved),
    ),
    moved,
  ).state;
  const brix = readingAt(before, 'p1', moved).brix!;
  expect(readingAt(state, 'p1', moved + MINUTE_MS).brix).toBeGreaterThan(brix);
  expect(state.pans['p1']!.course.phase).toBe('boiling');
});
