// The truth of a pan near its end: the thermometer's curve goes through the instrument, and only as far as it may.
import { expect, test } from 'vitest';
import { applyEntry, startBoil } from '../../../src/core/boil/fold.ts';
import { foldTools } from '../../../src/host/fold-tools.ts';
import { panTruths, trueStrengthAt, untoldOf, whenTruly } from '../../../src/core/tuning/truth.ts';

const MINUTE = 60_000;

/** Invented: water per sugar falls in a straight line, as it does at a steady fire. */
const brixAt = (minute: number): number => 100 / (1 + (1.5 - 0.02 * minute));
/** The same pan as a probe shows it that takes its water per sugar for 8 % more. */
const believedAt = (minute: number): number => 100 / (1 + (1.5 - 0.02 * minute) * 1.08);

function truthsOf(marks: { minute: number; brix: number }[], seen: { t: number; brix: number }[], isWithdrawn = false) {
  let state = startBoil({
    recording: 'panwarden',
    version: 1,
    started: '2027-03-13T06:00:00-05:00',
    pans: [{ id: 'p1', name: 'Tarn Hollow, invented' }],
  });
  for (const { minute, brix } of marks) {
    const mark = { kind: 'density', pan: 'p1', brix, celsius: 20, reference_celsius: 20, id: 'm1' } as const;
    state = applyEntry(state, { t: minute * MINUTE, mark }, foldTools);
  }
  if (isWithdrawn) state = applyEntry(state, { t: 55 * MINUTE, mark: { kind: 'withdraw', id: 'm1' } }, foldTools);
  return panTruths(state, new Map([['p1', seen]]));
}

const believed = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, index) => ({ t: (from + index) * MINUTE, brix: believedAt(from + index) }));

test('the curve is set right by the instrument, before it and after it', () => {
  const [truth] = truthsOf([{ minute: 50, brix: brixAt(50) }], believed(20, 55));
  expect(truth).toBeDefined();
  for (const minute of [20.5, 35, 50, 54])
    expect(trueStrengthAt(truth!, minute * MINUTE)).toBeCloseTo(brixAt(minute), 1);
  expect(whenTruly(truth!, brixAt(45))! / MINUTE).toBeCloseTo(45, 1);
});

test('a pan that was taken off just short of the strength is carried on for five minutes and no more', () => {
  const [truth] = truthsOf([{ minute: 50, brix: brixAt(50) }], believed(20, 50));
  expect(whenTruly(truth!, brixAt(53))! / MINUTE).toBeCloseTo(53, 1);
  expect(whenTruly(truth!, brixAt(57))).toBeNull();
  expect(trueStrengthAt(truth!, 53 * MINUTE)).toBeNull();
});

test('an instrument far from the finish tells nothing of the end, and a pour cuts the curve', () => {
  expect(truthsOf([{ minute: 20, brix: brixAt(20) }], believed(5, 25))).toEqual([]);
  const poured = [...believed(20, 30).map(({ t }) => ({ t, brix: 60 })), ...believed(31, 50)];
  const [truth] = truthsOf([{ minute: 50, brix: brixAt(50) }], poured);
  expect(trueStrengthAt(truth!, 25 * MINUTE)).toBeNull();
  expect(trueStrengthAt(truth!, 40 * MINUTE)).toBeCloseTo(brixAt(40), 1);
});

test('a reading that was taken back tells nothing', () => {
  const marks = [{ minute: 50, brix: brixAt(50) }];
  expect(truthsOf(marks, believed(20, 52))).toHaveLength(1);
  expect(truthsOf(marks, believed(20, 52), true)).toEqual([]);
});

/** Of a pot that should hold thin sap: what an instrument says of it near its end cannot be meant. */
function untoldOfThin(marks: { minute: number; brix: number }[]) {
  let state = startBoil({
    recording: 'panwarden',
    version: 1,
    started: '2027-03-13T06:00:00-05:00',
    site: { altitude_m: 640 },
    pans: [{ id: 'p1', name: 'Back pot', sap: 'birch' }],
  });
  const top = { kind: 'top-up', pan: 'p1', litres: 12, brix: 1.2 } as const;
  state = applyEntry(state, { t: 0, mark: top }, foldTools);
  for (const { minute, brix } of marks) {
    const mark = { kind: 'density', pan: 'p1', brix, celsius: 20, reference_celsius: 20 } as const;
    state = applyEntry(state, { t: minute * MINUTE, mark }, foldTools);
  }
  return untoldOf(state);
}

test('where the truth is not known, it is told what was read all the same and why that is none', () => {
  expect(untoldOfThin([])).toBeNull();
  expect(untoldOfThin([{ minute: 5, brix: 1.3 }])).toMatchObject({ why: 'too-early', pan: 'Back pot', finishBrix: 67 });
  const read = untoldOfThin([
    { minute: 5, brix: 1.3 },
    { minute: 30, brix: 66 },
  ]);
  expect(read).toMatchObject({ why: 'left-out', pan: 'Back pot', finishBrix: 67 });
  expect(read!.brix).toBeCloseTo(66, 0);
});

test('an instrument that was read near the end of a pan that nothing followed is told as that', () => {
  const read = { kind: 'density', pan: 'p1', brix: 65, celsius: 20, reference_celsius: 20 } as const;
  const begun = startBoil({
    recording: 'panwarden',
    version: 1,
    started: '2027-03-13T06:00:00-05:00',
    pans: [{ id: 'p1' }],
  });
  const state = applyEntry(begun, { t: 50 * MINUTE, mark: read }, foldTools);
  expect(panTruths(state, new Map())).toEqual([]);
  expect(untoldOf(state)).toMatchObject({ why: 'not-followed', pan: 'p1' });
});
