// Cuts the JSON array of a long file into its objects as the pieces come, with bounded memory whatever the file holds.

/** Longer and deeper objects are refused: no measurement needs so much. */
const LONGEST_ITEM = 65_536;
const DEEPEST = 16;

/** What is no array of objects; the sentence has no full stop. */
export class JsonItemsProblem extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'JsonItemsProblem';
  }
}

/** The objects in their order, a list for each piece. Throws JsonItemsProblem. */
export async function* jsonItems(
  pieces: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>,
): AsyncGenerator<unknown[]> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const scan = new ItemScan();
  try {
    for await (const piece of pieces) {
      yield scan.take(typeof piece === 'string' ? piece : decoder.decode(piece, { stream: true }));
    }
    yield scan.take(decoder.decode());
  } catch (error) {
    throw error instanceof TypeError ? new JsonItemsProblem('it is no UTF-8 text') : error;
  }
  scan.finish();
}

type Awaited = 'array' | 'first' | 'object' | 'comma' | 'nothing';

class ItemScan {
  #awaited: Awaited = 'array';
  /** The object that is being read, up to the end of the piece before. */
  #held = '';
  #depth = 0;
  #inText = false;
  #escaped = false;
  #count = 0;

  take(piece: string): unknown[] {
    const items: unknown[] = [];
    let from = 0;
    for (let at = 0; at < piece.length; at += 1) {
      const character = piece[at]!;
      if (this.#depth === 0) {
        this.#between(character);
        from = at;
      } else if (this.#isEnd(character)) {
        items.push(this.#item(this.#held + piece.slice(from, at + 1)));
        this.#held = '';
      }
    }
    if (this.#depth > 0) this.#hold(piece.slice(from));
    return items;
  }

  finish(): void {
    if (this.#awaited !== 'nothing') throw new JsonItemsProblem(`it breaks off behind its object ${this.#count}`);
  }

  /** One character that stands in no object. */
  #between(character: string): void {
    if (' \t\r\n'.includes(character)) return;
    const awaited = this.#awaited;
    if (awaited === 'array' && character === '[') this.#awaited = 'first';
    else if (character === '{' && (awaited === 'first' || awaited === 'object')) this.#depth = 1;
    else if (character === ',' && awaited === 'comma') this.#awaited = 'object';
    else if (character === ']' && (awaited === 'first' || awaited === 'comma')) this.#awaited = 'nothing';
    else
      throw new JsonItemsProblem(`it is no JSON array of objects: behind object ${this.#count} stands "${character}"`);
  }

  /** One character of an object; true when it is the last. */
  #isEnd(character: string): boolean {
    if (this.#escaped) this.#escaped = false;
    else if (this.#inText && character === '\\') this.#escaped = true;
    else if (character === '"') this.#inText = !this.#inText;
    else if (!this.#inText && (character === '{' || character === '[')) this.#depth += 1;
    else if (!this.#inText && (character === '}' || character === ']')) this.#depth -= 1;
    if (this.#depth > DEEPEST) throw this.#problem(`is nested deeper than ${DEEPEST} levels`);
    return this.#depth === 0;
  }

  #hold(rest: string): void {
    this.#held += rest;
    if (this.#held.length > LONGEST_ITEM) throw this.#problem(`is longer than ${LONGEST_ITEM} characters`);
  }

  #item(text: string): unknown {
    if (text.length > LONGEST_ITEM) throw this.#problem(`is longer than ${LONGEST_ITEM} characters`);
    this.#awaited = 'comma';
    this.#count += 1;
    try {
      return JSON.parse(text);
    } catch {
      throw new JsonItemsProblem(`object ${this.#count} is no JSON`);
    }
  }

  #problem(what: string): JsonItemsProblem {
    return new JsonItemsProblem(`object ${this.#count + 1} ${what}`);
  }
}
