// Reads lines whose values stand in columns of a fixed order.
import type { PortFormat } from '../../core/boil/entries.ts';
import type { LineResult } from '../../core/boil/line-reading.ts';
import { nothingFrom, Outcome } from './outcome.ts';
import { readValue } from './value.ts';

/**
 * Readings of a line in columns; a column whose channel is '' is skipped.
 * A line with more or fewer columns than channels gives nothing: a cut line or a decimal comma among separating
 * commas would put one probe's value under another's name. Empty columns at the end are not counted.
 */
export function readColumns(line: string, format: PortFormat & { kind: 'columns' }): LineResult {
  const { separator, decimal = '.', channels } = format;
  if (separator === '') return nothingFrom('the format of this port has no separator');
  const columns = columnsOf(line, separator);
  while (columns.length > channels.length && columns.at(-1) === '') columns.pop();
  if (columns.length !== channels.length) {
    return nothingFrom(`${columns.length} columns where ${channels.length} are expected`);
  }
  const outcome = new Outcome();
  channels.forEach((channel, index) => {
    const text = columns[index]!;
    if (channel !== '') outcome.add(channel, readValue(text, 0, text.length, decimal.charCodeAt(0)), text || channel);
  });
  return outcome.result();
}

/** Blanks line columns up, so any run of them is one separator. */
export function columnsOf(line: string, separator: string): string[] {
  if (separator.trim() === '' && !separator.includes('\t')) return line.trim().split(/ +/);
  return line.split(separator).map((column) => column.replace(/^ +| +$/g, ''));
}
