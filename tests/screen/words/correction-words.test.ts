// What a mark changed, in words that a person reads at a glance; the moment is half an hour after 07:30.
import { expect, test } from 'vitest';
import type { Correction, MarkView } from '../../../src/screen/client/types.ts';
import {
  correctedAt,
  correctedBy,
  correctedLine,
  correctedWords,
  correctionWords,
  wayOf,
} from '../../../src/screen/words/correction-words.ts';
import { american, metric, moment } from '../moment.ts';

const HOUR = 3_600_000;
const changed: Correction = {
  t: 1_700_000,
  pan: 'p1',
  before: { brix: 55, litres: 3.4, finishAt: HOUR + 8 * 60_000 },
  after: { brix: 58, litres: 3.1, finishAt: HOUR },
};
const noted: MarkView = {
  t: 1_700_000,
  at: 1_700_000,
  mark: { kind: 'density', pan: 'p1', brix: 58, id: 'm1' },
  withdrawn: false,
  questioned: false,
  doubt: null,
  corrections: [changed],
  cameTo: null,
  takenC: null,
};
const plain = (words: string | null): string | null => words?.replaceAll('\u00a0', ' ') ?? null;

test('old and new strength, litres and finish, in the units of the person', () => {
  expect(plain(correctionWords(changed, moment, metric))).toBe(
    'strength 55 → 58 °Bx, in the pan 3.4 → 3.1 L, finish 08:38 → 08:30',
  );
  expect(plain(correctionWords(changed, moment, american))).toContain('in the pan 0.90 → 0.82 US gal');
});

test('a thermometer that something else taught counts otherwise, though nobody read it anew', () => {
  const taught = (was: number | null, is: number | null): Correction => ({
    ...changed,
    before: { ...changed.before, addedC: was },
    after: { ...changed.before, addedC: is },
  });
  const said = (one: Correction, units = metric) => plain(correctionWords(one, moment, units));
  expect(said(taught(0, -0.52))).toBe('its thermometer counts 0.5 °C lower');
  expect(said(taught(-0.4, 0.1), american)).toBe('its thermometer counts 0.9 °F higher');
  expect([said(taught(0, 0.02)), said(taught(null, 0.4)), said(changed)]).toEqual([null, null, said(changed)]);
});

test('what a reader would see no change of is not said, and a mark that changed nothing says nothing', () => {
  const same = { ...changed, after: { ...changed.before, brix: 55.3 } };
  expect(plain(correctionWords(same, moment, metric))).toBe('strength 55.0 → 55.3 °Bx');
  const nothing = { ...changed, after: { ...changed.before, finishAt: HOUR + 8 * 60_000 + 900 } };
  expect(correctionWords(nothing, moment, metric)).toBeNull();
  expect(correctedBy({ ...noted, corrections: [nothing] }, moment, metric)).toEqual([]);
});

test('what was not known says so, on either side', () => {
  const known = { ...changed, before: { brix: null, litres: null, finishAt: null } };
  expect(plain(correctionWords(known, moment, metric))).toBe(
    'strength not known → 58 °Bx, in the pan not known → 3.1 L, finish not known → 08:30',
  );
  const lost = { ...changed, after: { ...changed.before, finishAt: null } };
  expect(correctionWords(lost, moment, metric)).toBe('finish 08:38 → not known');
});

test('what cannot be finished in its pot has no time of its finish in a note either', () => {
  const one = { pan: 'p1', ask: null, shallow: null, tooLittle: true, roomLitres: null, smallestBatch: null };
  const little = {
    ...moment,
    advice: [{ ...one, fellC: null, moreThanNoted: false, litresRoughly: null, readAgainAt: null }],
  };
  expect(plain(correctionWords(changed, little, metric))).toBe('strength 55 → 58 °Bx, in the pan 3.4 → 3.1 L');
  expect(plain(correctionWords({ ...changed, pan: 'p2' }, little, metric))).toContain('finish 08:38 → 08:30');
});

test('of a pan that was emptied it is told what came out, and not that nobody knows how strong it is; of the one that took it, what came', () => {
  const nothing = { brix: null, litres: 0, finishAt: null };
  const out: Correction = { ...changed, before: { ...changed.before, brix: 70 }, after: nothing };
  const told = (each: MarkView) => correctedBy(each, moment, metric).map((one) => plain(one.words));
  const drawn: MarkView = { ...noted, mark: { kind: 'draw-off', pan: 'p1', all: true }, corrections: [out] };
  expect(told(drawn)).toEqual(['all of it taken out, 3.4 L, 70 °Bx: now empty']);
  const back: Correction = { ...out, t: noted.t + 1, before: nothing, after: out.before };
  expect(told({ ...drawn, withdrawn: true, corrections: [out, back] })).toEqual([
    'all of it taken out, 3.4 L, 70 °Bx: now empty',
    'in it again: 3.4 L, 70 °Bx',
  ]);
  const into: Correction = { ...changed, pan: 'p2', before: { ...nothing, litres: null } };
  const over: MarkView = { ...noted, mark: { kind: 'transfer', from: 'p1', to: 'p2', all: true }, corrections: [into] };
  expect(told(over)[0]).toContain('strength not known → 58 °Bx');
  expect(told({ ...drawn, mark: { kind: 'draw-off', pan: 'p1', litres: 1 } })[0]).toContain('70 °Bx → not known');
});

test('the shape tells the way that the strength went', () => {
  expect(wayOf(changed)).toBe('up');
  expect(wayOf({ ...changed, before: changed.after, after: changed.before })).toBe('down');
  expect(wayOf({ ...changed, after: { ...changed.after, brix: 55 } })).toBe('aside');
});

test('the line in the list names another pan, and when a mark was taken back', () => {
  const back: Correction = { ...changed, t: 1_790_000, before: changed.after, after: changed.before };
  const other: Correction = { ...changed, pan: 'p2' };
  const each: MarkView = { ...noted, withdrawn: true, corrections: [other, back] };
  const lines = correctedBy(each, moment, metric).map((one) => plain(correctedLine(each, one, moment)));
  expect(lines[0]).toBe('Pan 2: strength 55 → 58 °Bx, in the pan 3.4 → 3.1 L, finish 08:38 → 08:30');
  expect(lines[1]).toMatch(/^taken back 07:59, strength 58 → 55 °Bx/u);
  expect(new Set(correctedBy(each, moment, metric).map(({ key }) => key)).size).toBe(2);
});

test('what was noted later is told with the time at which it happened first, and with when it was noted', () => {
  const told = (each: MarkView): string[] =>
    correctedBy(each, moment, metric).map(
      (one) => `${correctedAt(each, one) / 60_000} ${plain(correctedWords(each, one, moment, metric))!}`,
    );
  const later = {
    ...noted,
    t: 1_700_000,
    at: 0,
    corrections: [{ ...changed, after: { ...changed.before, brix: 58 } }],
  };
  expect(told(later)).toEqual(['0 Front pot: Density 58 °Bx, noted 07:58: strength 55 → 58 °Bx']);
  expect(told({ ...later, at: 1_660_000 })[0]).not.toContain('noted');
  // A taking back has a time of its own.
  const back = { ...changed, t: 1_790_000, after: { ...changed.before, brix: 58 } };
  expect(told({ ...later, withdrawn: true, corrections: [back] })[0]).toMatch(
    /^29\.8\d* Front pot: .*\(taken back\): /u,
  );
});
