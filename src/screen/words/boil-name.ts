// What a kept boil is called, as a title of its own.
import { say } from '../language/say.ts';

/** A boil’s name, or that it has none. */
export const boilName = (name: string): string => (name === '' ? say('notebook.nameless') : name);
