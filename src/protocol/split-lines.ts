// Cuts a stream of bytes into lines of text, with bounded memory whatever the stream holds.

const NEWLINE = 10;

/** A line that ended in `\n`; `text` is null when it was too long or no UTF-8, and `why` says which. */
export type SplitLine =
  | { number: number; text: string }
  | { number: number; text: null; why: string }
  /** What stood after the last `\n`; never read. */
  | { number: number; tornBytes: number };

/**
 * The lines of the stream, a batch for each chunk. A line end is `\n` or `\r\n` and is not part of the
 * text; a byte order mark before line 1 is dropped. Text chunks must not part a surrogate pair.
 * No more than `longestLineBytes` beside one chunk is held at a time.
 */
export async function* splitLines(
  chunks: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>,
  longestLineBytes: number,
): AsyncGenerator<SplitLine[]> {
  const encoder = new TextEncoder();
  const splitter = new LineSplitter(longestLineBytes);
  for await (const chunk of chunks) {
    const lines = splitter.take(typeof chunk === 'string' ? encoder.encode(chunk) : chunk);
    if (lines.length > 0) yield lines;
  }
  const torn = splitter.finish();
  if (torn !== null) yield [torn];
}

class LineSplitter {
  readonly #longest: number;
  readonly #decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  #number = 0;
  /** The start of a line whose end has not come yet; emptied, but counted, once it is too long. */
  #held: Uint8Array[] = [];
  #heldBytes = 0;

  constructor(longestLineBytes: number) {
    this.#longest = longestLineBytes;
  }

  take(chunk: Uint8Array): SplitLine[] {
    const first = chunk.indexOf(NEWLINE);
    if (first === -1) {
      this.#hold(chunk);
      return [];
    }
    const last = chunk.lastIndexOf(NEWLINE);
    this.#hold(chunk.subarray(0, first));
    const lines = [this.#heldLine()];
    if (last > first) this.#wholeLines(chunk.subarray(first + 1, last), lines);
    this.#hold(chunk.subarray(last + 1));
    return lines;
  }

  finish(): SplitLine | null {
    return this.#heldBytes === 0 ? null : { number: this.#number + 1, tornBytes: this.#heldBytes };
  }

  #hold(bytes: Uint8Array): void {
    if (bytes.length === 0) return;
    this.#heldBytes += bytes.length;
    // The chunk's memory may be used again by the stream, so its rest is copied.
    if (this.#heldBytes > this.#longest) this.#held = [];
    else this.#held.push(bytes.slice());
  }

  #heldLine(): SplitLine {
    const tooLong = this.#heldBytes > this.#longest;
    const bytes = tooLong ? new Uint8Array() : joined(this.#held, this.#heldBytes);
    this.#held = [];
    this.#heldBytes = 0;
    return tooLong ? this.#longLine() : this.#line(bytes);
  }

  /** Decoding many lines at once is several times faster than one by one. */
  #wholeLines(bytes: Uint8Array, lines: SplitLine[]): void {
    let text: string;
    try {
      text = this.#decoder.decode(bytes);
    } catch {
      this.#lineByLine(bytes, lines);
      return;
    }
    for (const line of text.split('\n')) lines.push(this.#textLine(line));
  }

  #lineByLine(bytes: Uint8Array, lines: SplitLine[]): void {
    for (let start = 0; start <= bytes.length;) {
      const found = bytes.indexOf(NEWLINE, start);
      const end = found === -1 ? bytes.length : found;
      lines.push(this.#line(bytes.subarray(start, end)));
      start = end + 1;
    }
  }

  #line(bytes: Uint8Array): SplitLine {
    if (bytes.length > this.#longest) return this.#longLine();
    try {
      return this.#textLine(this.#decoder.decode(bytes));
    } catch {
      this.#number += 1;
      return { number: this.#number, text: null, why: 'it is no UTF-8 text' };
    }
  }

  #textLine(line: string): SplitLine {
    if (line.length > this.#longest) return this.#longLine();
    this.#number += 1;
    const ended = line.endsWith('\r') ? line.slice(0, -1) : line;
    const text = this.#number === 1 && ended.startsWith('\uFEFF') ? ended.slice(1) : ended;
    return { number: this.#number, text };
  }

  #longLine(): SplitLine {
    this.#number += 1;
    return { number: this.#number, text: null, why: `it is longer than ${this.#longest} bytes` };
  }
}

function joined(parts: readonly Uint8Array[], bytes: number): Uint8Array {
  const [only] = parts;
  if (parts.length === 1 && only !== undefined) return only;
  const whole = new Uint8Array(bytes);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
