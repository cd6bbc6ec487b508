// Checks that lines that give no value are counted by reason, that the last are kept as they came, and that both stay small.
import { expect, test } from 'vitest';
import { foldAll, inOrder, tarnHollow } from './tarn-hollow.ts';

const lines = (all: string[]) => all.map((line, at) => ({ t: 1000 * at, port: 'A', line }));
const refusedOf = (all: string[]) =>
  foldAll(tarnHollow(), inOrder(lines(all)), 1000 * all.length).state.ports.A!.refused;

test('each refused line is counted by its reason and kept as it came', () => {
  const { byReason, last } = refusedOf(['T1=98.2', 'T1=12,5', 'T1=1e5', 'T1=', 'T1=1e6', 'T1=9000', 'T1=98.3']);
  expect({ ...byReason }).toEqual({
    'decimal comma': 1,
    'not a number': 2,
    'no value': 1,
    'no number that a probe can have meant': 1,
  });
  expect(last.map(({ line }) => line)).toEqual(['T1=12,5', 'T1=1e5', 'T1=', 'T1=1e6', 'T1=9000']);
  expect(last[0]).toEqual({ t: 1000, line: 'T1=12,5', why: 'decimal comma: T1=12,5' });
});

test('however many come, the newest few are kept, cut where they are long', () => {
  const { byReason, last } = refusedOf(Array.from({ length: 500 }, (_, at) => `${at} ${'x'.repeat(1000)}`));
  expect({ ...byReason }).toEqual({ 'not a name with a value': 500 });
  expect(last).toHaveLength(12);
  expect(last.at(-1)!.line).toMatch(/^499 x/);
  expect(Math.max(...last.map(({ line }) => line.length))).toBe(200);
});
