// Reads one text line of a port in the format that the port was set up with.
import type { PortFormat } from '../core/boil/entries.ts';
import type { LineResult } from '../core/boil/line-reading.ts';
import { readColumns } from './formats/columns.ts';
import { readJson } from './formats/json.ts';
import { nothingFrom } from './formats/outcome.ts';
import { readPairs } from './formats/pairs.ts';
import { readPattern } from './formats/pattern.ts';

/** A line's limit in bytes, from the recording's contract; on the wire a character is a byte. */
export const longestLineBytes = 4096;

/**
 * What a line says, in its own units, and why the rest of it gave nothing. Never throws.
 * @param line without its line end
 * @param format the port's; pairs of name and value when it has none
 */
export function readLine(line: string, format?: PortFormat): LineResult {
  if (line.length > longestLineBytes) return nothingFrom(`longer than ${longestLineBytes} bytes`);
  switch (format?.kind) {
    case undefined:
    case 'pairs':
      return readPairs(line);
    case 'columns':
      return readColumns(line, format);
    case 'json':
      return readJson(line, format);
    case 'pattern':
      return readPattern(line, format);
  }
}
