// What litres, depth and the time to a top-up rest on: the last volume that was noted, and the water counted off since.
import { depthAtLitres } from '../physics/vessel.ts';
import { HOT_VOLUME } from '../pan/forecast.ts';
import type { PanReading } from '../pan/reading.ts';
import type { Measured, Origin } from '../quantities/measured.ts';
import { plus, through, times } from '../quantities/propagation.ts';
import type { Mark, MarkKind } from './entries.ts';
import { bare, type Bare, NOT_KNOWN } from './explanation.ts';
import type { BoilState } from './state.ts';

/** Litres and depths are noted to about this share (common practice). */
const VOLUME_SHARE = 0.08;
/** An evaporation that the pan itself showed wanders by so much with fire and wind; one by nominal power is off by more (common practice). */
const LEARNT_SHARE = 0.12;
const NOMINAL_SHARE = 0.35;

const VOLUME_MARKS: ReadonlySet<MarkKind> = new Set(['top-up', 'depth', 'transfer', 'draw-off']);

/** The last mark that stands and told how much is in a pan. */
export function lastVolume(state: BoilState, pan: string): { kind: MarkKind; at: number } | null {
  const told = state.marks.filter(({ mark, withdrawn }) => !withdrawn && tellsVolume(mark, pan));
  return told.reduce<{ kind: MarkKind; at: number } | null>(
    (last, { mark, at }) => (last === null || at >= last.at ? { kind: mark.kind, at } : last),
    null,
  );
}

function tellsVolume(mark: Mark, pan: string): boolean {
  if (!VOLUME_MARKS.has(mark.kind)) return false;
  return mark.kind === 'transfer' ? mark.from === pan || mark.to === pan : 'pan' in mark && mark.pan === pan;
}

/** Whether the pan's own rise or a depth has told its evaporation, and not only the burner's nominal power. */
const isLearnt = (state: BoilState, pan: string): boolean => state.pans[pan]!.learntKgPerS !== null;

/** The part that a counted evaporation brings, as a share of `amount`: the faster, the less is left and the sooner it is. */
export function evaporationPart(state: BoilState, pan: string, amount: number): Origin {
  return isLearnt(state, pan)
    ? { kind: 'evaporation', at: null, sigma: -LEARNT_SHARE * amount }
    : { kind: 'nominal-power', at: null, sigma: -NOMINAL_SHARE * amount };
}

/** Litres at 20 °C with what they rest on; null while not known. */
function litresOf(state: BoilState, reading: PanReading): Measured | null {
  if (reading.litres === null) return null;
  const last = lastVolume(state, reading.pan);
  const noted: Origin = {
    kind: last?.kind === 'depth' ? 'depth' : 'volume',
    at: last?.at ?? null,
    sigma: VOLUME_SHARE * reading.litres,
  };
  // A kilogram of water is a litre.
  const { nominalKg, countedKg } = state.pans[reading.pan]!.contents;
  const counted = evaporationPart(state, reading.pan, isLearnt(state, reading.pan) ? countedKg : nominalKg);
  return { value: reading.litres, sigma: Math.hypot(noted.sigma, counted.sigma), origins: [noted, counted] };
}

/** Litres counted at 20 °C. */
export function explainLitres(state: BoilState, reading: PanReading): Bare {
  return told(litresOf(state, reading));
}

/** Depth of the hot liquid, mm. */
export function explainDepth(state: BoilState, reading: PanReading): Bare {
  const litres = litresOf(state, reading);
  const { vessel } = state.designs[reading.pan]!;
  if (litres === null || vessel === null) return NOT_KNOWN;
  return told(through(litres, (value) => depthAtLitres(vessel, Math.max(0, value) * HOT_VOLUME)));
}

/** Seconds until the least depth. */
export function explainTopUp(state: BoilState, reading: PanReading): Bare {
  const { top_up_in_s: seconds, evaporation_l_per_h: perHour } = reading;
  const litres = litresOf(state, reading);
  if (seconds === null || litres === null || perHour === null || perHour <= 0) return NOT_KNOWN;
  const perS = perHour / 3600;
  const rate = evaporationPart(state, reading.pan, seconds);
  const count = times({ ...litres, value: 0 }, 1 / perS);
  return told(plus(count, { value: seconds, sigma: Math.abs(rate.sigma), origins: [rate] }));
}

/** None of these is ever less than nothing. */
function told(measured: Measured | null): Bare {
  if (measured === null) return NOT_KNOWN;
  const { value, low, high, parts } = bare(measured.value, measured.sigma, measured.origins);
  return { value, low: Math.max(0, low ?? 0), high, parts };
}
