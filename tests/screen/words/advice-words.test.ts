// A batch that ends too shallow, and how much may go in at once, in the units chosen.
import { expect, test } from 'vitest';
import { roomWords, shallowWords, smallestWords } from '../../../src/screen/words/advice-words.ts';
import { american, metric, moment } from '../moment.ts';

const shallow = { depthMm: 9.2, pourBrix: 45, pourInS: 3000, moreSapLitres: 12 };

test('a small batch is told of with when to carry it, and once it is thick enough without', () => {
  expect(shallowWords(moment, shallow, metric)).toBe(
    'Too little for this pan: without more sap it ends 9\u00a0mm deep. Top it up, or pour it into a smaller pot at about 45\u00a0°Bx, around 08:50.',
  );
  expect(shallowWords(moment, { ...shallow, pourInS: null, moreSapLitres: 12 }, metric)).toMatch(
    /at about 45\u00a0°Bx\.$/u,
  );
  expect(shallowWords(moment, { ...shallow, pourInS: 0, moreSapLitres: 12 }, american)).toMatch(
    /pour it into a smaller pot\.$/u,
  );
});

test('the room is said in the unit chosen, and not where it is nothing or not known', () => {
  const room = (roomLitres: number | null, roomEveryS?: number) => ({
    ...(roomEveryS !== undefined && { roomEveryS }),
    pan: 'p1',
    ask: null,
    shallow: null,
    tooLittle: false,
    roomLitres,
    smallestBatch: null,
    fellC: null,
    litresRoughly: null,
    moreThanNoted: false,
    readAgainAt: null,
  });
  expect(roomWords(room(1.24, 372), metric)).toBe('up to 1.2\u00a0L at once, about every 6\u00a0min, keeps it boiling');
  expect(roomWords(room(1.24, 372), american)).toBe(
    'up to 0.3\u00a0US gal at once, about every 6\u00a0min, keeps it boiling',
  );
  expect(roomWords(room(null, 372), metric)).toBeNull();
  expect(roomWords(room(0.02, 372), metric)).toBeNull();
  expect(roomWords(room(1.24), metric)).toBeNull();
});

test('the smallest batch is told as syrup and as the sap that it takes, with whose strength that is', () => {
  const said = (settings: typeof metric, sapFrom: 'typed' | 'planned' | 'usual') =>
    smallestWords({ syrupLitres: 1.82, sapLitres: 71.4, sapBrix: 2, sapFrom }, settings).replaceAll('\u00a0', ' ');
  expect(said(metric, 'typed')).toBe(
    'The least that this pan can finish: 1.8 L of syrup, from about 71 L of sap at 2.0 °Bx, as typed last for this pan.',
  );
  expect(said(metric, 'planned')).toMatch(/of sap at 2\.0 °Bx, as planned\.$/u);
  expect(said(american, 'usual')).toBe(
    'The least that this pan can finish: 0.48 US gal of syrup, from about 19 US gal of sap at 2.0 °Bx, as is usual for this sap.',
  );
});
