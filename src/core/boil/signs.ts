// What the alarms of signs are told of one pan: its own temperature, its probes, its flame and its cylinder.
import type { SignsSeen } from '../alarms/sign-rules.ts';
import { fallInDoubt } from '../pan/pan-signs.ts';
import { type BrokenBy, brokenWords } from './broken-probe.ts';
import { type CylinderLeft, cylinderLeft } from './cylinder.ts';
import type { ProbeDoubt } from './probe-signs.ts';
import type { BoilState } from './state.ts';

/** What is wrong with the probe of a pan that is worst off. */
export interface ProbeTrouble {
  doubt: ProbeDoubt | null;
  brokenBy: BrokenBy | null;
}

/** `trouble` is null for a pan that has no probe. */
export function signsOf(state: BoilState, id: string, trouble: ProbeTrouble | null, t: number): SignsSeen {
  const brokenBy = trouble?.brokenBy ?? null;
  const { signs, course } = state.pans[id]!;
  return {
    pan: { ...signs, fell: fallInDoubt(signs, course) },
    flameNotedAt: state.standing.flameAt[id] ?? -Infinity,
    doubt: trouble?.doubt?.why ?? null,
    broken: brokenBy === null ? null : brokenWords(brokenBy),
    fuel: fuelOf(state, id, t),
  };
}

function fuelOf(state: BoilState, id: string, t: number): CylinderLeft | null {
  const { standing, marks } = state;
  if (standing.fuel.length === 0) return null;
  const noted = standing.fuel.map((place) => marks[place]!);
  return cylinderLeft(noted, id, burnerWatts(state, id), t);
}

/** Nominal power of a propane burner, W; null for any other heat. */
function burnerWatts({ header }: BoilState, id: string): number | null {
  const heat = header.pans?.find((pan) => pan.id === id)?.heat;
  return heat?.kind === 'propane' ? (heat.power_w ?? null) : null;
}
