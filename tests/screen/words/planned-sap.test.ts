// What a card and the first line say while sap of the plan is still to come. Invented, Tarn Hollow.
import { expect, test } from 'vitest';
import type { Advice, Now } from '../../../src/screen/client/types.ts';
import type { Sap } from '../../../src/core/boil/entries.ts';
import { forecastWords } from '../../../src/screen/pans/forecast-words.ts';
import { nextLine } from '../../../src/screen/words/next-line.ts';
import { sapToCome, shallowThen } from '../../../src/screen/words/planned-sap.ts';
import { moment, reading } from '../moment.ts';

const topUp = (litres: number, change: Partial<Now['marks'][number]> = {}): Now['marks'][number] => ({
  ...{ t: 0, at: 0, withdrawn: false, questioned: false, doubt: null, corrections: [], cameTo: null, takenC: null },
  mark: { kind: 'top-up', pan: 'p1', litres },
  ...change,
});

function after(...marks: Now['marks']): Now {
  const header = { ...moment.header!, plan: { litres: 140, pans: [] } } as Now['header'];
  const shallow = { depthMm: 9, pourBrix: 45, pourInS: 600, moreSapLitres: 30 };
  const advice: Advice = {
    pan: 'p1',
    ask: null,
    fellC: null,
    litresRoughly: null,
    moreThanNoted: false,
    shallow,
    tooLittle: false,
    roomLitres: null,
    smallestBatch: null,
    readAgainAt: null,
  };
  return { ...moment, header, marks, advice: [advice] };
}

test('what was taken back or is not believed is still to come, and a last jug is not waited for', () => {
  expect(sapToCome(moment, 'p1')).toBe(0);
  expect(sapToCome(after(), 'p1')).toBe(140);
  expect(sapToCome(after(topUp(38)), 'p1')).toBe(102);
  expect(sapToCome(after(topUp(38), topUp(50, { withdrawn: true })), 'p1')).toBe(102);
  expect(sapToCome(after(topUp(134)), 'p1')).toBe(0);
  expect(sapToCome(after(topUp(200)), 'p1')).toBe(0);
});

test('another kind of sap in another pan is no sap of the plan, unless no pan has the plan’s', () => {
  const planned = after(topUp(38), { ...topUp(21), mark: { kind: 'top-up', pan: 'p2', litres: 21 } });
  const birch = (...kinds: Sap[]): Now => ({
    ...planned,
    header: {
      ...planned.header!,
      plan: { litres: 140, sap: 'birch', pans: [] },
      pans: planned.header!.pans!.map((pan, index) => ({ ...pan, sap: kinds[index] })),
    } as Now['header'],
  });
  expect(sapToCome(birch('birch', 'maple'), 'p1')).toBe(102);
  expect(sapToCome(birch('birch', 'maple'), 'p2')).toBe(0);
  expect(sapToCome(birch('birch', 'birch'), 'p1')).toBe(81);
  expect(sapToCome(birch('maple', 'maple'), 'p1')).toBe(81);
});

test('while sap is to come, a pan is done then only without it, and no smaller pot is advised', () => {
  const [early, late] = [after(topUp(38)), after(topUp(140))];
  expect(forecastWords(early, reading)!.headline).toBe('Without more sap: done about 08:09');
  expect(forecastWords(late, reading)!.headline).toBe('Done about 08:09');
  const next = { ...moment.next, what: 'smaller-pot', pan: 'p1', at: null } as const;
  expect(nextLine({ ...early, next }).what).toBe('planned sap is still to be poured in');
  expect(nextLine({ ...late, next }).what).toBe('top up, or pour into a smaller pot');
});

test('where what is to come would not fill the pot, it still ends too shallow', () => {
  const [advice] = after().advice;
  expect(shallowThen(after(topUp(38)), advice!)).toBeNull();
  expect(shallowThen(after(topUp(120)), advice!)).toMatchObject({ depthMm: 9 });
  expect(shallowThen(after(), null)).toBeNull();
});

test('what cannot be finished in its pot is to be poured into a smaller one, and has no time at which it is done', () => {
  const little = (now: Now): Now => ({ ...now, advice: now.advice.map((one) => ({ ...one, tooLittle: true })) });
  const [early, late] = [little(after(topUp(38))), little(after(topUp(140)))];
  expect(forecastWords(late, reading)).toEqual({ headline: 'Pour it into a smaller pot to finish it', range: null });
  // Before a smaller pot is of use, no large letters ask for it: they say what is next, and small ones what is so by then.
  const small = 'Too little yet to finish in this pan';
  const still = { ...reading, top_up_in_s: null };
  expect(forecastWords(early, still)).toEqual({
    headline: 'In all pans together, 102\u00a0L of sap still to go in',
    ...{ range: null, small, ofAll: true },
  });
  const quiet = { ...late, advice: late.advice.map((one) => ({ ...one, shallow: null })) };
  expect(forecastWords(quiet, still)).toEqual({ headline: 'More sap can follow', range: null, small });
  const falls = { ...reading, stage: 'boiling' as const, probe: 'ok' as const, finish_in_s: 4000, top_up_in_s: 1200 };
  expect(forecastWords(early, falls)).toEqual({ headline: 'Top up by 08:20', range: null, small, about: 'top-up' });
  expect(forecastWords(early, { ...falls, top_up_in_s: 0 })?.headline).toBe('Top up now');
  // At its least depth there is no time to name: sap of the plan first, where some is left.
  const due = { ...moment.next, what: 'smaller-pot', pan: 'p1', at: moment.t } as const;
  expect(nextLine({ ...early, next: due }).what).toBe('top up now');
  expect(nextLine({ ...late, next: due }).what).toBe('top up, or pour into a smaller pot');
  const next = {
    ...moment.next,
    what: 'finish',
    pan: 'p1',
    at: moment.t + 540_000,
    low: moment.t,
    high: moment.t + 1_000_000,
  } as const;
  expect(nextLine({ ...late, next })).toMatchObject({ what: 'top up, or pour into a smaller pot', range: null });
  expect(nextLine({ ...early, next }).what).toBe('planned sap is still to be poured in');
  expect(nextLine({ ...after(), next }).range).not.toBeNull();
  // At its finish all the same, it is what counts.
  expect(forecastWords(late, { ...reading, finish_in_s: 0, stage: 'finished' })!.headline).toBe('Done now');
});
