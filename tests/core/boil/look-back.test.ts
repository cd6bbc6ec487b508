// Counts of a boil's alarms against hand-written lists: answers, chatter, floods, the worst hour, the most frequent.
import { expect, test } from 'vitest';
import { type Counted, lookBack } from '../../../src/core/boil/look-back.ts';

const at = (seconds: number, over: Partial<Counted> = {}): Counted => ({
  ...{ alarm: 'low-level', pan: 'p1', port: null, raisedAt: seconds * 1000, answeredAt: null, noUse: false },
  ...over,
});

const every = (count: number, seconds: number, from = 0): Counted[] =>
  Array.from({ length: count }, (_, index) => at(from + index * seconds, { pan: `p${index}` }));

test('a boil without an alarm', () => {
  expect(lookBack([])).toEqual({
    raised: 0,
    answered: 0,
    answeredAfterS: null,
    chatter: 0,
    floods: 0,
    worstHour: 0,
    mostFrequent: null,
    noUse: 0,
  });
});

test('how fast answered is the middle of those that were answered', () => {
  const raisings = [
    at(0, { answeredAt: 5000 }),
    at(100, { answeredAt: 140_000 }),
    at(200, { answeredAt: 210_000 }),
    at(300),
  ];
  expect(lookBack(raisings)).toMatchObject({ raised: 4, answered: 3, answeredAfterS: 10 });
});

test('more than three raisings of one alarm within a minute are chatter, once for as long as it lasts', () => {
  expect(lookBack([at(0), at(20), at(40)]).chatter).toBe(0);
  expect(lookBack([at(0), at(20), at(40), at(60)]).chatter).toBe(0);
  expect(lookBack([at(0), at(20), at(40), at(59)]).chatter).toBe(1);
  expect(lookBack([at(0), at(10), at(20), at(30), at(40), at(50)]).chatter).toBe(1);
  const again = [0, 10, 20, 30, 500, 510, 520, 530].map((second) => at(second));
  expect(lookBack(again).chatter).toBe(2);
});

test('the same alarm of different pans is no chatter', () => {
  expect(lookBack(every(6, 5)).chatter).toBe(0);
});

test('more than ten raisings within ten minutes are a flood', () => {
  expect(lookBack(every(10, 1)).floods).toBe(0);
  expect(lookBack(every(11, 60)).floods).toBe(0);
  expect(lookBack(every(11, 59)).floods).toBe(1);
  expect(lookBack([...every(11, 1), ...every(12, 1, 5000)]).floods).toBe(2);
});

test('the worst hour counts any hour, not those of the clock', () => {
  expect(lookBack([at(0), at(3000), at(3599), at(3600), at(6599)]).worstHour).toBe(4);
});

test('the most frequent is named where one came more than once', () => {
  expect(lookBack([at(0), at(100, { pan: 'p2' })]).mostFrequent).toBeNull();
  const port = { alarm: 'port-lost', pan: null, port: 'A' } as const;
  const raisings = [at(0), at(100, port), at(200), at(300, port), at(400, port)];
  expect(lookBack(raisings).mostFrequent).toEqual({ ...port, times: 3 });
});

test('what was of no use by a person’s word is counted', () => {
  expect(lookBack([at(0, { noUse: true }), at(100), at(200, { noUse: true })]).noUse).toBe(2);
});
