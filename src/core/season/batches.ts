// What was taken out of the pans, and what is in them at the end, as people noted it and as the pan model knows it.
import { counts } from '../boil/mark-flow.ts';
import { settingOf } from '../boil/settings.ts';
import type { BoilState, KeptMark } from '../boil/state.ts';
import { LITRES_SHARE } from '../pan/course-mix.ts';
import { brixOfWaterPerSugar, litresOf } from '../pan/filter/liquid.ts';
import { type Belief, SUGAR, variance, WATER, waterOf } from '../pan/filter/belief.ts';
import { massShareOf } from '../pan/filter/mix.ts';
import { lookAt } from '../pan/forecast.ts';
import { readInstrument } from '../physics/instruments.ts';
import { type Batch, SYRUP_BRIX } from './boil-facts.ts';

/** A strength that is said of what is drawn off is known to about this, °Bx. */
export const SAID_BRIX = 1;
/** What the model says of a batch that it did not follow closely (judgement). */
const MODEL_LITRES_SHARE = 0.15;
const MODEL_BRIX_SHARE = 0.04;
/** A syrup that is known no better than this, °Bx, may be sap or sugar as well (judgement). */
const ANYTHING_BRIX = 10;
/** A density reading of the same pan goes with what is drawn off within this, ms. */
const SAME_TIME_MS = 30 * 60_000;

interface Batches {
  batches: Batch[];
  /** Names of pans of which nobody can say. */
  untold: string[];
}

interface Seen {
  /** When each pan was first seen to boil, ms: of one that was not, the model does not know how thick it got. */
  boiled: ReadonlyMap<string, number>;
  /** When each pan stood so hot that what was in it is no syrup, ms. */
  burnt: ReadonlyMap<string, readonly number[]>;
  /** When the finish of each pan was last called, ms. */
  finished: ReadonlyMap<string, number>;
}

/** Every draw-off that stands. */
export function takenOut(state: BoilState, { boiled, burnt }: Omit<Seen, 'finished'>): Batches {
  const batches: Batch[] = [];
  const untold: string[] = [];
  for (const kept of state.marks.filter(counts)) {
    const { mark } = kept;
    const design = mark.kind === 'draw-off' ? state.designs[mark.pan] : undefined;
    if (mark.kind !== 'draw-off' || design?.role === 'reference') continue;
    const batch = drawn(state, kept, mark, (boiled.get(mark.pan) ?? Infinity) <= kept.at, {
      burnt: hasBurnt(state, burnt, mark.pan, kept.at),
    });
    if (batch === null) untold.push(design?.name ?? mark.pan);
    else if (batch.litres > 0) batches.push(batch);
  }
  return { batches, untold };
}

/** When a pan was last emptied before a moment (ms); -Infinity where it never was. */
function emptiedBefore(state: BoilState, pan: string, moment: number): number {
  const emptied = state.marks.findLast(
    ({ mark, at, withdrawn }) =>
      !withdrawn && mark.kind === 'draw-off' && mark.pan === pan && mark.all === true && at < moment,
  );
  return emptied?.at ?? -Infinity;
}

/** Whether what is in a pan at a moment (ms) stood too hot for syrup since the pan was last emptied before it. */
function hasBurnt(state: BoilState, burnt: Seen['burnt'], pan: string, moment: number): boolean {
  const since = emptiedBefore(state, pan, moment);
  return (burnt.get(pan) ?? []).some((at) => at > since && at <= moment);
}

type DrawOff = Extract<KeptMark['mark'], { kind: 'draw-off' }>;

function drawn(
  state: BoilState,
  { at, changes }: KeptMark,
  mark: DrawOff,
  wasSeen: boolean,
  { burnt }: Pick<Batch, 'burnt'>,
): Batch | null {
  const gone = changes.find(({ pan }) => pan === mark.pan);
  const sugarKg = -(gone?.sugarKg ?? 0);
  const waterKg = -(gone?.waterKg ?? 0);
  const modelled = wasSeen && sugarKg > 0 ? brixOfWaterPerSugar(waterKg / sugarKg) : null;
  const strength = strengthOf(state, mark, at) ?? modelStrength(modelled);
  if (strength === null) return null;
  const measured = mark.litres !== undefined;
  const litres = mark.litres ?? (sugarKg > 0 ? litresOf(sugarKg, waterKg / sugarKg) : null);
  if (litres === null) return null;
  const litresSigma = litres * (measured ? LITRES_SHARE : MODEL_LITRES_SHARE);
  return { at, pan: mark.pan, litres, litresSigma, ...strength, measured, burnt, unfinished: false };
}

type Strength = Pick<Batch, 'brix' | 'brixSigma'>;

const modelStrength = (brix: number | null): Strength | null =>
  brix === null ? null : { brix, brixSigma: MODEL_BRIX_SHARE * brix };

/** As it was said of the draw-off itself, or read of its pan about that time; null where neither was. */
function strengthOf(state: BoilState, mark: DrawOff, at: number): Strength | null {
  if (mark.brix !== undefined) return { brix: mark.brix, brixSigma: SAID_BRIX };
  const shares = state.designs[mark.pan]?.shares;
  const near = state.marks.findLast(
    (kept) =>
      counts(kept) &&
      kept.mark.kind === 'density' &&
      kept.mark.pan === mark.pan &&
      Math.abs(kept.at - at) <= SAME_TIME_MS,
  );
  if (near?.mark.kind !== 'density' || shares === undefined) return null;
  const read = readInstrument(near.mark, shares);
  return read === null ? null : { brix: read.brix, brixSigma: read.sigma };
}

/** What the model knows to be in the pans at t (ms). One that nothing ever happened to is not in use. */
export function leftInPans(state: BoilState, { boiled, burnt, finished }: Seen, t: number): Batches {
  const batches: Batch[] = [];
  const untold: string[] = [];
  for (const [id, model] of Object.entries(state.pans)) {
    const { now } = lookAt(model, settingOf(state, id), t);
    const design = state.designs[id]!;
    if (design.role === 'reference' || model.course.emptied) continue;
    if (now === null) continue;
    const wasCalled = (finished.get(id) ?? -Infinity) > emptiedBefore(state, id, t);
    const batch = batchOf(now, id, t, (brix) => ({
      burnt: hasBurnt(state, burnt, id, t),
      unfinished: !wasCalled && brix < design.finishBrix,
    }));
    const isAnything = batch.brix >= SYRUP_BRIX && batch.brixSigma > ANYTHING_BRIX;
    if (model.course.told && boiled.has(id) && !isAnything) batches.push(batch);
    else untold.push(design.name);
  }
  return { batches, untold };
}

function batchOf(
  now: Belief,
  pan: string,
  at: number,
  became: (brix: number) => Pick<Batch, 'burnt' | 'unfinished'>,
): Batch {
  const u = waterOf(now);
  const brix = brixOfWaterPerSugar(u);
  const litres = litresOf(Math.exp(now.x[SUGAR]!), u);
  const brixSigma = (Math.sqrt(variance(now, WATER)) * u * brix) / (1 + u);
  return { at, pan, litres, litresSigma: litres * massShareOf(now), brix, brixSigma, measured: false, ...became(brix) };
}
