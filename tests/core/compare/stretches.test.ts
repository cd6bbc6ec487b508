// Boils beside each other, against a balance worked out by hand: sugar stays, water leaves at a steady pace.
import { expect, test } from 'vitest';
import { lastComeThrough, lineOf, type BoilCourse, type PanCourse, panOf } from '../../../src/core/compare/course.ts';
import { stretchDifferences, stretchOf } from '../../../src/core/compare/stretches.ts';

/** An invented pan: so much sugar (kg) from 9 °Bx on, at a steady pace (kg/h), until 67 °Bx. */
function pan(sugarKg: number, kgPerHour: number, id = 'p1'): PanCourse {
  const waterAt = (brix: number) => (sugarKg * (100 - brix)) / brix;
  const course: PanCourse = { id, name: `Pot ${id}`, sap: 'maple', celsius: [], water: [], brix: [], evaporation: [] };
  for (let minute = 0; ; minute += 1) {
    const water = waterAt(9) - (kgPerHour * minute) / 60;
    if (water < waterAt(67)) return course;
    course.brix.push((100 * sugarKg) / (sugarKg + water));
    course.evaporation.push(kgPerHour);
    course.celsius.push(99 + minute / 100);
    course.water.push(98);
  }
}

test('a stretch takes the water between its strengths at the pace at which it leaves', () => {
  // 2 kg of sugar: 4.667 kg of water at 30 °Bx, 1.333 at 60: 3.333 kg, at 4 kg/h 50 min.
  const stretch = stretchOf(pan(2, 4), 30, 60)!;
  expect(stretch.minutes).toBeCloseTo(50, 1);
  expect(stretch.kg).toBeCloseTo(10 / 3, 2);
  expect(stretch.kgPerHour).toBeCloseTo(4, 6);
  expect(stretchOf(pan(2, 4), 60, 70)).toBeNull();
});

test('less heat is told as less water off, a fuller pan as more water to take off', () => {
  const [heat] = stretchDifferences(pan(2, 4), pan(2, 3)).filter(({ toBrix }) => toBrix === 60);
  // 3.333 kg at 3 kg/h take 66.7 min.
  expect(heat!.sentence).toBe('17 min slower from 30 to 60 °Bx: 1.0 kg/h less water off.');
  const [fill] = stretchDifferences(pan(2, 4), pan(3, 4)).filter(({ toBrix }) => toBrix === 60);
  // 3 kg of sugar: 5 kg to take off, 75 min.
  expect(fill!.sentence).toBe('25 min slower from 30 to 60 °Bx: 1.7 kg more water to take off.');
  const [faster] = stretchDifferences(pan(2, 4), pan(2, 6)).filter(({ toBrix }) => toBrix === 60);
  expect(faster!.sentence).toBe('17 min faster from 30 to 60 °Bx: 2.0 kg/h more water off.');
});

test('where the water is not known only the time is told, and what hardly differs is not told at all', () => {
  const blind = { ...pan(2, 3), evaporation: pan(2, 3).evaporation.map(() => null) };
  expect(stretchDifferences(pan(2, 4), blind).map(({ sentence }) => sentence)).toContain(
    '17 min slower from 30 to 60 °Bx.',
  );
  expect(stretchDifferences(pan(2, 4), pan(2, 4.05))).toEqual([]);
  // The longest difference comes first: the thin stretch has most of the water.
  expect(stretchDifferences(pan(2, 4), pan(2, 3))[0]).toMatchObject({ fromBrix: 10, toBrix: 30 });
});

test('a strength that was come through twice, for somebody poured in, counts the last time', () => {
  const poured: PanCourse = { ...pan(2, 4), brix: [20, 30, 40, 25, 35, 45, 44.8, 50] };
  expect(lastComeThrough(poured)).toEqual([0, 3, 4, 6, 7]);
});

const COURSE: BoilCourse = {
  pans: [pan(2, 4, 'p1'), pan(3, 4, 'p2')],
  finishes: [{ pan: 'p1', at: 3_600_000, by: 'called' }],
};
const STARTED = '2027-03-27T22:30:00-07:00';
const lineFor = (align: Parameters<typeof lineOf>[3], id = 'p1') =>
  lineOf(COURSE, panOf(COURSE, id)!, STARTED, align, 'rise', 1000);

test('along: the clock at the pans, hours before the finish, litres gone, strength', () => {
  // Half past ten in the evening, whatever the offset; midnight is 24.
  expect(lineFor('clock')).toMatchObject({ x: expect.arrayContaining([22.5, 24]) });
  const before = lineFor('before-finish');
  expect('x' in before && before.x[0]).toBe(-1);
  const gone = lineFor('evaporated');
  // 4 L/h for an hour.
  expect('x' in gone && gone.x[59]).toBeCloseTo(4, 6);
  const strength = lineFor('strength');
  expect('x' in strength && strength.x[0]).toBeCloseTo(9, 6);
  expect('y' in strength && strength.y[10]).toBeCloseTo(1.1, 6);
});

test('what cannot be laid so says why', () => {
  expect(lineFor('before-finish', 'p2')).toEqual({ why: 'This pan was not finished.' });
  const blind = { ...COURSE.pans[0]!, brix: [null], evaporation: [null], celsius: [null], water: [null] };
  expect(lineOf(COURSE, blind, STARTED, 'evaporated', 'rise', 100)).toMatchObject({
    why: expect.stringMatching(/not known/),
  });
  expect(lineOf(COURSE, blind, STARTED, 'strength', 'rise', 100)).toMatchObject({
    why: expect.stringMatching(/not known/),
  });
  expect(lineOf(COURSE, blind, STARTED, 'clock', 'rise', 100)).toMatchObject({
    why: expect.stringMatching(/Nothing was seen/),
  });
});

test('a long line comes in as many points as are asked for, with its last', () => {
  const line = lineOf(COURSE, COURSE.pans[1]!, STARTED, 'clock', 'temperature', 50);
  if ('why' in line) throw new Error(line.why);
  expect(line.t.length).toBeLessThanOrEqual(50);
  expect(line.t.at(-1)).toBe((COURSE.pans[1]!.celsius.length - 1) * 60_000);
});

test('without a name it is the pan that was finished last, else the strongest', () => {
  expect(panOf(COURSE, null)?.id).toBe('p1');
  expect(panOf({ ...COURSE, finishes: [] }, null)?.id).toBe('p2');
  expect(panOf(COURSE, 'p9')).toBeNull();
});

test('of a pan that boiled for minutes only nothing is told of its water, as on its page', () => {
  const short = pan(2, 4);
  const minutes = (count: number): PanCourse => ({
    ...short,
    evaporation: short.evaporation.map((perHour, minute) => (minute < count ? perHour : 0)),
  });
  const why = { why: 'How much water left this pan is not known.' };
  expect(lineOf(COURSE, minutes(19), STARTED, 'clock', 'evaporation', 100)).toEqual(why);
  expect(lineOf(COURSE, minutes(19), STARTED, 'evaporated', 'strength', 100)).toEqual(why);
  expect(lineOf(COURSE, minutes(20), STARTED, 'clock', 'evaporation', 100)).toHaveProperty('y');
});

test('of a pan that was read by hand it is not said that nothing was seen of it', () => {
  const byHand: PanCourse = { ...pan(2, 4), brix: [null], evaporation: [null], celsius: [103.5], water: [null] };
  expect(lineOf(COURSE, byHand, STARTED, 'clock', 'strength', 100)).toEqual({
    why: 'The strength of this pan is not known.',
  });
  expect(lineOf(COURSE, byHand, STARTED, 'clock', 'rise', 100)).toEqual({
    why: 'The water point of this pan is not known.',
  });
  expect(lineOf(COURSE, byHand, STARTED, 'clock', 'temperature', 100)).toHaveProperty('y', [103.5]);
});
