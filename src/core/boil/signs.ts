// What the alarms of signs are told of one pan: its own temperature, its probes, its flame and its cylinder.
import type { SignsSeen } from '../alarms/sign-rules.ts';
import { cylinderLeft } from './cylinder.ts';
import type { BoilState } from './state.ts';

/** `doubt`: why its probe cannot be right. */
export function signsOf(state: BoilState, id: string, doubt: string | null, t: number): SignsSeen {
  return {
    pan: state.pans[id]!.signs,
    flameNotedAt: flameNotedAt(state, id),
    doubt,
    fuel: cylinderLeft(state.marks, id, burnerWatts(state, id), t),
  };
}

/** When somebody last noted a flame of this pan, ms; −Infinity for never. */
function flameNotedAt({ marks }: BoilState, id: string): number {
  let latest = -Infinity;
  for (const { mark, at, withdrawn } of marks) {
    if (mark.kind === 'flame' && mark.pan === id && !withdrawn) latest = Math.max(latest, at);
  }
  return latest;
}

/** Nominal power of a propane burner, W; null for any other heat. */
function burnerWatts({ header }: BoilState, id: string): number | null {
  const heat = header.pans?.find((pan) => pan.id === id)?.heat;
  return heat?.kind === 'propane' ? (heat.power_w ?? null) : null;
}
