// What a pan's strength truly was around an instrument's reading near its end: the thermometer's curve, set right by the instrument.
import type { BoilState } from '../boil/fold.ts';
import { readInstrument } from '../physics/instruments.ts';
import { brixOfWaterPerSugar, waterPerSugar } from '../pan/filter/liquid.ts';

/** One look at a pan while the boil was run through as it was recorded; t in ms, strength in °Bx. */
export interface StrengthSeen {
  t: number;
  brix: number;
}

/** A pan's true strength near its end. */
export interface PanTruth {
  pan: string;
  /** When the instrument was read, ms of boil time. */
  at: number;
  /** What the instrument said, °Bx, and its standard uncertainty. */
  brix: number;
  sigmaBrix: number;
  /** Water per sugar, kg/kg, in order of t (ms). */
  curve: { t: number; waterPerSugar: number }[];
}

/** Why the truth of a pan's end is not known though an instrument was read in it. */
export interface Untold {
  /** Asked about and left out; read too far before the finish; or read while nothing told how strong the pan was. */
  why: 'left-out' | 'too-early' | 'not-followed';
  /** What the pan is called. */
  pan: string;
  /** What the instrument said, and the finish that was asked for, °Bx. */
  brix: number;
  finishBrix: number;
}

/** An instrument tells of the end only from so far under the finish on, °Bx (common practice: the last half hour). */
export const NEAR_END_BRIX = 12;
/** Its word is carried along the thermometer's curve so far back and on, ms: over longer times the fire's heat tells as well. */
const BACK_MS = 60 * 60_000;
const ON_MS = 30 * 60_000;
/** Water per sugar that grows by this share between two looks was poured in, marked or not. */
const POURED_SHARE = 0.1;

/**
 * The truth of every pan that an instrument was put into near its finish; the last such reading of a pan counts.
 * `state` is the boil's state at its end, run through as it was recorded; `seen` its looks at each pan, in order of t.
 */
export function panTruths(state: BoilState, seen: ReadonlyMap<string, readonly StrengthSeen[]>): PanTruth[] {
  return Object.keys(state.pans).flatMap((pan) => truthOf(state, pan, seen.get(pan) ?? []) ?? []);
}

/** The reading that came nearest to being such a truth, the last of several; null where no instrument was read at all. */
export function untoldOf(state: BoilState): Untold | null {
  const found = Object.keys(state.pans).flatMap((pan) => {
    const { name, finishBrix } = state.designs[pan]!;
    return instrumentReadings(state, pan).map(({ at, brix, questioned }) => {
      const why = questioned ? 'left-out' : isNearEnd(brix, finishBrix) ? 'not-followed' : 'too-early';
      return { at, told: { why, pan: name, brix, finishBrix } satisfies Untold };
    });
  });
  const last = found.toSorted((one, other) => one.at - other.at);
  for (const why of ['not-followed', 'left-out', 'too-early'] as const) {
    const nearest = last.findLast(({ told }) => told.why === why);
    if (nearest !== undefined) return nearest.told;
  }
  return null;
}

const isNearEnd = (brix: number, finishBrix: number): boolean => brix >= finishBrix - NEAR_END_BRIX;

/** All that stand, those too that were asked about. */
function instrumentReadings(state: BoilState, pan: string) {
  const { shares } = state.designs[pan]!;
  return state.marks.flatMap(({ mark, at, withdrawn, questioned }) => {
    if (mark.kind !== 'density' || mark.pan !== pan || withdrawn) return [];
    const read = readInstrument(mark, shares);
    return read === null ? [] : [{ at, questioned, ...read }];
  });
}

function truthOf(state: BoilState, pan: string, seen: readonly StrengthSeen[]): PanTruth | null {
  const { finishBrix } = state.designs[pan]!;
  const readings = instrumentReadings(state, pan).filter(
    ({ brix, questioned }) => !questioned && isNearEnd(brix, finishBrix),
  );
  const last = readings.reduce<(typeof readings)[number] | null>(
    (latest, one) => (latest === null || one.at >= latest.at ? one : latest),
    null,
  );
  if (last === null) return null;
  const curve = curveThrough(last, seen);
  return curve.length < 2 ? null : { pan, at: last.at, brix: last.brix, sigmaBrix: last.sigma, curve };
}

/**
 * Before the reading the curve is what was believed before it, after it what was believed after: each side is scaled so
 * that it goes through the reading. Sugar stays, so an error of it is the same share of water per sugar all along.
 */
function curveThrough(read: { at: number; brix: number }, seen: readonly StrengthSeen[]): PanTruth['curve'] {
  const there = waterPerSugar(read.brix);
  const looks = seen.filter(({ t, brix }) => brix > 1 && t >= read.at - BACK_MS && t <= read.at + ON_MS);
  const before = sinceLastPour(looks.filter(({ t }) => t <= read.at));
  const after = untilNextPour(looks.filter(({ t }) => t > read.at));
  return [
    ...scaled(before, before.at(-1), before.at(-2), read.at, there),
    ...scaled(after, after[0], after[1], read.at, there),
  ];
}

/** `nearest` and `next` are the two looks nearest to the reading: the curve goes through it as straight as between them. */
function scaled(
  looks: readonly StrengthSeen[],
  nearest: StrengthSeen | undefined,
  next: StrengthSeen | undefined,
  at: number,
  there: number,
): PanTruth['curve'] {
  if (nearest === undefined || next === undefined) return [];
  const perMs = (waterPerSugar(next.brix) - waterPerSugar(nearest.brix)) / (next.t - nearest.t);
  const share = there / (waterPerSugar(nearest.brix) + perMs * (at - nearest.t));
  return looks.map(({ t, brix }) => ({ t, waterPerSugar: waterPerSugar(brix) * share }));
}

function untilNextPour(looks: readonly StrengthSeen[]): readonly StrengthSeen[] {
  const poured = looks.findIndex((one, index) => index > 0 && wasPoured(looks[index - 1]!, one));
  return poured === -1 ? looks : looks.slice(0, poured);
}

function sinceLastPour(looks: readonly StrengthSeen[]): readonly StrengthSeen[] {
  const poured = looks.findLastIndex((one, index) => index > 0 && wasPoured(looks[index - 1]!, one));
  return poured === -1 ? looks : looks.slice(poured);
}

const wasPoured = (before: StrengthSeen, after: StrengthSeen): boolean =>
  waterPerSugar(after.brix) > waterPerSugar(before.brix) * (1 + POURED_SHARE);

/** The pan's true strength at a time (ms), °Bx; null outside what is known. */
export function trueStrengthAt({ curve }: PanTruth, t: number): number | null {
  const next = curve.findIndex((point) => point.t >= t);
  const right = curve[next];
  if (right === undefined || (next === 0 && right.t > t)) return null;
  const left = curve[next - 1] ?? right;
  const share = right.t === left.t ? 0 : (t - left.t) / (right.t - left.t);
  return brixOfWaterPerSugar(left.waterPerSugar + (right.waterPerSugar - left.waterPerSugar) * share);
}

/** Beyond its last look a curve is carried on straight for so long, ms: the pan was taken off just there. */
const CARRIED_MS = 5 * 60_000;
const PACE_OVER_MS = 5 * 60_000;

/** When the pan truly reached a strength, ms; null where that is not known. */
export function whenTruly({ curve }: PanTruth, brix: number): number | null {
  const water = waterPerSugar(brix);
  const reached = curve.findIndex((point) => point.waterPerSugar <= water);
  if (reached === 0) return null;
  if (reached === -1) return carriedOn(curve, water);
  const left = curve[reached - 1]!;
  const right = curve[reached]!;
  return left.t + ((left.waterPerSugar - water) / (left.waterPerSugar - right.waterPerSugar)) * (right.t - left.t);
}

function carriedOn(curve: PanTruth['curve'], water: number): number | null {
  const last = curve.at(-1)!;
  const earlier = curve.find(({ t }) => t >= last.t - PACE_OVER_MS)!;
  const perMs = (earlier.waterPerSugar - last.waterPerSugar) / (last.t - earlier.t);
  const restMs = (last.waterPerSugar - water) / perMs;
  return restMs >= 0 && restMs <= CARRIED_MS ? last.t + restMs : null;
}
