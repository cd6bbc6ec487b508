// Checks the first line of the screen: one alarm, else what comes first of all pans, else what the program needs to be told.
import { expect, test } from 'vitest';
import type { ListedAlarm } from '../../../src/core/alarms/alarm.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { nextThing } from '../../../src/core/boil/next-thing.ts';
import { isTopUpAdvised } from '../../../src/core/quantities/top-up-advice.ts';
import { readAgainAt } from '../../../src/core/probes/hand-due.ts';
import type { Entry } from '../../../src/core/boil/entries.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';
import { foldAll, inOrder, lines, readingAt, tarnHollow } from './tarn-hollow.ts';

const silent = readingAt(foldAll(tarnHollow(), [], 0).state, 'p1', 0);

function reading(over: Partial<PanReading>): PanReading {
  return { ...silent, stage: 'boiling', litres: 5, ...over };
}

const alarm: ListedAlarm = {
  alarm: 'low-level',
  pan: 'p2',
  port: null,
  priority: 'medium',
  condition: 'active',
  answered: false,
  since: 0,
  asideUntil: null,
  asideReason: null,
  why: '',
};

const soonest = reading({ pan: 'p1', finish_in_s: 600, finish_low_s: 480, finish_high_s: 780 });
const later = reading({ pan: 'p2', top_up_in_s: 900 });

test('no top-up is named for a pan whose probe says nothing', () => {
  for (const probe of ['lost', 'broken'] as const) {
    expect(nextThing([{ ...later, probe }], [], true, 0).what).not.toBe('top-up');
  }
  expect(nextThing([{ ...later, probe: 'ok' }], [], true, 0).what).toBe('top-up');
});

test('an unanswered alarm comes first', () => {
  expect(nextThing([soonest], [alarm], true, 0)).toMatchObject({ what: 'alarm', pan: 'p2', at: null });
});

test('a top-up that comes after the finish, or of a pan whose heat nobody told of, is no advice', () => {
  const heard = { ...soonest, temperature_c: 101 };
  expect(isTopUpAdvised({ ...heard, top_up_in_s: 599 })).toBe(true);
  expect(isTopUpAdvised({ ...heard, top_up_in_s: 600 })).toBe(false);
  expect(nextThing([{ ...later, finish_in_s: 9e6 }], [], true, 0).what).toBe('top-up');
  expect(nextThing([{ ...later, finish_in_s: 899 }], [], true, 0).what).toBe('finish');
  const cold = { ...later, stage: 'warming' as const };
  expect(isTopUpAdvised({ ...cold, temperature_c: null })).toBe(false);
  expect(isTopUpAdvised({ ...cold, temperature_c: 60 })).toBe(true);
});

test('an alarm that is answered, over or put aside does not lead', () => {
  for (const over of [{ answered: true }, { condition: 'over' as const }, { asideUntil: 60_000 }]) {
    expect(nextThing([soonest], [{ ...alarm, ...over }], true, 0).what).toBe('finish');
  }
});

test('what comes first of all pans leads, with its range', () => {
  expect(nextThing([later, soonest], [], true, 1000)).toEqual({
    what: 'finish',
    pan: 'p1',
    at: 601_000,
    low: 481_000,
    high: 781_000,
    text: null,
  });
  expect(nextThing([later, reading({ pan: 'p1', finish_in_s: 1200 })], [], true, 0)).toMatchObject({
    what: 'top-up',
    pan: 'p2',
  });
});

test('into a pan that is nearly syrup nothing is to be poured: its finish leads, however soon it runs low', () => {
  const near = { ...soonest, stage: 'near-finish' as const, top_up_in_s: 300 };
  expect(nextThing([near], [], true, 0)).toMatchObject({ what: 'finish', pan: 'p1' });
});

test('a pan that is off has nothing coming', () => {
  expect(nextThing([{ ...soonest, stage: 'off' }], [], true, 0).what).toBe('watch');
});

test('a finished pan comes first until it is off, seen or not', () => {
  const finished = { ...soonest, pan: 'p2', stage: 'finished' as const };
  expect(nextThing([soonest, finished], [], true, 0)).toMatchObject({ what: 'finish', pan: 'p2', at: null });
});

test('without a water point it asks for one, then for litres, else it says to watch', () => {
  expect(nextThing([soonest], [], false, 0).what).toBe('tell-water');
  expect(nextThing([reading({ pan: 'p1', litres: null })], [], true, 0)).toMatchObject({
    what: 'tell-litres',
    pan: 'p1',
  });
  expect(nextThing([reading({})], [], true, 0).what).toBe('watch');
  expect(nextThing([], [], false, 0).what).toBe('watch');
});

test('a batch that ends too shallow is poured into a smaller pot before it is done; once it is late, the finish leads', () => {
  const shallow = { depthMm: 9, pourBrix: 45, moreSapLitres: 12 };
  const next = (pourInS: number | null) =>
    nextThing([soonest], [], true, 1000, [{ pan: 'p1', shallow: { ...shallow, pourInS, moreSapLitres: 12 } }]);
  expect(next(300)).toMatchObject({ what: 'smaller-pot', pan: 'p1', at: 301_000 });
  expect(next(0).what).toBe('finish');
  expect(next(null).what).toBe('finish');
});

test('a pan at its least depth leads before a finish that lies minutes ahead, its own or another’s', () => {
  const low = reading({ pan: 'p2', temperature_c: 101, top_up_in_s: 0, finish_in_s: 1500, probe: 'ok' });
  const due = { pan: 'p1', shallow: null, readAgainAt: 30_000 };
  expect(nextThing([soonest, low], [], true, 60_000, [due])).toMatchObject({ what: 'top-up', pan: 'p2', at: 60_000 });
  const near = { ...low, stage: 'near-finish' as const, finish_in_s: 480 };
  expect(nextThing([near], [], true, 60_000)).toMatchObject({ what: 'smaller-pot', pan: 'p2', at: 60_000 });
  const told = { pan: 'p2', shallow: { depthMm: 9, pourBrix: 45, pourInS: 0, moreSapLitres: 12 }, tooLittle: true };
  expect(nextThing([low], [], true, 60_000, [told])).toMatchObject({ what: 'smaller-pot', at: 60_000 });
  // Who is about to take it off waits for that, and nothing is known of a pan whose probe says nothing.
  expect(nextThing([{ ...near, finish_in_s: 120 }], [], true, 0).what).toBe('finish');
  expect(nextThing([{ ...low, probe: 'lost' }], [], true, 0).what).toBe('finish');
  expect(nextThing([{ ...low, top_up_in_s: 1, finish_in_s: 1500 }, soonest], [], true, 0).what).toBe('top-up');
  const done = { ...soonest, stage: 'finished' as const };
  expect(nextThing([done, low], [], true, 0)).toMatchObject({ what: 'finish', pan: 'p1' });
});

test('what cannot be finished where it is names no time of its finish, and no smaller pot before that is told of', () => {
  const early = { pan: 'p1', shallow: null, tooLittle: true };
  expect(nextThing([soonest], [], true, 0, [early]).what).toBe('watch');
  expect(nextThing([{ ...soonest, top_up_in_s: 300 }], [], true, 0, [early]).what).toBe('top-up');
});

test('foam is told of just before the strength at which it rises, unless something presses', () => {
  const rising = reading({ pan: 'p2', brix: 53, stage: 'thickening', finish_in_s: 3600 });
  expect(nextThing([rising], [], true, 0)).toMatchObject({ what: 'foam', pan: 'p2' });
  expect(nextThing([rising, { ...soonest, finish_in_s: 500 }], [], true, 0)).toMatchObject({
    what: 'finish',
    pan: 'p1',
  });
  expect(nextThing([{ ...rising, brix: 51.9 }], [], true, 0).what).toBe('finish');
  expect(nextThing([{ ...rising, brix: 55 }], [], true, 0).what).toBe('finish');
  expect(nextThing([{ ...rising, stage: 'off' }], [], true, 0).what).not.toBe('foam');
});

test('a pan that is read by hand is asked for in time, the sooner the nearer its finish', () => {
  const byHand = { ...reading({ pan: 'p1', litres: 4 }), probe: null };
  expect(readAgainAt({ ...byHand, finish_low_s: 24 * 60 }, 1000)).toBe(1000 + 6 * 60_000);
  expect(readAgainAt({ ...byHand, finish_low_s: 4 * 60 }, 1000)).toBe(1000 + 2 * 60_000);
  expect(readAgainAt(byHand, 1000)).toBe(1000 + 30 * 60_000);
  expect(readAgainAt({ ...byHand, stage: 'off' }, 1000)).toBeNull();
  expect(readAgainAt({ ...byHand, probe: 'ok' }, 1000)).toBeNull();
  const advice = [{ pan: 'p1', shallow: null, readAgainAt: 300_000 }];
  const far = { ...byHand, finish_in_s: 1440, finish_low_s: 1440 };
  expect(nextThing([far], [], true, 60_000, advice)).toMatchObject({ what: 'read-by-hand', pan: 'p1', at: 300_000 });
});

test('a pan with sap in it that was never read comes before one that is to be read again later', () => {
  const flat = { ...reading({ pan: 'p1', litres: 20, temperature_c: 6.5, stage: 'warming' }), probe: null };
  const pot = { ...reading({ pan: 'p2', litres: 15, temperature_c: null, stage: 'unknown' }), probe: null };
  const next = (flatAgainAt: number, potAgainAt: number | null = null, change: Partial<PanReading> = {}) => {
    const advice = [
      { pan: 'p1', shallow: null, readAgainAt: flatAgainAt },
      { pan: 'p2', shallow: null, readAgainAt: potAgainAt },
    ];
    return nextThing([{ ...flat, ...change }, pot], [], true, 60_000, advice);
  };
  expect(next(30 * 60_000)).toMatchObject({ what: 'read-by-hand', pan: 'p2', at: null });
  expect(next(5 * 60_000)).toMatchObject({ pan: 'p2', at: null });
  // What is due now, or done in a few minutes, goes before it; one that was read is asked for at its time.
  expect(next(60_000)).toMatchObject({ pan: 'p1', at: 60_000 });
  expect(next(30 * 60_000, null, { finish_in_s: 400 })).toMatchObject({ what: 'finish', pan: 'p1' });
  expect(next(30 * 60_000, 40 * 60_000)).toMatchObject({ pan: 'p1', at: 30 * 60_000 });
});

test('what burns leads before a less urgent call, though it was seen', () => {
  const burns = { ...alarm, alarm: 'scorch-risk', pan: 'p1', priority: 'high', answered: true } as const;
  const silent = { ...alarm, alarm: 'no-sound', pan: null, priority: 'medium' } as const;
  const lost = { ...alarm, alarm: 'port-lost', pan: null, priority: 'high' } as const;
  expect(nextThing([soonest], [silent, burns], true, 0).text).toBe('scorch-risk');
  expect(nextThing([soonest], [lost, burns], true, 0).text).toBe('port-lost');
  expect(nextThing([soonest], [silent, { ...burns, asideUntil: 9 }], true, 0).text).toBe('no-sound');
});

test('of pans that are due to be read by hand the strongest leads; one near its finish is soon due though that is not known', () => {
  const thin = { ...reading({ pan: 'p1', brix: 0.9 }), probe: null };
  const thick = { ...reading({ pan: 'p2', brix: 57, stage: 'thickening' }), probe: null };
  expect(readAgainAt(thick, 1000)).toBe(1000 + 5 * 60_000);
  // A forecast on an amount that nobody knows may be hours late.
  const byGuess = { ...thick, finish_in_s: 6 * 3600, finish_low_s: 3 * 3600 };
  expect(readAgainAt({ ...byGuess, litres: null }, 1000)).toBe(1000 + 5 * 60_000);
  expect(readAgainAt({ ...byGuess, litres: 40 }, 1000)).toBe(1000 + 30 * 60_000);
  const next = (p1: number, p2: number) => {
    const at = [
      { pan: 'p1', shallow: null, readAgainAt: p1 },
      { pan: 'p2', shallow: null, readAgainAt: p2 },
    ];
    return nextThing([thin, thick], [], true, 600_000, at);
  };
  expect(next(500_000, 700_000)).toMatchObject({ what: 'read-by-hand', pan: 'p2', at: 700_000 });
  // What is due alone is not held up by what is due later.
  expect(next(500_000, 900_000)).toMatchObject({ pan: 'p1', at: 500_000 });
});

test('what burns is called before what is past its finish; burnt sugar leads until it has cooled, answered or not', () => {
  const past = { ...alarm, alarm: 'past-finish', pan: 'p1', priority: 'high' } as const;
  const burns = { ...past, alarm: 'scorch-risk' } as const;
  expect(nextThing([soonest], [past, burns], true, 0).text).toBe('scorch-risk');
  const hot = reading({ pan: 'p1', stage: 'off', temperature_c: 215 });
  expect(nextThing([hot, later], [], true, 0)).toMatchObject({ what: 'burnt', pan: 'p1' });
  expect(nextThing([{ ...hot, temperature_c: 118 }, later], [], true, 0).what).toBe('top-up');
});

test('a pan of which nothing was noted leads after those that are used, and after a while not at all', () => {
  const blind = { temperature_c: null, probe: null, litres: null, stage: 'unknown' } as const;
  const [spare, front] = [reading({ pan: 'p1', ...blind }), reading({ pan: 'p2', ...blind })];
  const next = (minutes: number, ...unused: string[]) =>
    nextThing([spare, front], [], true, minutes * 60_000, [], new Set(unused));
  expect(next(5, 'p1')).toMatchObject({ what: 'tell-litres', pan: 'p2' });
  expect(next(60, 'p1', 'p2')).toMatchObject({ what: 'tell-litres', pan: 'p1' });
  const off = { ...front, stage: 'off' as const };
  const beside = (minutes: number) => nextThing([spare, off], [], true, minutes * 60_000, [], new Set(['p1']));
  expect(beside(5)).toMatchObject({ what: 'tell-litres', pan: 'p1' });
  expect(beside(20).what).toBe('watch');
});

test('a pan is used once something is noted of it', () => {
  const header = tarnHollow({ probes: [], pans: ['p1', 'p2'].map((id) => ({ id })) });
  const poured = (pan: string) => ({ t: 0, mark: { kind: 'top-up' as const, pan, litres: 10 } });
  const what = (...pans: string[]) => boilView(foldAll(header, pans.map(poured), 20 * 60_000).state, 20 * 60_000).next;
  expect(what('p2')).not.toMatchObject({ pan: 'p1' });
  expect(what()).toMatchObject({ what: 'tell-litres', pan: 'p1' });
});

test('a pan that was never used keeps nobody from ending the boil: nothing noted of it, no heat shown', () => {
  const header = tarnHollow();
  const minutes = (count: number) => count * 60_000;
  const off = [
    { t: 0, mark: { kind: 'pressure' as const, hpa: 1000 } },
    { t: 0, mark: { kind: 'top-up' as const, pan: 'p1', litres: 10 } },
    { t: minutes(18), mark: { kind: 'draw-off' as const, pan: 'p1', all: true } },
  ];
  const view = (spare: number, ...noted: Entry[]) => {
    const heard = lines(minutes(17), minutes(20), { T1: () => 90, T2: () => spare });
    return boilView(foldAll(header, inOrder([...off, ...noted], heard), minutes(20)).state, minutes(20));
  };
  expect(view(12)).toMatchObject({ unused: ['p2'], next: { what: 'watch' } });
  expect(view(41).unused).toEqual([]);
  const poured = { t: minutes(19), mark: { kind: 'top-up' as const, pan: 'p2', litres: 4 } };
  expect(view(12, poured).unused).toEqual([]);
});
