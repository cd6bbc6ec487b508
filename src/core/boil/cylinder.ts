// How long the cylinder that feeds a pan will last, from what was noted to be left in it and from the flame since.
import { PROPANE_NET_MJ_PER_KG } from '../physics/fuel.ts';
import type { KeptMark } from './state.ts';

export interface CylinderLeft {
  kg: number;
  /** Until it is empty at this flame, s; Infinity while nothing burns. */
  seconds: number;
}

/** Two readings of one scale tell what was burned only when so much lies between them, kg, and seconds at full flame. */
const TELLING_KG = 0.2;
const TELLING_S = 600;

/**
 * What is left at t (ms), never under 0 kg; null where nobody said, or where neither the burner's nominal power (W; null
 * while not known, and for what burns no propane) nor two notes tell how fast it goes.
 */
export function cylinderLeft(
  marks: readonly KeptMark[],
  pan: string,
  powerW: number | null,
  t: number,
): CylinderLeft | null {
  if (!marks.some(({ mark }) => mark.kind === 'fuel')) return null;
  const standing = marks.filter(({ withdrawn, at }) => !withdrawn && at <= t).sort((one, other) => one.at - other.at);
  const notes = standing.flatMap(({ at, mark }) =>
    mark.kind === 'fuel' && mark.pan === pan ? [{ at, kg: mark.kg }] : [],
  );
  const flames = standing.flatMap(({ at, mark }) =>
    mark.kind === 'flame' && mark.pan === pan ? [{ at, level: mark.level }] : [],
  );
  const last = notes.at(-1);
  if (last === undefined) return null;
  const nominal = powerW === null ? null : powerW / 1e6 / PROPANE_NET_MJ_PER_KG;
  const kgPerS = shownBy(notes, flames) ?? nominal;
  if (kgPerS === null) return null;
  const kg = Math.max(0, last.kg - kgPerS * flameSeconds(flames, last.at, t));
  const level = flames.at(-1)?.level ?? 1;
  return { kg, seconds: level === 0 ? Infinity : kg / (kgPerS * level) };
}

interface Flame {
  at: number;
  level: number;
}

/** kg/s at full flame by the last two notes of one cylinder; null where they tell nothing. */
function shownBy(notes: readonly { at: number; kg: number }[], flames: readonly Flame[]): number | null {
  for (let i = notes.length - 1; i > 0; i--) {
    const burned = notes[i - 1]!.kg - notes[i]!.kg;
    const seconds = flameSeconds(flames, notes[i - 1]!.at, notes[i]!.at);
    if (burned >= TELLING_KG && seconds >= TELLING_S) return burned / seconds;
  }
  return null;
}

/** Seconds of full flame between two moments, ms; a flame that nobody noted is full. */
function flameSeconds(flames: readonly Flame[], from: number, to: number): number {
  let seconds = 0;
  let level = 1;
  let since = from;
  for (const flame of flames) {
    if (flame.at >= to) break;
    if (flame.at > since) {
      seconds += (level * (flame.at - since)) / 1000;
      since = flame.at;
    }
    level = flame.level;
  }
  return seconds + (level * (to - since)) / 1000;
}
