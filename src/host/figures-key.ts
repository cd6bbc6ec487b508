// Names under which the notebook keeps what was worked out of a boil: another version of this program works it out anew.
import { VERSION } from '../program/program-files.ts';

/** `round` is to be raised whenever the model, or what is kept, changes between two versions of the program. */
export const figuresKey = (name: string, round: number): string => `${name} ${VERSION} ${round}`;
