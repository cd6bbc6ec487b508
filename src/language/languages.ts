// All languages that the program speaks, one catalogue each: which of them a wish means, and each as a tongue.
import { Tongue } from './tongue.ts';
import type { Catalogue } from './tongue.ts';

const ENGLISH = 'en';

export class Languages {
  /** The languages that there are, each by its tag and in its own words: ["fr", "Français"]. */
  readonly named: readonly (readonly [tag: string, name: string])[];
  readonly #tongues: ReadonlyMap<string, Tongue>;

  /** A catalogue is one file of this room, `tag.json` by its BCP 47 tag: another language is another file. */
  constructor(files: Iterable<readonly [path: string, catalogue: Catalogue]>) {
    const tongues = [...files].map(([path, catalogue]) => {
      const tag = path.slice(path.lastIndexOf('/') + 1, -'.json'.length);
      return [tag, new Tongue(tag, catalogue)] as const;
    });
    this.#tongues = new Map(tongues);
    this.named = tongues
      .map(([tag, tongue]) => [tag, tongue.say('language.name')] as const)
      .sort(([, a], [, b]) => a.localeCompare(b));
  }

  /** The tag of the catalogue for a wish ("system" or a tag) and what the system prefers; English where there is none. */
  tagFor(wish: string, preferred: readonly string[]): string {
    const wanted = wish === 'system' ? preferred : [wish];
    for (const tag of wanted) {
      const [whole, root = ''] = [tag, tag.split('-')[0]];
      if (this.#tongues.has(whole)) return whole;
      if (this.#tongues.has(root)) return root;
    }
    return ENGLISH;
  }

  /** The language for a wish and what the system prefers, as `tagFor` finds it. */
  tongueFor(wish: string, preferred: readonly string[]): Tongue {
    return this.tongue(this.tagFor(wish, preferred));
  }

  /** The language of a tag that `tagFor` gave. Throws where there is no such catalogue. */
  tongue(tag: string): Tongue {
    const tongue = this.#tongues.get(tag);
    if (tongue === undefined) throw new RangeError(`no catalogue for ${tag}`);
    return tongue;
  }
}
