// Checks that a mark keeps what it changed in what is believed of a pan, that a mark taken back adds its way back, and that this stays small.
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import { startBoil } from '../../../src/core/boil/fold.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { foldOn, inOrder, lines, mark, onePot, readingAt, steadyCelsius } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const AT = 12 * MINUTE_MS;
const header = {
  ...onePot('maple'),
  pans: [
    {
      id: 'p1',
      name: 'Back pot',
      probe: 'A/1',
      vessel: { shape: 'round' as const, diameter_mm: 360 },
      heat: { kind: 'propane' as const, power_w: 12_000 },
    },
  ],
};
const told = mark(0, { kind: 'top-up', pan: 'p1', litres: 8, brix: 20, celsius: 90 });
const climbing = { fromBrix: 20, k: 5e-4, start: 0, sap: 'maple' as const };
const heard = lines(0, AT, { T1: (t) => steadyCelsius(climbing, t) });
const boiled = () => foldOn(startBoil(header), inOrder([told], heard), AT).state;

const noted = (...marks: Entry[]) => {
  const last = marks.at(-1)!.t;
  const { state } = foldOn(boiled(), marks, last);
  return { state, view: boilView(state, last) };
};

test('a mark keeps strength, litres and finish as they were believed before and after it', () => {
  const before = readingAt(boiled(), 'p1', AT);
  const { state, view } = noted(mark(AT, { kind: 'draw-off', pan: 'p1', litres: 2 }));
  const after = readingAt(state, 'p1', AT);
  const [correction, ...others] = view.marks.at(-1)!.corrections;
  expect(others).toEqual([]);
  expect(correction).toMatchObject({ t: AT, pan: 'p1' });
  expect(correction!.before.litres).toBeCloseTo(before.litres!, 1);
  expect(correction!.after.litres).toBeCloseTo(after.litres!, 1);
  expect(correction!.after.litres! - correction!.before.litres!).toBeCloseTo(-2, 0);
  expect(correction!.before.finishAt).toBeCloseTo(AT + before.finish_in_s! * 1000, -1);
  expect(correction!.after.finishAt).toBeCloseTo(AT + after.finish_in_s! * 1000, -1);
  expect(correction!.before.brix).toBeCloseTo(before.brix!, 1);
});

test('what changes nothing keeps nothing', () => {
  const { view } = noted(mark(AT, { kind: 'note', text: 'a grey jay came' }));
  expect(view.marks.at(-1)!.corrections).toEqual([]);
});

test('a mark that is taken back keeps its way back, too', () => {
  const { view } = noted(
    mark(AT, { kind: 'draw-off', pan: 'p1', litres: 2, id: 'm' }),
    mark(AT + 1000, { kind: 'withdraw', id: 'm' }),
  );
  const [there, back] = view.marks.at(-1)!.corrections;
  expect(there!.t).toBe(AT);
  expect(back!.t).toBe(AT + 1000);
  expect(back!.before.litres).toBeCloseTo(there!.after.litres!, 1);
  expect(back!.after.litres).toBeCloseTo(there!.before.litres!, 1);
});

test('a note that corrects another tells the change from before both, and the other its own alone', () => {
  const { view } = noted(
    mark(AT, { kind: 'draw-off', pan: 'p1', litres: 1, id: 'm' }),
    mark(AT + 1000, { kind: 'withdraw', id: 'm' }),
    mark(AT + 2000, { kind: 'draw-off', pan: 'p1', litres: 2, id: 'n', corrects: 'm' }),
  );
  const [former, now] = view.marks.filter(({ mark: { kind } }) => kind === 'draw-off').map((each) => each.corrections);
  expect(former).toHaveLength(1);
  expect(now).toHaveLength(1);
  expect(now![0]!.before.litres).toBeCloseTo(former![0]!.after.litres!, 1);
  expect(now![0]!.after.litres! - now![0]!.before.litres!).toBeCloseTo(-1, 1);
});

test('only the latest marks keep what they changed', () => {
  const many = Array.from({ length: 80 }, (_, i): Entry => {
    const level: Mark = { kind: 'flame', pan: 'p1', level: i % 2 === 0 ? 0.5 : 1 };
    return mark(AT + i * 1000, level);
  });
  const kept = noted(...many).view.marks.map(({ corrections }) => corrections.length);
  expect(kept.slice(-60).every((count) => count === 1)).toBe(true);
  expect(kept.slice(0, -60).every((count) => count === 0)).toBe(true);
});
