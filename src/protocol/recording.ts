// The recording codec: a stream of bytes in, the header and the entries of a boil out, with every line that was left out.
import type { Entry, Header } from '../core/boil/entries.ts';
import { LONGEST_LINE, parseEntry, parseHeader } from './parse-entry.ts';
import { splitLines, type SplitLine } from './split-lines.ts';

export { entryText, parseEntry, parseHeader } from './parse-entry.ts';

/** A file that is no recording: the sentence names the line and the field; a command ends with `code`. */
export class RecordingProblem extends Error {
  readonly code = 2;
  constructor(sentence: string) {
    super(sentence);
    this.name = 'RecordingProblem';
  }
}

/** `raw` is the line exactly as it stood, without its line end; `why` is a whole sentence that names the line. */
export type RecordingItem =
  | { kind: 'header'; header: Header; raw: string }
  | { kind: 'entry'; entry: Entry; raw: string; line: number }
  | { kind: 'left-out'; line: number; why: string }
  /** The last line has no end: it was being written when the program stopped. */
  | { kind: 'torn'; line: number; why: string };

/**
 * The header first, then the rest of the recording in its order, one item at a time, in flat memory.
 * Entries come with a `t` that never decreases; what is no entry, or steps back, is left out and said.
 * Chunks are pieces of the file as they come, line ends included; bytes are best, for text that is no
 * UTF-8 can only be told in bytes. Throws RecordingProblem when there is no header that holds together.
 */
export async function* readRecording(
  chunks: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>,
): AsyncGenerator<RecordingItem> {
  const reader = new EntryReader();
  let headerRead = false;
  for await (const lines of splitLines(chunks, LONGEST_LINE)) {
    for (const line of lines) {
      yield headerRead ? reader.read(line) : readHeaderLine(line);
      headerRead = true;
    }
  }
  if (!headerRead) throw new RecordingProblem('line 1: there is no header, for the file is empty');
}

function readHeaderLine(line: SplitLine): RecordingItem {
  if ('tornBytes' in line) {
    throw new RecordingProblem('line 1: this is no recording, for its first line has no end');
  }
  if (line.text === null) throw new RecordingProblem(`line 1: this is no recording, for ${line.why}`);
  const parsed = parseHeader(line.text);
  if (!parsed.ok) throw new RecordingProblem(`line 1: the header does not hold together: ${parsed.why}`);
  return { kind: 'header', header: parsed.header, raw: line.text };
}

class EntryReader {
  #lastT = 0;
  #lastLine = 1;

  read(line: SplitLine): RecordingItem {
    const { number } = line;
    if ('tornBytes' in line) return torn(number, line.tornBytes);
    if (line.text === null) return leftOut(number, line.why);
    const parsed = parseEntry(line.text);
    if (!parsed.ok) return leftOut(number, parsed.why);
    const { entry } = parsed;
    if (entry.t < this.#lastT) {
      return leftOut(number, `its t of ${entry.t} steps back behind the ${this.#lastT} of line ${this.#lastLine}`);
    }
    this.#lastT = entry.t;
    this.#lastLine = number;
    return { kind: 'entry', entry, raw: line.text, line: number };
  }
}

function leftOut(line: number, why: string): RecordingItem {
  return { kind: 'left-out', line, why: `line ${line} was left out: ${why}` };
}

function torn(line: number, bytes: number): RecordingItem {
  return {
    kind: 'torn',
    line,
    why: `line ${line}, the last, has no line end: its ${bytes} bytes were left out, and everything before it was used`,
  };
}
