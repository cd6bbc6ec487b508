// A finish and a least depth say what they would do in the pan as it stands: 63.4 °Bx, 27 mm, 9 min to go, at 08:00.
import { expect, test } from 'vitest';
import { finishSentences, leastDepthSentences } from '../../../src/screen/words/limit-words.ts';
import { metric, moment, reading } from '../moment.ts';

const said = (finish: Parameters<typeof finishSentences>[0], change = {}): string[] =>
  finishSentences(finish, { ...reading, ...change }, moment, metric).map((each) => each.replaceAll('\u00a0', ' '));

test('a strength ahead tells its time of day at today’s fire', () => {
  expect(said({ brix: 66.9 })).toEqual(['At today’s fire that is about 08:09.']);
  // Water per sugar: 0.5773 now, 0.4948 at 66.9 and 0.5267 at 65.5, so 61 % of the 9 min (computed).
  expect(said({ brix: 65.5 })).toEqual(['At today’s fire that is about 08:06.']);
});

test('a pan with too little in it to finish there says so beside that time, as its card does', () => {
  const one = { pan: reading.pan, ask: null, shallow: null, tooLittle: true, roomLitres: null, smallestBatch: null };
  const rest = { readAgainAt: null, fellC: null, moreThanNoted: false, litresRoughly: null };
  const little = { ...moment, advice: [{ ...one, ...rest }] };
  expect(finishSentences({ brix: 66.9 }, reading, little, metric)).toEqual([
    'At today’s fire that would be about 08:09, but there is too little in it yet to finish in this pan.',
  ]);
});

test('what is behind the pan would be called at once', () => {
  expect(said({ brix: 60 })[0]).toBe('It stands at about 63 °Bx now: it would be called done at once.');
  expect(said({ rise_c: 3 })[0]).toBe('It boils 3.4 °C over water now: it would be called done at once.');
  expect(said({ rise_c: 4 })).toEqual([]);
});

test('what can hardly be meant says what follows, and what is not known says so', () => {
  expect(said({ brix: 60 })[1]).toContain('spoil');
  expect(said({ brix: 72 })[1]).toContain('crystals');
  expect(said({ brix: 66.9 }, { brix: null })).toEqual(['How strong it is now is not known yet.']);
});

test('cold sap of a planned boil is as strong here as its card says', () => {
  const planned = { ...moment, header: { ...moment.header!, plan: { brix: 0.9 } } as typeof moment.header };
  const cold = { ...reading, stage: 'warming', brix: null, rise_c: -80 } as const;
  const [first] = finishSentences({ brix: 66.9 }, cold, planned, metric);
  expect(first!.replaceAll('\u00a0', ' ')).toBe('It is 0.9 °Bx as planned; nobody has measured it yet.');
});

test('a least depth is held against the depth that the pan has', () => {
  const depths = (mm: number, change = {}): string[] =>
    leastDepthSentences(mm, { ...reading, ...change }, metric).map((each) => each.replaceAll('\u00a0', ' '));
  expect(depths(15)).toEqual(['It stands 27 mm deep now.']);
  expect(depths(30)).toEqual(['It stands 27 mm deep: it would call at once.']);
  expect(depths(5)[1]).toContain('shallow');
  expect(depths(15, { depth_mm: null })[0]).toContain('not known');
  expect(depths(15, { depth_mm: 0, stage: 'off' })).toEqual([]);
});
