// The screen by the pans tells on which phone a call was seen. Invented, Tarn Hollow.
import { expect, test } from 'vitest';
import { boilView } from '../../../src/core/boil/view.ts';
import { foldAll, mark, onePot, lines, inOrder, boilingAt } from '../boil/tarn-hollow.ts';

const minute = 60_000;
const heard = inOrder(
  [mark(0, { kind: 'top-up', pan: 'p1', litres: 4, brix: 67, celsius: 100 })],
  lines(1000, 4 * minute, { T1: () => boilingAt(67.2, 'maple') }),
);
const seen = (by?: string) => {
  const answer = { acknowledge: { pan: 'p1', alarm: 'finish' }, ...(by !== undefined && { by }) };
  const { state } = foldAll(onePot(), inOrder(heard, [{ t: 4 * minute, answer }]), 4 * minute);
  return boilView(state, 4 * minute).alarms.find(({ alarm }) => alarm === 'finish');
};

test('a call that was seen on a phone carries its name, and one seen by the pans none', () => {
  expect(seen('Blue phone')).toMatchObject({ answered: true, answeredBy: 'Blue phone' });
  expect(seen()).toMatchObject({ answered: true });
  expect(seen()).not.toHaveProperty('answeredBy');
});
