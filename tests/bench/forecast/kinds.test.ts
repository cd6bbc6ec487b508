// The kinds of boil: enough of them, the same for the same seed, each with a header that holds together; and one judged whole.
import { expect, test } from 'vitest';
import { startBoil } from '../../../src/core/boil/fold.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';
import { checkHeader } from '../../../src/protocol/header-schema.ts';
import { allKinds, developmentSeeds, judgingSeeds } from './kinds/all-kinds.ts';
import { readingOf } from './pan-case.ts';
import { play, READING_MS, type Played } from './play.ts';
import { scoreBoil } from './score.ts';
import { tally } from './tally.ts';
import { SAMPLE_MS, witness, type Witnessed } from './witness.ts';

test('there are at least 20 kinds and five judging seeds that nobody develops with', () => {
  expect(new Set(allKinds.map(({ name }) => name)).size).toBe(allKinds.length);
  expect(allKinds.length).toBeGreaterThanOrEqual(20);
  expect(judgingSeeds).toHaveLength(5);
  expect(judgingSeeds.filter((seed) => developmentSeeds.includes(seed))).toEqual([]);
});

test.each(allKinds)('$name: one seed is one boil, another seed another, and the header holds together', (kind) => {
  expect(kind.scenario(7)).toEqual(kind.scenario(7));
  expect(kind.scenario(7).pans).not.toEqual(kind.scenario(8).pans);
  const checked = checkHeader(kind.scenario(7).header);
  expect(checked.ok ? '' : checked.why).toBe('');
});

const momentsOf = (name: string, seed: number) => {
  const { moments, samples } = witness(allKinds.find((one) => one.name === name)!.scenario(seed));
  return { moments, samples };
};

test.each(allKinds.map(({ name }) => name))('%s: its pans boil, and come to a finish or burn', (name) => {
  const { moments, samples } = momentsOf(name, 1);
  const whats = moments.map(({ what }) => what);
  expect(whats.includes('reached-finish') || whats.includes('burned')).toBe(true);
  expect(whats.includes('boil-began')).toBe(name !== 'below-a-boil');
  expect(Object.values(samples)[0]!.at(-1)!.t).toBeLessThan(13 * 3_600_000);
});

test('what is left to burn burns as its kind says', () => {
  const burned = (name: string) => momentsOf(name, 2).moments.filter(({ what }) => what === 'burned');
  expect(burned('left-too-strong').map(({ brix }) => brix! > 77)).toEqual([true]);
  expect(burned('left-too-shallow').map(({ brix, depth_mm }) => depth_mm! < 4.1 && brix! > 20)).toEqual([true]);
  expect(burned('forgotten-top-ups').map(({ brix, depth_mm }) => depth_mm! < 4.1 && brix! < 60)).toEqual([true]);
});

const kitchen = allKinds.find(({ name }) => name === 'kitchen-finish')!;
const boil = witness(kitchen.scenario(1));

/** A program that knows the truth, and says it wrong by a factor. */
function knowing({ samples, moments }: Witnessed, factor: number): Played {
  const finish = moments.find(({ what }) => what === 'reached-finish')!.t;
  const readings = samples['p1']!.filter(({ t }) => t % READING_MS === 0).map(({ t, brix }): PanReading => {
    const left = (factor * Math.max(0, finish - t)) / 1000;
    const ranges = { finish_low_s: left - 1, finish_high_s: left + 1, brix_low: brix - 0.1, brix_high: brix + 0.1 };
    return readingOf({ brix, finish_in_s: left, ...ranges });
  });
  const called = (t: number, alarm: 'finish' | 'near-finish') =>
    ({ t, pan: 'p1', alarm, event: 'raised', priority: 'high', why: '' }) as const;
  return {
    readings: { p1: readings },
    calls: [called(finish - 600_000, 'near-finish'), called(finish, 'finish')],
    pours: [],
    foldMs: 1,
    probeReadings: 1,
    stateBytesPerPan: 1,
    end: startBoil(boil.header),
  };
}

test('a program that knows the truth errs by nothing, and one that is half as long off errs by a half', () => {
  const exact = tally([scoreBoil('kitchen-finish', 1, boil, knowing(boil, 1))]);
  expect(exact.leads.map(({ count, median, held, answered }) => [count, median < 1e-9, held, answered])).toEqual(
    Array.from({ length: 6 }, () => [1, true, 1, 1]),
  );
  expect(exact.strength).toMatchObject({ median: 0, held: 1, answered: 1 });
  expect(exact.near.p50).toBeCloseTo(10, 1);
  expect(Math.abs(exact.finish.p50)).toBeLessThan(0.1);
  expect(exact.falseCount).toBe(0);
  const long = tally([scoreBoil('kitchen-finish', 1, boil, knowing(boil, 1.5))]);
  for (const { median, bias, held } of long.leads) {
    expect(median).toBeCloseTo(0.5, 9);
    expect(bias).toBeCloseTo(0.5, 9);
    expect(held).toBe(0);
  }
});

test('the witness keeps the truth every 10 s, and its recording goes through the replay whole', async () => {
  expect(boil.samples['p1']!.every(({ t }, index) => t === index * SAMPLE_MS)).toBe(true);
  const played = await play(boil.recording);
  expect(played.readings['p1']).toHaveLength(Math.floor((boil.endsAt - 1) / READING_MS) + 1);
  expect(played.probeReadings).toBeGreaterThan(1000);
  expect(played.calls.some(({ alarm }) => alarm === 'finish')).toBe(true);
});
