// What a person's mark changed in what is believed of the pans: strength, litres, finish and thermometer just before and just after it.
import { outlookOf } from './readings.ts';
import type { BoilState, KeptMark } from './state.ts';
import { leadOf } from './tip-levels.ts';
import { correctionC } from './water.ts';

/** What was believed of a pan at one moment; null for what was not known. */
export interface Believed {
  /** °Bx */
  brix: number | null;
  /** L at 20 °C */
  litres: number | null;
  /** When the finish was expected, ms of boil time. */
  finishAt: number | null;
  /** What is added to the number of its thermometer, °C; null where it has none to show. Older boils do not have it. */
  addedC?: number | null;
}

/** One change of mind, at t (ms): when a mark was noted, or taken back. */
export interface Correction {
  t: number;
  pan: string;
  before: Believed;
  after: Believed;
}

/** Only so many of the latest marks keep what they changed: the state stays small however much is noted. */
const KEEP = 60;
/** Less than this is no other opinion: °Bx, share of the litres, ms, °C. */
const SAME_BRIX = 0.05;
const SAME_SHARE = 0.005;
const SAME_MS = 5000;
const SAME_C = 0.05;

/** What is believed of each syrup pan at t (ms). */
export function believedNow(state: BoilState, t: number): Record<string, Believed> {
  const syrup = Object.keys(state.pans).filter((id) => state.designs[id]!.role === 'syrup');
  return Object.fromEntries(syrup.map((id) => [id, believedOf(state, id, t)]));
}

function believedOf(state: BoilState, id: string, t: number): Believed {
  const { brix, litres, finish_in_s: left, temperature_c: celsius } = outlookOf(state, id, t).reading;
  return {
    brix: rounded(brix, 100),
    litres: rounded(litres, 100),
    finishAt: left === null ? null : Math.round(t + left * 1000),
    addedC: celsius === null ? null : rounded(correctionC(state.water, leadOf(state, id)), 100),
  };
}

const rounded = (value: number | null, parts: number): number | null =>
  value === null ? null : Math.round(value * parts) / parts;

/** Keeps with the mark what it, or its being taken back at t (ms), changed. `before` is what was believed before that. */
export function keepCorrections(state: BoilState, kept: KeptMark, before: Record<string, Believed>, t: number): void {
  const after = believedNow(state, t);
  for (const [pan, one] of Object.entries({ ...before, ...takenOver(state, kept) })) {
    const other = after[pan]!;
    if (!isSame(one, other)) kept.corrections.push({ t, pan, before: one, after: other });
  }
  for (const old of state.marks.slice(0, -KEEP)) old.corrections = [];
}

/** A note that is corrected is taken back just before: the two are one change, which the new one tells from what was believed before both. */
function takenOver(state: BoilState, { mark, withdrawn }: KeptMark): Record<string, Believed> {
  const old = mark.corrects === undefined || withdrawn ? undefined : markOf(state, mark.corrects);
  if (old?.withdrawn !== true) return {};
  const back = old.corrections.filter(({ t }) => t > old.t);
  old.corrections = old.corrections.filter(({ t }) => t <= old.t);
  return Object.fromEntries(back.map(({ pan, before }) => [pan, before]));
}

const markOf = (state: BoilState, id: string): KeptMark | undefined => state.marks.find(({ mark }) => mark.id === id);

function isSame(one: Believed, other: Believed): boolean {
  return (
    isNear(one.brix, other.brix, SAME_BRIX) &&
    isNear(one.litres, other.litres, SAME_SHARE * (one.litres ?? 0)) &&
    isNear(one.finishAt, other.finishAt, SAME_MS) &&
    !isTaught(one, other)
  );
}

/** Another thing taught its thermometer: its number is another, though nobody read it anew. */
const isTaught = ({ addedC: one = null }: Believed, { addedC: other = null }: Believed): boolean =>
  one !== null && other !== null && Math.abs(one - other) > SAME_C;

const isNear = (one: number | null, other: number | null, by: number): boolean =>
  one === null || other === null ? one === other : Math.abs(one - other) <= by;
