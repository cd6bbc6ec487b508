// What each pan's course needs to know from the boil around it.
import type { Setting } from '../pan/course-time.ts';
import type { Boiling } from '../pan/timeline.ts';
import type { Header } from './entries.ts';
import { sapBrix } from './sap-strength.ts';
import type { BoilState } from './state.ts';

/** What the model of a pan is told from outside at this moment. The pan must be one of the boil's. */
export function settingOf(state: BoilState, id: string): Setting {
  const pan = state.pans[id]!;
  return {
    design: state.designs[id]!,
    around: state.around[id]!,
    noted: pan.noted,
    refused: pan.refused,
    sapBrix: sapBrix(state, id).brix,
  };
}

/** How likely a finish must be reached before it is called, unless the header says otherwise: as likely as not. */
const AS_LIKELY_AS_NOT = 0.5;

/**
 * How likely a pan must have reached its finish before it is called, 0 to 1: its own setting, else the boil's, else
 * 0.5.
 */
export function finishProbability({ settings, pans }: Header, pan: string): number {
  const own = pans?.find(({ id }) => id === pan)?.settings;
  return own?.finish_probability ?? settings?.finish_probability ?? AS_LIKELY_AS_NOT;
}

/** All pans of the boil, as they can be run again together. */
export const boilingOf = (state: BoilState): Boiling => ({
  pans: state.pans,
  settingOf: (pan) => settingOf(state, pan),
});
