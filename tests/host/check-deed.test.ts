// Why an answer cannot be taken, in the words that the person has for the pan and the call. Invented, Tarn Hollow.
import { expect, test } from 'vitest';
import { whyNotAnswer } from '../../src/host/check-deed.ts';
import type { Scene } from '../../src/host/check-deed.ts';

const scene = { t: 0, header: { pans: [{ id: 'front', name: 'Front pot' }] }, alarms: [] } as unknown as Scene;
const why = (pan: string | null, alarm: string) => whyNotAnswer({ acknowledge: { pan, alarm } }, scene);

test('a press on a call that is gone is answered with the names that are on the screen', () => {
  expect(why('front', 'near-finish')).toBe(
    'There is no call "Nearly syrup" of "Front pot" now: there is nothing to answer.',
  );
  expect(why(null, 'power-low')).toBe('There is no call "Battery running down" now: there is nothing to answer.');
});

test('of what no call is named by, the name stays as it was given', () => {
  expect(why('side', 'constructor')).toBe('There is no call "constructor" of "side" now: there is nothing to answer.');
});
