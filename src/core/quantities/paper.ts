// The paper that somebody has at home, by the units in which they think.
import type { VolumeUnit } from './units.ts';

export type Paper = 'a4' | 'letter';

/** Letter where gallons are American, else A4 (ISO 216). Common practice; other papers can be asked for. */
export const usualPaper = ({ volume }: { volume: VolumeUnit }): Paper => (volume === 'us-gallon' ? 'letter' : 'a4');
