// What the list says of a note that was corrected and of the one in its place; the moment is half an hour after 07:30.
import { expect, test } from 'vitest';
import { correctedAtWords, correctedWasWords, standsAgain } from '../../../src/screen/marks/corrected-note.ts';
import type { Mark, MarkView } from '../../../src/screen/client/types.ts';
import { metric, moment } from '../moment.ts';

const MINUTE_MS = 60_000;
const noted = (mark: Mark, minutes: number, rest: Partial<MarkView> = {}): MarkView => ({
  t: minutes * MINUTE_MS,
  at: 10 * MINUTE_MS,
  mark,
  withdrawn: false,
  questioned: false,
  doubt: null,
  corrections: [],
  cameTo: null,
  takenC: null,
  ...rest,
});
const poured = (litres: number, id: string, corrects?: string): Mark => ({
  kind: 'top-up',
  pan: 'p1',
  litres,
  id,
  ...(corrects !== undefined && { corrects }),
});
const plain = (words: string | null): string | null => words?.replaceAll('\u00a0', ' ') ?? null;

test('the one says when it was corrected, the other also what it was; one taken back and one untouched say nothing', () => {
  const former = noted(poured(3, 'a'), 10, { withdrawn: true });
  const later = noted(poured(13.9, 'b', 'a'), 20);
  const back = noted(poured(5, 'c'), 21, { withdrawn: true });
  const now = { ...moment, marks: [former, later, back] };
  expect(correctedAtWords(former, now)).toBe('corrected 07:50');
  expect(correctedWasWords(former, now, metric)).toBeNull();
  expect(plain(correctedWasWords(later, now, metric))).toBe('corrected 07:50, was: Filling 3.0 L');
  for (const each of [later, back]) expect(correctedAtWords(each, now)).toBeNull();
  expect(correctedWasWords(back, now, metric)).toBeNull();
  expect(standsAgain(former, now, metric)).toBe(false);
});

test('a time or a pan that was put right is told, too', () => {
  const former = noted(poured(3, 'a'), 10, { withdrawn: true });
  const moved = noted(poured(3, 'b', 'a'), 20, { at: 15 * MINUTE_MS });
  const other = noted({ ...poured(3, 'b', 'a'), pan: 'p2' } as Mark, 20);
  const said = (later: MarkView) => plain(correctedWasWords(later, { ...moment, marks: [former, later] }, metric));
  expect(said(moved)).toBe('corrected 07:50, was: Filling 3.0 L, 07:40');
  expect(said(other)).toBe('corrected 07:50, was: Front pot: Filling 3.0 L');
});

test('a note that stands again as it was is told once', () => {
  const former = noted(poured(3, 'a'), 10, { withdrawn: true });
  const again = noted(poured(3, 'b', 'a'), 20);
  const now = { ...moment, marks: [former, again] };
  expect(standsAgain(former, now, metric)).toBe(true);
  expect(standsAgain(again, now, metric)).toBe(false);
  expect(correctedWasWords(again, now, metric)).toBeNull();
});
