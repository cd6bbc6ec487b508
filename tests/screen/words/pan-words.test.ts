// What is not known is said, with the mark that would help most first.
import { expect, test } from 'vitest';
import { isAtOdds, firstNote, markCall, notKnownYet, panName, probeName } from '../../../src/screen/words/pan-words.ts';
import { moment, reading } from '../moment.ts';

test('a pan without a temperature asks for nothing else', () => {
  const blind = { ...reading, temperature_c: null, water_c: null, litres: null, brix: null };
  expect(notKnownYet(blind).map((each) => each.mark)).toEqual(['reading']);
});

test('of a pan without a probe what is in it is asked for first, then its thermometer, until it was read', () => {
  const blind = { ...reading, probe: null, temperature_c: null, rise_c: null, litres: null, brix: null };
  expect(firstNote(moment, blind)).toEqual({
    words: 'First note what is in it, then read its thermometer.',
    mark: 'top-up',
  });
  expect(firstNote(moment, { ...blind, litres: 10 })?.mark).toBe('reading');
  // What was noted has boiled away by the count: its amount is not asked for again.
  const mark = { kind: 'top-up', pan: 'p1', litres: 3 } as const;
  const fill = { t: 0, at: 0, mark, questioned: false, doubt: null, corrections: [], cameTo: null, takenC: null };
  const gone = firstNote({ ...moment, marks: [{ ...fill, withdrawn: false }] }, blind);
  expect(gone).toEqual({ words: expect.stringContaining('all have boiled away'), mark: 'reading' });
  expect(firstNote({ ...moment, marks: [{ ...fill, withdrawn: true }] }, blind)?.mark).toBe('top-up');
  const lastHeats = [{ pan: 'p1', celsius: 99, at: 0 }];
  expect(firstNote({ ...moment, lastHeats }, blind)).toBeNull();
  for (const change of [{ probe: 'lost' as const }, { temperature_c: 99 }, { stage: 'off' as const }])
    expect(firstNote(moment, { ...blind, ...change })).toBeNull();
});

test('the water point comes before litres, strength waits for the water point', () => {
  const early = { ...reading, water_c: null, litres: null, brix: null, finish_in_s: null };
  expect(notKnownYet(early).map((each) => each.mark)).toEqual(['water-check', 'depth']);
  expect(notKnownYet({ ...early, water_c: 98 }).map((each) => each.mark)).toEqual(['depth', 'density']);
});

test('a pan that is read by hand is asked for its thermometer in boiling water, not for a probe', () => {
  const byHand = { ...reading, probe: null, water_c: null, litres: null, brix: null, finish_in_s: null };
  expect(notKnownYet(byHand)[0]).toMatchObject({
    mark: 'water-check',
    how: 'your thermometer in plain boiling water tells it, or today’s air pressure, or roughly the height of the place',
  });
});

test('a strength that is not known has its true reason', () => {
  const how = (rise_c: number, stage = reading.stage): string | undefined =>
    notKnownYet({ ...reading, brix: null, rise_c, stage }).find(({ mark }) => mark === 'density')?.how;
  expect(how(0.4)).toBe('too thin to tell by its heat');
  expect(how(0.4, 'unknown')).toBe('it is told once the pan boils');
  expect(how(5)).toBe('what was noted and what it shows do not go together');
});

test('after a fall that nobody explained that is asked first, and alone', () => {
  const fallen = { ...reading, brix: null, litres: null, finish_in_s: null };
  expect(notKnownYet(fallen, null, false, { fell: '4.0 °C' })).toMatchObject([
    { mark: 'top-up', call: 'Note what was poured in', how: expect.stringContaining('fell by 4.0 °C') as string },
  ]);
  expect(notKnownYet(reading, null, false, { fell: '4.0 °C' })).toEqual([]);
});

test('more sugar than was noted puts the amount in doubt, whatever else is asked', () => {
  for (const ask of [null, 'density'] as const)
    expect(notKnownYet(reading, ask, false, { moreThanNoted: true })[0]).toMatchObject({
      mark: 'depth',
      inDoubt: true,
      how: expect.stringContaining('does not make this much syrup') as string,
    });
  expect(notKnownYet(reading, null, false, { moreThanNoted: false })).toEqual([]);
});

test('a thermometer far over water beside a thin count: the two do not go together, whatever else is asked', () => {
  const odd = { ...reading, brix: 2, brix_low: 1.9, brix_high: 2.1, rise_c: 1.7 };
  const lines = (change: Partial<typeof reading>, ask: 'depth' | null = null) =>
    notKnownYet({ ...odd, ...change }, ask).map(({ how }) => how);
  expect(lines({})[0]).toBe('what was noted and what it shows do not go together');
  expect(isAtOdds({ ...reading, rise_c: 3, brix: 0.9, brix_high: 1.1 })).toBe(true);
  expect(isAtOdds({ ...reading, rise_c: 0.1, brix: 0.9, brix_high: 1.1 })).toBe(false);
  expect(lines({}, 'depth')).toHaveLength(2);
  expect(lines({ rise_c: 0.2 })).toEqual([]);
  expect(lines({ brix: 45, brix_low: 44, brix_high: 46 })).toEqual([]);
});

test('a pan of which all is known, and one that is off, ask for nothing', () => {
  expect(notKnownYet(reading)).toEqual([]);
  expect(notKnownYet({ ...reading, stage: 'off', litres: null })).toEqual([]);
});

test('a forecast that is missing has its true reason, and none at the finish', () => {
  const why = (change: Partial<typeof reading>) =>
    notKnownYet({ ...reading, stage: 'thickening', finish_in_s: null, ...change }).map((each) => each.how);
  expect(why({})).toEqual(['needs a while of steady boiling']);
  expect(why({ stage: 'warming' })).toEqual(['it does not boil yet']);
  expect(why({ probe: 'stuck' })).toEqual(['the probe has to be good first']);
  expect(why({ probe: null })).toEqual(['needs readings by hand, one after another']);
  expect(why({ stage: 'finished' })).toEqual([]);
});

test('every mark that is asked for has a press', () => {
  const early = { ...reading, water_c: null, litres: null, brix: null };
  for (const { mark } of notKnownYet(early)) expect(mark === null ? null : markCall(mark)).not.toBeNull();
});

test('names are those that the person gave, never the ids of the recording', () => {
  expect([panName(moment.header, 'p1'), panName(moment.header, 'p2'), panName(moment.header, 'gone')]).toEqual([
    'Front pot',
    'Pan 2',
    'A pan',
  ]);
  expect(probeName(moment.header, 'A/2')).toBe('T2 on board A');
});

test('where one mark would narrow the forecast most, it alone is asked for', () => {
  const early = { ...reading, litres: null, brix: null, finish_in_s: null };
  expect(notKnownYet(early, 'depth')).toEqual([
    { what: 'when it is done', how: 'tell how deep it stands in the pan', mark: 'depth', roughly: false },
  ]);
  expect(notKnownYet(reading, 'density')).toMatchObject([{ mark: 'density', roughly: true }]);
  for (const ask of ['depth', 'top-up', 'density', 'water-check', 'pressure'] as const) {
    expect(markCall(ask)).not.toBeNull();
  }
  expect(notKnownYet({ ...early, temperature_c: null }, 'depth').map(({ mark }) => mark)).toEqual(['reading']);
  expect(notKnownYet({ ...early, water_c: null }, 'depth')[0]?.mark).toBe('water-check');
});
