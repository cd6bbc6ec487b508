// An invented boil at Tarn Hollow under a falling pressure, told in several ways, with the truth beside it.
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';
import { boilingAt, foldOn, inOrder, lines, mark, readingAt, tarnHollow, waterCelsius } from './tarn-hollow.ts';
import { startBoil } from '../../../src/core/boil/fold.ts';

const HOUR_MS = 3_600_000;
const FRONT_HOURS = 8;
const STARTS_HPA = 950;
/** 15 hPa in six hours, after one quiet hour. */
const truePressure = (t: number): number => STARTS_HPA - 15 * Math.min(1, Math.max(0, t / HOUR_MS - 1) / 6);
const trueBrix = (t: number): number => 100 / (100 / 32 - (100 / 32 - 100 / 68) * (t / (FRONT_HOURS * HOUR_MS)));

const PAN_PROBE_SHOWS_MORE_C = 0.35;
const POT_PROBE_SHOWS_MORE_C = -0.15;
const NOISE_C = 0.1;

export const WAYS_TO_TELL = ['pressure marks', 'a reference pot', 'neither'] as const;
export type WayToTell = (typeof WAYS_TO_TELL)[number];

const header: Header = {
  ...tarnHollow({ site: { name: 'Tarn Hollow', altitude_m: 540 } }),
  pans: [
    { id: 'p1', name: 'Back pot', probe: 'A/1', finish: { brix: 79 } },
    { id: 'pot', name: 'Plain water', role: 'reference', probe: 'A/2' },
  ],
};

/** Strength said and true each hour; one boiling check at the start in each way. */
export function underTheFront(
  way: WayToTell,
): { hours: number; brix: number; low: number; high: number; truth: number }[] {
  const stream = randomStream(11, 'boiling noise');
  const noisy = (celsius: number): number => celsius + NOISE_C * nextNormal(stream);
  const heard = lines(0, FRONT_HOURS * HOUR_MS, {
    T1: (t) => noisy(boilingAt(trueBrix(t), 'maple', truePressure(t)) + PAN_PROBE_SHOWS_MORE_C),
    ...(way === 'a reference pot' && {
      T2: (t: number) => noisy(waterCelsius(truePressure(t)) + POT_PROBE_SHOWS_MORE_C),
    }),
  });
  const check = mark(0, {
    kind: 'water-check',
    probe: 'A/1',
    celsius: waterCelsius(truePressure(0)) + PAN_PROBE_SHOWS_MORE_C,
  });
  const barometer = Array.from({ length: FRONT_HOURS }, (_, hour): Entry => {
    return mark(hour * HOUR_MS, { kind: 'pressure', hpa: Math.round(truePressure(hour * HOUR_MS)) });
  });
  const entries = inOrder([check], way === 'pressure marks' ? barometer : [], heard);
  let state = startBoil(header);
  return Array.from({ length: FRONT_HOURS }, (_, index) => {
    const until = (index + 1) * HOUR_MS - 1000;
    ({ state } = foldOn(
      state,
      entries.filter((entry) => entry.t > state.now && entry.t <= until),
      until,
    ));
    const { brix, brix_low, brix_high } = readingAt(state, 'p1', until);
    return { hours: index + 1, brix: brix!, low: brix_low!, high: brix_high!, truth: trueBrix(until) };
  });
}
