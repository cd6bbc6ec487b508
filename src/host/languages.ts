// The languages that the program has catalogues for, read once from the files of their room.
import { readdirSync, readFileSync } from 'node:fs';
import { Languages } from '../language/languages.ts';
import type { Catalogue } from '../language/tongue.ts';

const FOLDER = new URL('../language/', import.meta.url);
let kept: Languages | null = null;

/** The languages, read at the first asking. Throws where a catalogue is no JSON. */
export function languages(): Languages {
  kept ??= new Languages(
    readdirSync(FOLDER)
      .filter((name) => name.endsWith('.json'))
      .map((name) => [name, JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8')) as Catalogue] as const),
  );
  return kept;
}
