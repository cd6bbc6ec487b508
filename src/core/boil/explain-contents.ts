// What litres, depth and the time to a top-up rest on: the last volume that was noted, and the water counted off since.
import { depthAtLitres } from '../physics/vessel.ts';
import { evaporation, lookAt, swellOf } from '../pan/forecast.ts';
import type { PanReading } from '../pan/reading.ts';
import type { Measured, Origin } from '../quantities/measured.ts';
import { plus, through, times } from '../quantities/propagation.ts';
import type { Mark, MarkKind } from './entries.ts';
import { bare, type Bare, NOT_KNOWN } from './explanation.ts';
import { settingOf } from './settings.ts';
import type { BoilState } from './state.ts';

/** Litres and depths are noted to about this share (common practice). */
const VOLUME_SHARE = 0.08;
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

/** Its own evaporation is told apart from nominal power once it is known to this share. */
const OWN_SHARE = 0.2;

/** The part that a counted evaporation brings, as a share of `amount`: the faster, the less is left and the sooner it is. */
export function evaporationPart(state: BoilState, pan: string, amount: number): Origin {
  const sigma = evaporation(lookAt(state.pans[pan]!, settingOf(state, pan), state.now))?.sigma ?? 0;
  return { kind: sigma < OWN_SHARE ? 'evaporation' : 'nominal-power', at: null, sigma: -sigma * amount };
}

/** Litres at 20 °C with what they rest on; null while not known. */
function litresOf(state: BoilState, reading: PanReading): Measured | null {
  if (reading.litres === null) return null;
  const last = lastVolume(state, reading.pan);
  const whole = lookAt(state.pans[reading.pan]!, settingOf(state, reading.pan), state.now).litresShare * reading.litres;
  const noted = Math.min(VOLUME_SHARE * reading.litres, whole);
  const counted = Math.sqrt(Math.max(0, whole * whole - noted * noted));
  const { kind } = evaporationPart(state, reading.pan, 1);
  return {
    value: reading.litres,
    sigma: whole,
    origins: [
      { kind: last?.kind === 'depth' ? 'depth' : 'volume', at: last?.at ?? null, sigma: noted },
      { kind, at: null, sigma: -counted },
    ],
  };
}

/** Litres counted at 20 °C. */
export function explainLitres(state: BoilState, reading: PanReading): Bare {
  return told(litresOf(state, reading));
}

/** Depth of the liquid as warm as it is, mm. */
export function explainDepth(state: BoilState, reading: PanReading): Bare {
  const litres = litresOf(state, reading);
  const { vessel } = state.designs[reading.pan]!;
  if (litres === null || vessel === null) return NOT_KNOWN;
  const swell = swellOf(lookAt(state.pans[reading.pan]!, settingOf(state, reading.pan), state.now));
  return told(through(litres, (value) => depthAtLitres(vessel, Math.max(0, value) * swell)));
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
