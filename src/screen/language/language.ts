// Which language the screen speaks: the one that was chosen, else the first of the browser's own that there is a catalogue for.
/// <reference types="vite/types/importMeta.d.ts" />
import { signal } from '@preact/signals';
import english from './en.json' with { type: 'json' };

/** Every message of the program by its name; English is the catalogue that names them. */
export type MessageKey = keyof typeof english;
type Catalogue = Readonly<Record<string, string>>;

/** A catalogue is one file beside this one, named by its BCP 47 tag: another language is another file. */
const FILES = import.meta.glob<Catalogue>('./*.json', { eager: true, import: 'default' });

const CATALOGUES: ReadonlyMap<string, Catalogue> = new Map(
  Object.entries(FILES).map(([path, catalogue]) => [path.slice('./'.length, -'.json'.length), catalogue]),
);

/** The languages that there are, each by its tag and in its own words: ["fr", "Français"]. */
export const LANGUAGES: readonly (readonly [tag: string, name: string])[] = [...CATALOGUES]
  .map(([tag, catalogue]) => [tag, catalogue['language.name'] ?? tag] as const)
  .sort(([, a], [, b]) => a.localeCompare(b));

const ENGLISH = 'en';

/** The tag of the language that is spoken now; reading it in a component draws that again when it changes. */
export const language = signal(ENGLISH);

/** The tag of the catalogue for a wish ("system" or a tag) and what the browser prefers; English where there is none. */
export function languageFor(wish: string, preferred: readonly string[]): string {
  const wanted = wish === 'system' ? preferred : [wish];
  for (const tag of wanted) {
    const [whole, root = ''] = [tag, tag.split('-')[0]];
    if (CATALOGUES.has(whole)) return whole;
    if (CATALOGUES.has(root)) return root;
  }
  return ENGLISH;
}

/** The message's pattern in the language, or in English where its catalogue lacks it. */
export function patternOf(key: MessageKey, tag: string): string {
  return CATALOGUES.get(tag)?.[key] ?? english[key];
}
