// Which language the screen speaks: the one that was chosen, else the first of the browser's own that there is a catalogue for.
/// <reference types="vite/types/importMeta.d.ts" />
import { signal } from '@preact/signals';
import { Languages } from '../../language/languages.ts';
import type { Catalogue, Tongue } from '../../language/tongue.ts';

const FILES = import.meta.glob<Catalogue>('../../language/*.json', { eager: true, import: 'default' });

export const LANGUAGES = new Languages(Object.entries(FILES));

/** The tag of the language that is spoken now; reading it in a component draws that again when it changes. */
export const language = signal('en');

/** Whether the month stands before its day where the page is read, as in "Apr 18". */
export const monthFirst = signal(false);

/** The language that is spoken now. */
export const spoken = (): Tongue => LANGUAGES.tongue(language.value);
