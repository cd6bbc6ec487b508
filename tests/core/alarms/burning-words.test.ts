// What is said of a pan that burns follows from how hot it stands: before, past the limit, and when a pour would do harm.
import { expect, test } from 'vitest';
import { alarmWords } from '../../../src/core/alarms/words.ts';
import {
  foldAll,
  inOrder,
  lines,
  mark,
  readingAt,
  steadyCelsius,
  steadyWhen,
  tarnHollow,
} from '../boil/tarn-hollow.ts';

const reading = readingAt(foldAll(tarnHollow(), [], 0).state, 'p1', 0);
const words = (celsius: number, scorch_in_s: number) =>
  alarmWords('scorch-risk', { ...reading, temperature_c: celsius, scorch_in_s });

test('about to burn, burning, and so hot that nothing may be poured in', () => {
  expect(words(104, 200).title).toBe('About to burn');
  expect(words(107, 0)).toMatchObject({ title: 'Burning', todo: words(104, 200).todo });
  expect(words(107, 0).todo).toContain('pour in sap or water');
  expect(words(204, 0).todo).toContain('Pour nothing in');
});

test('a pan that runs low is topped up, but not where sap would thin what is nearly syrup', () => {
  const low = (stage: typeof reading.stage) => alarmWords('low-level', { ...reading, stage });
  expect(low('boiling').todo).toContain('Top up');
  for (const stage of ['near-finish', 'finished'] as const) {
    expect(low(stage)).toMatchObject({ title: low('boiling').title });
    expect(low(stage).todo).toContain('smaller pot');
    expect(low(stage).todo).not.toContain('Top up');
  }
});

test('a pan that is at its finish and will burn soon is taken off before anything is poured in', () => {
  const { todo } = alarmWords('scorch-risk', { ...reading, temperature_c: 104, scorch_in_s: 200, stage: 'finished' });
  expect(todo).toMatch(/^Turn the heat off first, and take the pan off/u);
  expect(todo).toMatch(/Only if it goes on heating/u);
});

test('other alarms, and those of no pan, are told as they always are', () => {
  expect(alarmWords('past-finish', { ...reading, temperature_c: 204 }).title).toBe('Past its finish');
  expect(alarmWords('scorch-risk', null).title).toBe('About to burn');
});

test('who has seen that a pan is about to burn is called again, once, when it burns', () => {
  const pan = { fromBrix: 30, k: 0.0004, start: 0, sap: 'maple' as const };
  const [soon, burns, end] = [73, 75, 76.5].map((brix) => Math.ceil(steadyWhen(pan, brix) / 1000) * 1000) as [
    number,
    number,
    number,
  ];
  const depth = mark(600_000, { kind: 'depth', pan: 'p1', mm: 100 });
  const round = { shape: 'round' as const, diameter_mm: 300 };
  const header = tarnHollow({ pans: [{ id: 'p1', probe: 'A/1', vessel: round }] });
  const boil = (seen: boolean) => {
    const answer = { t: soon, answer: { acknowledge: { pan: 'p1', alarm: 'scorch-risk' as const } } };
    const heard = lines(0, end, { T1: (t) => steadyCelsius(pan, t) });
    const { state, transitions } = foldAll(header, inOrder([depth], seen ? [answer] : [], heard), end);
    return { state, again: transitions.filter(({ alarm, event }) => alarm === 'scorch-risk' && event === 'returned') };
  };
  const { again, state } = boil(true);
  expect(again).toHaveLength(1);
  expect(Math.abs(again[0]!.t - burns)).toBeLessThan(60_000);
  expect(again[0]!.why).toContain('it burns from 75 °Bx');
  expect(state.book.alarms.find(({ alarm }) => alarm === 'scorch-risk')).toMatchObject({ answered: false });
  expect(boil(false).again).toEqual([]);
});

test('a pan that runs low and is called for its finish is not topped up, whatever its stage says', () => {
  const { todo } = alarmWords('low-level', { ...reading, stage: 'thickening' }, '', true);
  expect(todo).toContain('Sap poured in now would thin it again');
});
