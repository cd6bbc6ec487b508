// What the marks say that every look at the pans asks for, gathered once whenever a mark comes or goes: a long boil has thousands.
import { sapTold } from './sap-strength.ts';
import type { KeptMark } from './state.ts';
import { byName } from './by-name.ts';

/** Plain data of the boil's state; places are those in its list of marks. */
export interface StandingMarks {
  /** Places of the reminders. */
  reminders: number[];
  /** Places of the pours whose amount has not been held against their dip. */
  unweighed: number[];
  /** Places of all that was noted of cylinders and flames, where a cylinder was noted at all. */
  fuel: number[];
  /** When somebody last noted a flame of a pan, ms; only pans of which somebody did. */
  flameAt: Record<string, number>;
  /** Strength of the sap that was typed last, °Bx; null while nobody typed one. */
  sapBrix: number | null;
  /** The same of each pan, where it was sap and no water, concentrate or syrup, and is not asked about; only pans of which somebody typed one. */
  sapOf: Record<string, number>;
}

/** Call after every mark that came or was taken back. */
export function standingMarks(marks: readonly KeptMark[]): StandingMarks {
  const standing: StandingMarks = {
    reminders: [],
    unweighed: [],
    fuel: [],
    flameAt: byName(),
    sapBrix: null,
    sapOf: byName(),
  };
  const hasCylinder = marks.some(({ mark }) => mark.kind === 'fuel');
  marks.forEach(({ mark, at, withdrawn, weighed, questioned }, place) => {
    if (mark.kind === 'remind') standing.reminders.push(place);
    if (withdrawn) return;
    if (hasCylinder && (mark.kind === 'fuel' || mark.kind === 'flame')) standing.fuel.push(place);
    if (mark.kind === 'flame') standing.flameAt[mark.pan] = Math.max(standing.flameAt[mark.pan] ?? at, at);
    if (mark.kind !== 'top-up') return;
    const told = sapTold(mark);
    if (told !== null) {
      standing.sapBrix = told;
      if (told > 0 && !questioned) standing.sapOf[mark.pan] = told;
    }
    if (!weighed && !questioned) standing.unweighed.push(place);
  });
  return standing;
}
