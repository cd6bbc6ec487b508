// The marks of a boil as CSV, one row each, with a column for every field that a mark may have.
import type { Mark } from '../../core/boil/entries.ts';
import { parseEntry } from '../../protocol/recording.ts';
import type { BoilSource } from './boil-source.ts';
import { csvText } from './csv.ts';
import type { Cell } from './csv.ts';
import { inSlices } from './in-slices.ts';
import type { SliceOptions } from './in-slices.ts';

/** As recording.md names them, with the unit where its name there says none; a withdraw's `id` names the other mark. */
const COLUMNS: readonly (readonly [title: string, field: string])[] = [
  ['kind', 'kind'],
  ['id', 'id'],
  ['pan', 'pan'],
  ['from', 'from'],
  ['to', 'to'],
  ['probe', 'probe'],
  ['litres', 'litres'],
  ['all', 'all'],
  ['brix', 'brix'],
  ['baume', 'baume'],
  ['sg', 'sg'],
  ['celsius', 'celsius'],
  ['instrument', 'instrument'],
  ['reference_celsius', 'reference_celsius'],
  ['compensated', 'compensated'],
  ['depth_mm', 'mm'],
  ['flame_level', 'level'],
  ['pressure_hpa', 'hpa'],
  ['pressure_at', 'at'],
  ['outdoor_celsius', 'outdoor_celsius'],
  ['fuel_kg', 'kg'],
  ['seconds', 'seconds'],
  ['text', 'text'],
];

/** `t_s` is when it was noted and `happened_s` when it happened, in seconds from the start; `taken_back` by a later mark. */
export async function* marksCsv(source: BoilSource, options: SliceOptions): AsyncGenerator<string> {
  const takenBack = new Set<string>();
  for await (const marks of inSlices(marksOf(source), options)) {
    for (const { mark } of marks) if (mark.kind === 'withdraw') takenBack.add(mark.id);
  }
  yield csvText([['t_s', 'happened_s', ...COLUMNS.map(([title]) => title), 'taken_back']]);
  for await (const marks of inSlices(marksOf(source), options)) {
    if (marks.length > 0) yield csvText(marks.map((noted) => rowOf(noted, takenBack)));
  }
}

interface Noted {
  t: number;
  mark: Mark;
}

/** Undefined for every entry that is no mark. */
function* marksOf(source: BoilSource): Generator<Noted | undefined> {
  for (const text of source.texts()) {
    const parsed = text.includes('"mark"') ? parseEntry(text) : null;
    yield parsed?.ok === true && 'mark' in parsed.entry ? parsed.entry : undefined;
  }
}

function rowOf({ t, mark }: Noted, takenBack: ReadonlySet<string>): Cell[] {
  const fields = mark as unknown as Record<string, Cell>;
  const isTakenBack = mark.kind !== 'withdraw' && mark.id !== undefined && takenBack.has(mark.id);
  return [t / 1000, (mark.happened ?? t) / 1000, ...COLUMNS.map(([, field]) => fields[field]), isTakenBack];
}
