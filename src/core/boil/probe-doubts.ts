// Which probes of a boil cannot be believed now, and why: by their own numbers, by their pan, and by their neighbours.
import { type Course, isOff } from '../pan/course.ts';
import { lastMinutes } from '../pan/last-minutes.ts';
import type { PanModel } from '../pan/pan-state.ts';
import type { Setting } from '../pan/course-time.ts';
import { LEAP_LASTS_MS, THICK_SHARE } from '../pan/pan-signs.ts';
import { judgeStuck, type ProbeDoubt } from './probe-signs.ts';
import type { ProbeTrack } from './probe-track.ts';
import { settingOf } from './settings.ts';
import type { BoilState } from './state.ts';

/** Two probes that exchanged their values; it stands while both hang where they hung, and until they exchange them again. */
export interface Swap {
  other: string;
  pan: string;
}

/** Looks at every probe that hangs in a pan; t in ms. */
export function noteDoubts(state: BoilState, t: number): void {
  noteSwaps(state, t);
  for (const id of state.names.pans) {
    const pan = state.pans[id]!;
    const setting = settingOf(state, id);
    for (const probe of state.panProbes[id]!) {
      const track = state.probes[probe]!;
      judgeStuck(track.signs, t, { boils: boils(pan.course, setting), climbs: climbs(track, pan.course, setting) });
      track.doubt =
        track.signs.doubt ??
        swapDoubt(state, track) ??
        leapDoubt(pan, track, t) ??
        liftedDoubt(pan) ??
        besideDoubt(state, id, track);
    }
  }
}

const boils = (course: Course, { design }: Setting): boolean =>
  course.phase === 'boiling' && !isOff(course) && design.ceilingC === null;

/** Well under the boil, where no plateau is, °C; and as fast before, °C/min. */
const UNDER_C = 5;
const WARMS_C_PER_MIN = 0.3;

/** A heated pan gets warmer until it boils, and a thick one for as long as it boils. */
function climbs({ signs }: ProbeTrack, course: Course, { design, around }: Setting): boolean {
  const { riseC, phase } = course;
  if (isOff(course) || design.ceilingC !== null || riseC === null) return false;
  if (phase === 'cold') return riseC < -UNDER_C && (signs.rateBefore ?? 0) >= WARMS_C_PER_MIN;
  const finishC = around.limits.finish.riseC;
  return phase === 'boiling' && finishC !== null && riseC >= THICK_SHARE * finishC;
}

/** Against the other tips of its pan; where nobody can tell which is right, each is doubted. */
const besideDoubt = ({ tips }: BoilState, pan: string, { beside }: ProbeTrack): ProbeDoubt | null =>
  beside.odd ?? tips[pan]?.untold?.doubt ?? null;

function swapDoubt(state: BoilState, { swap }: ProbeTrack): ProbeDoubt | null {
  if (swap === null) return null;
  const { name } = state.designs[swap.pan] ?? { name: swap.pan };
  return {
    state: 'suspect',
    why: `it took over what the probe of ${name} showed, and that one its own: are they swapped?`,
  };
}

/** A number that was stuck may leap to where its pan has gone meanwhile. */
function leapDoubt({ signs: { leap } }: PanModel, { signs }: ProbeTrack, t: number): ProbeDoubt | null {
  if (leap === null || t - leap.at >= LEAP_LASTS_MS || leap.at - signs.freedAt < LEAP_LASTS_MS) return null;
  const climbed = `climbed from ${leap.fromC.toFixed(0)} °C faster than a pan can`;
  const why = leap.putIn ? `${climbed}: was the tip put into hot liquid? Its first minute is not believed` : climbed;
  return { state: 'suspect', why };
}

function liftedDoubt({ signs: { lifted } }: PanModel): ProbeDoubt | null {
  if (lifted === null || !lifted.stands) return null;
  return {
    state: 'suspect',
    why: `fell from ${lifted.fromC.toFixed(0)} °C faster than a pan can: the tip hangs in the air`,
  };
}

/** Alike: within this, °C, and this share of what they lay apart; they must lie so far apart, °C. */
const ALIKE_C = 0.3;
const ALIKE_SHARE = 0.1;
const MOST_ALIKE_C = 1.5;
const APART_C = 3;
/** The look goes two minutes back: the same exchange is seen for so long, ms. */
const SAME_SWAP_MS = 150_000;

function noteSwaps(state: BoilState, t: number): void {
  const seen: Seen[] = [];
  for (const pan of state.names.pans) {
    const one = hangingIn(state, pan, t);
    if (one !== null) seen.push(one);
  }
  for (let i = 0; i < seen.length; i++) {
    for (let j = i + 1; j < seen.length; j++) {
      const one = seen[i]!;
      const other = seen[j]!;
      const apart = Math.abs(one.before - other.before);
      const alike = Math.min(MOST_ALIKE_C, ALIKE_C + ALIKE_SHARE * apart);
      if (apart < APART_C || Math.abs(one.now - other.before) > alike || Math.abs(other.now - one.before) > alike)
        continue;
      exchange(one, other, t);
    }
  }
}

/** What the one probe of a pan shows and showed two minutes ago; null where that cannot be told, or it moves just now. */
function hangingIn(state: BoilState, pan: string, t: number): Seen | null {
  const [probe, second] = state.panProbes[pan]!;
  if (probe === undefined || second !== undefined) return null;
  const track = state.probes[probe]!;
  if (track.swap !== null && (state.probePan[track.swap.other] ?? null) !== track.swap.pan) track.swap = null;
  const { course, track: temperatures, signs } = state.pans[pan]!;
  const { blockValues } = temperatures;
  const last = blockValues.at(-1);
  const beforeLast = blockValues.at(-2);
  if (last === undefined || beforeLast === undefined || Math.abs(beforeLast - last) > ALIKE_C + ALIKE_C) return null;
  const { leap } = signs;
  // What looked like a tip that was put in may be the other half of an exchange.
  const heardFrom = leap !== null && t - leap.at < SAME_SWAP_MS ? leap.heardFrom : course.heardFrom;
  const shape = lastMinutes(temperatures, Math.max(heardFrom, course.pouredAt));
  return shape === null ? null : { probe, pan, track, before: shape.parts[0], now: (beforeLast + last) / 2 };
}

interface Hanging {
  probe: string;
  pan: string;
  track: ProbeTrack;
}

/** °C before and now. */
interface Seen extends Hanging {
  before: number;
  now: number;
}

function exchange(one: Hanging, other: Hanging, t: number): void {
  if (t - Math.max(one.track.swappedAt, other.track.swappedAt) < SAME_SWAP_MS) return;
  const back = one.track.swap?.other === other.probe;
  one.track.swap = back ? null : { other: other.probe, pan: other.pan };
  other.track.swap = back ? null : { other: one.probe, pan: one.pan };
  one.track.swappedAt = other.track.swappedAt = t;
}
