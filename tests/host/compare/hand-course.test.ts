// A boil by hand beside others: its readings stand where they were read, however late they were typed, and none that was taken back.
import { expect, test } from 'vitest';
import type { Header, Mark } from '../../../src/core/boil/entries.ts';
import { type BoilCourse, lineOf } from '../../../src/core/compare/course.ts';
import { systemClock } from '../../../src/host/clock.ts';
import { workOutCourse } from '../../../src/host/compare/boil-course.ts';

const MINUTE_MS = 60_000;
const header: Header = {
  recording: 'panwarden',
  version: 1,
  started: '2027-04-18T16:00:00-07:00',
  site: { name: 'Tarn Hollow (invented)', altitude_m: 0 },
  pans: [
    {
      id: 'p1',
      sap: 'maple',
      vessel: { shape: 'round-sloped', bottom_diameter_mm: 300, top_diameter_mm: 320, height_mm: 280 },
      heat: { kind: 'propane', power_w: 8000 },
    },
  ],
};
const entry = (minutes: number, mark: Mark): string => JSON.stringify({ t: minutes * MINUTE_MS, mark });
const read = (minutes: number, at: number, celsius: number, id: string): string =>
  entry(minutes, { kind: 'reading', pan: 'p1', celsius, happened: at * MINUTE_MS, id });

async function courseOf(entries: readonly string[]): Promise<BoilCourse> {
  let course: BoilCourse | null = null;
  const keepFigures = (_boil: string, _key: string, kept: unknown): void => void (course = kept as BoilCourse);
  await workOutCourse({ header: () => header, entries: () => entries, keepFigures } as never, 'by-hand', systemClock());
  return course!;
}

test('readings typed an hour late stand where they were read, and one that was taken back nowhere', async () => {
  const course = await courseOf([
    entry(0, { kind: 'top-up', pan: 'p1', litres: 8, brix: 15 }),
    read(70, 62, 130, 'slip'),
    entry(71, { kind: 'withdraw', id: 'slip' }),
    read(71.5, 10, 101, 'first'),
    read(72, 40, 102.2, 'second'),
    read(72.5, 70, 103.8, 'third'),
    entry(90, { kind: 'note', text: 'over' }),
  ]);
  const pan = course.pans[0]!;
  const at = (minute: number): [number | null, number | null] => [pan.celsius[minute]!, pan.brix[minute]!];
  expect([9, 10, 40, 70].map((minute) => at(minute)[0])).toEqual([null, 101, 102.2, 103.8]);
  expect(pan.celsius.every((celsius) => celsius === null || celsius < 104)).toBe(true);
  const line = lineOf(course, pan, header.started, 'clock', 'strength', 500);
  if ('why' in line) throw new Error(line.why);
  const known = line.y.flatMap((brix, i) => (brix === null ? [] : [{ hours: line.x[i]!, brix }]));
  expect(known[0]!.hours).toBeCloseTo(16 + 10 / 60, 3);
  // As hot as the readings, by the tables for sucrose at sea level: 1 °C about 31, 3.8 °C about 64 °Bx.
  expect(known[0]!.brix).toBeGreaterThan(20);
  expect(known[0]!.brix).toBeLessThan(40);
  expect(known.at(-1)!.brix).toBeGreaterThan(60);
  expect(known.every(({ brix }) => brix < 70)).toBe(true);
});

test('a boil that was noted as it ran keeps what was believed of it between the readings', async () => {
  const course = await courseOf([
    entry(0, { kind: 'top-up', pan: 'p1', litres: 8, brix: 15 }),
    read(20, 20, 100.6, 'first'),
    read(40, 40, 101, 'second'),
    entry(90, { kind: 'note', text: 'over' }),
  ]);
  const pan = course.pans[0]!;
  expect(pan.celsius[20]).not.toBeNull();
  expect(pan.brix.slice(25, 60).every((brix) => brix !== null)).toBe(true);
});
