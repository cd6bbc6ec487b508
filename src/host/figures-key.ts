// Names under which the notebook keeps what was worked out of a boil: another version of this program works it out anew.
import { readFileSync } from 'node:fs';

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
  version: string;
};

/** `round` is to be raised whenever the model, or what is kept, changes between two versions of the program. */
export const figuresKey = (name: string, round: number): string => `${name} ${version} ${round}`;
