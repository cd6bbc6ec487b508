// The screen by the pans tells on which phone a call was seen, on which it was made quiet, and what came meanwhile. Invented, Tarn Hollow.
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

/** The probe of the pot is silent from 30 s on: it is called at 34 s. */
const quiet = (at: number, by?: string) => {
  const answer = { silence: { seconds: 120 }, ...(by !== undefined && { by }) };
  const { state } = foldAll(onePot(), inOrder(lines(0, 30_000, { T1: () => 60 }), [{ t: at, answer }]), minute);
  return boilView(state, minute);
};

test('a quiet that was asked for on a phone carries its name, and one by the pans none', () => {
  expect(quiet(20_000, 'Blue phone').sound).toMatchObject({ silencedBy: 'Blue phone' });
  expect(quiet(20_000).sound).not.toHaveProperty('silencedBy');
});

test('a call that came while it was quiet says so, and one that was heard before does not', () => {
  expect(quiet(20_000).alarms).toMatchObject([{ alarm: 'probe-lost', inQuiet: true }]);
  const [heardBefore] = quiet(50_000).alarms;
  expect(heardBefore).toMatchObject({ alarm: 'probe-lost' });
  expect(heardBefore).not.toHaveProperty('inQuiet');
});
