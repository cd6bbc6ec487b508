// What tuning says of a boil whose end nobody can tell: what was noted of it, and what that lacks.
import { expect, test } from 'vitest';
import { untoldWords } from '../../../src/screen/words/tune-words.ts';
import { settings } from '../../../src/screen/client/store.ts';

const untold = { pan: 'Back pot', brix: 66, finishBrix: 67 };

test.each([
  [null, /^no density was noted near its finish$/],
  [{ ...untold, why: 'left-out' as const }, /^Back pot: 66\.0\u00a0°Bx was noted, but it was asked about and left out/],
  [
    { ...untold, brix: 40, why: 'too-early' as const },
    /^Back pot: 40\.0\u00a0°Bx was noted, too far from .* 67\.0\u00a0°Bx/,
  ],
  [{ ...untold, why: 'not-followed' as const }, /^Back pot: 66\.0\u00a0°Bx was noted; missing is a thermometer/],
])('%o', (what, words) => {
  expect(untoldWords(what, settings.value)).toMatch(words);
});
