// The judge of unmarked pours: what is found, missed, invented, or told although somebody marked it.
import { expect, test } from 'vitest';
import { minute, sampleOf } from './pan-case.ts';
import { judgePours } from './pours.ts';
import type { SeenPour } from './play.ts';
import { SAMPLE_MS, type Witnessed } from './witness.ts';

/** 2 L poured at 10 min (marked late), at 20 min and at 30 min (never marked), and a splash that nobody feels at 40 min. */
const poured = [10, 20, 30, 40].map((minutes) => minutes * minute);
const samples = Array.from({ length: 301 }, (_, index) => {
  const t = index * SAMPLE_MS;
  const before = poured.filter((at) => at < t).length;
  const isJust = poured.slice(0, 3).some((at) => t > at && t < at + 3 * minute);
  return sampleOf({ t, litres: 5 + 2 * before, celsius: isJust ? 95 : 101, boiling: !isJust });
});
const true_: Witnessed = {
  recording: '',
  header: { recording: 'panwarden', version: 1, started: '2027-03-20T09:00:00-07:00' },
  pans: [],
  samples: { p1: samples },
  moments: poured.map((t) => ({ t, what: 'poured', pan: 'p1' })),
  marks: [{ t: 14 * minute, mark: { kind: 'top-up', pan: 'p1', litres: 2, happened: 10 * minute } }],
  endsAt: 50 * minute,
};
const seen = (minutes: number, litres: number | null = 2, pan = 'p1'): SeenPour => ({
  pan,
  at: minutes * minute,
  litres,
});

test('a program that says nothing of pours is not judged by them, but they are counted', () => {
  expect(judgePours(true_, null)).toEqual({
    told: false,
    unmarked: 2,
    found: 0,
    litresOff: [],
    invented: 0,
    twice: 0,
  });
});

test('found within five minutes, in the right pan, once each; the rest is invented or was marked', () => {
  const judged = judgePours(true_, [seen(21, 3), seen(22), seen(33, null), seen(11), seen(30, 2, 'p2'), seen(41)]);
  expect(judged).toMatchObject({ told: true, unmarked: 2, found: 2, litresOff: [0.5], invented: 2, twice: 1 });
});

test('what nobody could feel need not be found', () => {
  expect(judgePours(true_, [seen(20)])).toMatchObject({ unmarked: 2, found: 1, invented: 0 });
});
