// A boil as CSV: one row for each syrup pan and 10 s, what `replay --every 10` reads then.
import type { BoilSource } from './boil-source.ts';
import { csvText } from './csv.ts';
import type { Cell } from './csv.ts';
import { foldInSlices } from './fold-in-slices.ts';
import type { SliceOptions } from './in-slices.ts';
import { READING_FIELDS, readingFields } from './reading-fields.ts';

export const EXPORT_EVERY_MS = 10_000;

/** `t_s` counts seconds from the start; the other names carry their units. */
export async function* readingsCsv(source: BoilSource, options: SliceOptions): AsyncGenerator<string> {
  let rows: Cell[][] = [['t_s', 'pan', ...READING_FIELDS]];
  const listener = {
    readings: (t: number, readings: Parameters<typeof readingFields>[0][]) => {
      for (const reading of readings) {
        const fields = readingFields(reading);
        rows.push([t / 1000, reading.pan, ...READING_FIELDS.map((name) => fields[name])]);
      }
    },
  };
  for await (const _ of foldInSlices(source, EXPORT_EVERY_MS, listener, options)) {
    if (rows.length > 0) yield csvText(rows);
    rows = [];
  }
}
