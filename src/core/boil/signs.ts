// What the alarms of signs are told of one pan: its own temperature, its probes, its flame and its cylinder.
import type { SignsSeen } from '../alarms/sign-rules.ts';
import type { BoilState } from './state.ts';

export function signsOf(state: BoilState, id: string): SignsSeen {
  return { pan: state.pans[id]!.signs, flameNotedAt: flameNotedAt(state, id), doubt: null, fuel: null };
}

/** When somebody last noted a flame of this pan, ms; −Infinity for never. */
function flameNotedAt({ marks }: BoilState, id: string): number {
  let latest = -Infinity;
  for (const { mark, at, withdrawn } of marks) {
    if (mark.kind === 'flame' && mark.pan === id && !withdrawn) latest = Math.max(latest, at);
  }
  return latest;
}
