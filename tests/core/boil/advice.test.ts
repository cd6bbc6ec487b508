// A pan asks for the mark that narrows its forecast, and for no other; a small batch is told of while there is time.
import { expect, test } from 'vitest';
import { adviceOn } from '../../../src/core/boil/advice.ts';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import { onePot, wholeBoil } from '../simulation/one-pot.ts';
import { foldAll, inOrder, mark, readingAt } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const pot = onePot({ endsAt: 150 * MINUTE_MS, probe: { noiseCelsius: 0.05 } });
const lines = wholeBoil(pot).entries.filter((entry) => 'line' in entry);
const filled: Mark = { kind: 'top-up', pan: 'p1', litres: 10, brix: 20, celsius: 95 };

function after(minutes: number, ...noted: Entry[]) {
  const until = minutes * MINUTE_MS;
  const entries = inOrder(
    noted,
    lines.filter(({ t }) => t <= until),
  );
  const { state } = foldAll(pot.header, entries, until);
  const reading = readingAt(state, 'p1', until);
  return { state, until, reading, advice: adviceOn(state, reading, until) };
}

const widthOf = ({
  finish_high_s: high,
  finish_low_s: low,
}: {
  finish_high_s: number | null;
  finish_low_s: number | null;
}) => (high === null ? Infinity : Math.log(high / low!));

test('a pan of which nobody told how much is in it asks for its depth, and the depth narrows its forecast', () => {
  const untold = after(20, mark(0, { kind: 'pressure', hpa: 940 }));
  expect(untold.advice.ask).toBe('depth');
  const depth = mark(20 * MINUTE_MS, { kind: 'depth', pan: 'p1', mm: 118 });
  const measured = after(21, mark(0, { kind: 'pressure', hpa: 940 }), depth);
  expect(widthOf(measured.reading)).toBeLessThan(
    0.75 * widthOf(after(21, mark(0, { kind: 'pressure', hpa: 940 })).reading),
  );
  expect(measured.advice.ask).not.toBe('depth');
});

test('a pan that is known well asks for nothing', () => {
  const known = after(90, mark(0, { kind: 'pressure', hpa: 940 }), mark(0, filled));
  expect(widthOf(known.reading)).toBeLessThan(0.6);
  expect(known.advice.ask).toBeNull();
});

test('nobody is asked for a pan that is off, or where water is not known to boil', () => {
  const off = after(30, mark(0, { kind: 'flame', pan: 'p1', level: 0 }));
  expect(off.advice.ask).toBeNull();
  expect(after(30).advice.ask).toBeNull();
});

test('a batch that ends under the least depth is told of, with when it is thick enough to carry', () => {
  // 10 L of 20 °Bx hold 2.16 kg of sugar: 2.4 L of syrup, 35 mm in this pot.
  const told = [mark(0, { kind: 'pressure', hpa: 940 }), mark(0, filled)];
  expect(after(60, ...told).advice.shallow).toBeNull();
  const deeper = { t: 0, set: { pans: pot.header.pans!.map((pan) => ({ ...pan, min_depth_mm: 50 })) } };
  const { advice, reading } = after(60, ...told, deeper);
  expect(Math.abs(advice.shallow!.depthMm - 35)).toBeLessThan(5);
  expect(advice.shallow!.pourInS).toBeGreaterThan(0);
  expect(advice.shallow!.pourInS).toBeLessThan(reading.finish_in_s!);
  expect([after(60, ...told).advice.tooLittle, advice.tooLittle]).toEqual([false, true]);
  // What is missing in depth is missing in sap: this pot is as wide below as above.
  const { syrupLitres, sapLitres } = advice.smallestBatch!;
  expect(advice.shallow!.moreSapLitres / sapLitres).toBeCloseTo(1 - advice.shallow!.depthMm / 50, 1);
  expect(syrupLitres).toBeGreaterThan(2.5);
});

test('thin sap is spoken of once none came for three quarters of an hour, and within an hour of when it is needed', () => {
  const thin = (litres: number): Entry[] => [
    mark(0, { kind: 'pressure', hpa: 940 }),
    mark(0, { kind: 'top-up', pan: 'p1', litres, brix: 4, celsius: 95 }),
  ];
  // What it holds now is too little all the while.
  expect(after(40, ...thin(10)).advice).toMatchObject({ shallow: null, tooLittle: true });
  const { shallow } = after(46, ...thin(10)).advice;
  expect(shallow!.depthMm).toBeLessThan(15);
  expect(shallow!.moreSapLitres).toBeGreaterThan(5);
  expect(shallow!.pourInS).toBeGreaterThan(20 * 60);
  expect(shallow!.pourInS).toBeLessThanOrEqual(60 * 60);
  // Of twice as much it is a matter of hours.
  expect(after(46, ...thin(20)).advice).toMatchObject({ shallow: null, tooLittle: true });
});

test('who pours all day is asked for sap, not for a smaller pot, until the pan is thick or at its least depth', () => {
  const poured = [
    mark(0, { kind: 'pressure', hpa: 940 }),
    mark(0, { kind: 'top-up', pan: 'p1', litres: 5, brix: 9, celsius: 95 }),
  ];
  const least = (mm: number) => ({
    t: 0,
    set: { pans: pot.header.pans!.map((pan) => ({ ...pan, min_depth_mm: mm })) },
  });
  const early = after(30, ...poured, least(30));
  expect(early.reading.brix).toBeGreaterThan(10);
  expect(early.reading.brix).toBeLessThan(25);
  expect(early.reading.top_up_in_s).toBeGreaterThan(0);
  expect(early.advice).toMatchObject({ shallow: null, tooLittle: true });
  expect(after(30, ...poured, least(60)).advice.shallow).toMatchObject({ pourInS: 0 });
});

test('what holds far too little sugar is too little, too, once its litres are known badly; not where nobody told how much', () => {
  const poured = (litres?: number): Entry[] => [
    mark(0, { kind: 'pressure', hpa: 940 }),
    mark(0, { kind: 'top-up', pan: 'p1', ...(litres !== undefined && { litres }), brix: 0.9 }),
  ];
  const low = after(40, ...poured(5));
  expect(low.reading.litres).toBeNull();
  expect(low.reading.finish_in_s).toBeGreaterThan(0);
  expect(low.advice.tooLittle).toBe(true);
  expect(after(2, ...poured()).advice.tooLittle).toBe(false);
});

test('the least that a pan can finish goes by sap that was typed for this pan, else planned, else usual', () => {
  const plan = { plan: { litres: 100, brix: 2.4 } };
  const pour = (pan: string, brix: number): Mark => ({ kind: 'top-up', pan, litres: 10, brix });
  const least = (header: object, ...marks: Mark[]) => {
    const noted = inOrder([mark(0, { kind: 'pressure', hpa: 940 }), ...marks.map((one) => mark(0, one))], []);
    const { state } = foldAll({ ...pot.header, ...header }, noted, MINUTE_MS);
    return adviceOn(state, readingAt(state, 'p1', MINUTE_MS), MINUTE_MS).smallestBatch;
  };
  expect(least({}, pour('p1', 3), pour('p2', 1))).toMatchObject({ sapBrix: 3, sapFrom: 'typed' });
  expect(least(plan, pour('p1', 3), pour('p1', 48))).toMatchObject({ sapBrix: 3, sapFrom: 'typed' });
  expect(least(plan, pour('p1', 48), pour('p2', 1))).toMatchObject({ sapBrix: 2.4, sapFrom: 'planned' });
  expect(least({}, pour('p1', 48), pour('p2', 1))).toMatchObject({ sapBrix: 2, sapFrom: 'usual' });
  expect(least({}, pour('p2', 1))!.sapLitres).toBeCloseTo(least({})!.sapLitres, 5);
});

test('there is room for what the fire warms in a minute', () => {
  const { advice } = after(60, mark(0, { kind: 'pressure', hpa: 940 }), mark(0, filled));
  // 2.8 kW for 60 s warm 0.43 kg from 5 to 98 °C.
  expect(advice.roomLitres).toBeGreaterThan(0.3);
  expect(advice.roomLitres).toBeLessThan(0.55);
  // As much steam as that leaves in about six minutes, whatever the fire.
  expect(advice.roomEveryS! / 60).toBeCloseTo(6, 0);
  // Told while it still warms up, too, by what the burner should give.
  const cold = { ...filled, celsius: 5 };
  const warming = after(0.2, mark(0, { kind: 'pressure', hpa: 940 }), mark(0, cold)).advice;
  expect(warming.roomLitres).toBeGreaterThan(0.3);
  expect(warming.roomLitres).toBeLessThan(0.55);
});

test('what is left after most was drawn off is told between two amounts, until that is known well again', () => {
  const told = mark(0, filled);
  const drawn = mark(10 * MINUTE_MS, { kind: 'draw-off', pan: 'p1', litres: 7.5 });
  expect(after(9, told).advice.litresRoughly).toBeNull();
  const left = after(11, told, drawn);
  expect(left.reading.litres).toBeNull();
  const { low, high } = left.advice.litresRoughly!;
  expect(low).toBeGreaterThan(0.5);
  expect(low).toBeLessThan(2);
  expect(high).toBeGreaterThan(2);
  expect(high).toBeLessThan(6);
  const measured = after(12, told, drawn, mark(11.5 * MINUTE_MS, { kind: 'depth', pan: 'p1', mm: 25 }));
  expect(measured.reading.litres).not.toBeNull();
  expect(measured.advice.litresRoughly).toBeNull();
  expect(after(11).advice.litresRoughly).toBeNull();
});
