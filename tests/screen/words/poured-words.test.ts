// A pour that nobody noted is asked about with its time and no more digits than a dip tells; a yes means what was asked.
import { expect, test } from 'vitest';
import type { Pour } from '../../../src/screen/client/types.ts';
import { topUp } from '../../../src/screen/marks/pour-forms.ts';
import { freshPour, noMark, pouredShown, pouredWords, yesMark } from '../../../src/screen/words/poured-words.ts';
import { american, metric, moment } from '../moment.ts';

const pour: Pour = { pan: 'p1', at: 900_000, litres: 4.12, low: 3.1, high: 5.4 };

test('the question has the time of day and a round amount in the unit chosen', () => {
  expect(pouredWords(moment, pour, metric)).toBe('About 4\u00a0L poured at 07:45');
  expect(pouredWords(moment, pour, american)).toBe('About 1.1\u00a0US gal poured at 07:45');
  expect(pouredWords(moment, { ...pour, litres: 0.62 }, metric)).toBe('About 0.6\u00a0L poured at 07:45');
});

test('a yes notes what was asked, when it was; a no says that nothing was poured then', () => {
  expect(yesMark(pour, metric)).toEqual({ kind: 'top-up', pan: 'p1', litres: 4, happened: 900_000 });
  const inGallons = yesMark(pour, american);
  expect('litres' in inGallons ? inGallons.litres : null).toBeCloseTo(1.1 * 3.785, 2);
  expect(noMark(pour)).toEqual({ kind: 'no-top-up', pan: 'p1', happened: 900_000 });
});

test('the newest of the last hour is asked about, for its own pan', () => {
  const at = (minutes: number, pan = 'p1') => ({ ...pour, pan, at: moment.t - minutes * 60_000 });
  const now = { ...moment, pours: [at(90), at(50), at(10), at(5, 'p2')] };
  expect(freshPour(now, 'p1')).toEqual(at(10));
  expect(freshPour({ ...now, pours: [at(61)] }, 'p1')).toBeNull();
  expect(freshPour(moment, 'p1')).toBeNull();
});

test('the form for it begins with the amount that was asked about', () => {
  const place = { now: moment, header: moment.header!, pan: 'p1', settings: metric };
  const [amount] = topUp.fields({ ...place, pour });
  expect(amount).toMatchObject({ name: 'volume', start: pouredShown(pour, metric) });
  expect(topUp.fields(place)[0]).not.toHaveProperty('start');
});
