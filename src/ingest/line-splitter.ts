// Cuts the bytes of a port into lines, in bounded memory and without ever gluing or inventing one.
import { longestLineBytes } from './read-line.ts';

const lineFeed = 0x0a;
const carriageReturn = 0x0d;

/**
 * One splitter serves one opening of a port; a new opening takes a new one.
 * Ours, because the parser that comes with the serial library has no length limit (16 MB without a line end held
 * the process up for 50 s), glues what was cut off before a reconnect to the first bytes after it (`T1=10` and
 * `4.9` became 104.9), and hands out a cut remainder at the end as if it were a line.
 */
export class LineSplitter {
  #bytes = Buffer.alloc(longestLineBytes);
  #length = 0;
  /** What comes before the first line end may have lost its beginning, so it is no line. */
  #dropping = true;
  #overlong = 0;
  #counted = false;

  /** How many runs of more than 4096 bytes without a line end were dropped. */
  get overlong(): number {
    return this.#overlong;
  }

  /** The lines that these bytes complete, in Latin-1, without their ends (CR, LF or both); empty ones are left out. */
  push(bytes: Uint8Array): string[] {
    const lines: string[] = [];
    let from = 0;
    for (let at = 0; at < bytes.length; at++) {
      if (bytes[at] !== lineFeed && bytes[at] !== carriageReturn) continue;
      this.#keep(bytes.subarray(from, at));
      if (!this.#dropping && this.#length > 0) lines.push(this.#bytes.toString('latin1', 0, this.#length));
      this.#startLine();
      from = at + 1;
    }
    this.#keep(bytes.subarray(from));
    return lines;
  }

  #keep(part: Uint8Array): void {
    if (this.#length + part.length > longestLineBytes) {
      if (!this.#counted) this.#overlong += 1;
      this.#counted = true;
      this.#dropping = true;
    } else if (!this.#counted) {
      // Counted even while the first partial line is dropped: a port that never ends a line is told from a silent one.
      this.#bytes.set(part, this.#length);
      this.#length += part.length;
    }
  }

  #startLine(): void {
    this.#length = 0;
    this.#dropping = false;
    this.#counted = false;
  }
}
