// The numbers behind a call come in the person's own units, and what is no number stays as it was written.
import { expect, test } from 'vitest';
import { whyWords } from '../../../src/screen/words/why-words.ts';
import { american, metric } from '../moment.ts';

/** Blanks that do not break are blanks here. */
const plain = (why: string, settings = american): string => whyWords(why, settings).replaceAll('\u00a0', ' ');

test('a range of minutes stands beside its minutes, not beside the strength', () => {
  expect(plain('about 9 min to 66.9 °Bx (7–12)', metric)).toBe('about 9 min (7–12) to 66.9 °Bx');
  expect(plain('about 9 min to 67 °Bx (9–9)', metric)).toBe('about 9 min to 67.0 °Bx');
});

test('a strength keeps its range in the scale that was chosen', () => {
  const why = '66.0 °Bx (65.6–66.4), finish 66.9 °Bx';
  expect(plain(why, metric)).toBe('66.0 °Bx (65.6–66.4), finish 66.9 °Bx');
  expect(plain(why, { ...metric, strength: 'sg' })).toMatch(/^1\.32\d+ SG \(1\.32\d–1\.32\d\), finish 1\.33\d+ SG$/i);
});

test('how far tips of one pan lie apart is a difference', () => {
  expect(plain('A/1 shows 1.5 °C more than what else hangs in this pan, and is left out')).toContain(
    'shows 2.7 °F more',
  );
  expect(plain('A/1, A/2 lie 3.0 °C apart, and nobody can tell')).toContain('lie 5.4 °F apart');
});

test('a rise and a rate are differences, a temperature is none', () => {
  // 1.8 °F to each °C; 104 °C = 219.2 °F (computed).
  expect(plain('rise 5.0 °C, 4.0 °C/min')).toBe('rise 9.0 °F, +7.2 °F/min');
  expect(plain('104.0 °C, ceiling 104 °C')).toBe('219.2 °F, ceiling 219.2 °F');
  expect(plain('too strong: rise 6.5 °C, it burns from a rise of 5.0 °C')).toBe(
    'too strong: rise 11.7 °F, it burns from a rise of 9.0 °F',
  );
});

test('a fall has its unit on both ends', () => {
  // 98 °C = 208.4 °F, 92.5 °C = 198.5 °F (computed).
  expect(plain('fell from 98.0 to 92.5 °C and goes on falling')).toBe(
    'fell from 208.4 °F to 198.5 °F and goes on falling',
  );
  expect(plain('fell from 98.0 to the steam and stays there')).toBe('fell from 208.4 °F to the steam and stays there');
});

test('gas is weighed in pounds where these were chosen', () => {
  // 2.0 kg = 4.41 lb (computed).
  expect(plain('about 2.0 kg left, 20 min at this flame')).toBe('about 4.4 lb left, 20 min at this flame');
});

test('a depth is in inches where these were chosen', () => {
  expect(plain('18 mm deep now, down to its least of 15 mm in about 3 min')).toBe(
    '0.7 in deep now, down to its least of 0.6 in in about 3 min',
  );
  // As boils say it that were kept before.
  expect(plain('18 mm deep, down to 15 mm in about 3 min')).toBe('0.7 in deep, down to 0.6 in in about 3 min');
});

test('words stay as they are', () => {
  expect(plain('nothing comes from the probe')).toBe('nothing comes from the probe');
});
