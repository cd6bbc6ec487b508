// What a boil's page says of its calls is shown with them and counted, each call by its own name.
import { expect, test } from 'vitest';
import { lookBack } from '../../../src/core/boil/look-back.ts';
import { nameOf, toggled, withPageWords } from '../../../src/screen/alarms/page-word.ts';
import type { Now, RaisingShown } from '../../../src/screen/client/types.ts';
import { moment } from '../moment.ts';

const raising: RaisingShown = {
  alarm: 'low-level',
  pan: 'p1',
  port: null,
  priority: 'medium',
  why: '18 mm deep, the least is 15 mm',
  raisedAt: 60_000,
  answeredAt: null,
  clearedAt: 90_000,
  asides: [],
  noUse: false,
};
const later = { ...raising, raisedAt: 120_000 };
const raisings = [raising, later];
const ended: Now = { ...moment, ended: true, history: { raisings, earlier: 0, lookBack: lookBack(raisings) } };

test('only the call that is named counts, and what a mark said stays', () => {
  const shown = withPageWords(ended, [nameOf(later)]);
  expect(shown.history.raisings.map(({ noUse }) => noUse)).toEqual([false, true]);
  expect(shown.history.lookBack.noUse).toBe(1);
  const marked = { ...ended, history: { ...ended.history, raisings: [{ ...raising, noUse: true }, later] } };
  expect(withPageWords(marked, [nameOf(later)]).history.lookBack.noUse).toBe(2);
});

test('a second press takes the word back and leaves the others', () => {
  const both = toggled(toggled([], raising), later);
  expect(both).toEqual([nameOf(raising), nameOf(later)]);
  expect(toggled(both, raising)).toEqual([nameOf(later)]);
});
