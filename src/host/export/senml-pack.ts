// A boil as a SenML pack (RFC 8428): what is read of each pan every 10 s, in the units of its registry.
import type { Header } from '../../core/boil/entries.ts';
import type { PanReading } from '../../core/pan/reading.ts';
import type { BoilSource } from './boil-source.ts';
import { foldInSlices } from './fold-in-slices.ts';
import type { SliceOptions } from './in-slices.ts';
import { EXPORT_EVERY_MS } from './readings-csv.ts';
import { readingFields } from './reading-fields.ts';
import { baseNameOf, plainName } from './senml-names.ts';

type Fields = ReturnType<typeof readingFields>;
type SenmlRecord = Record<string, string | number | boolean>;

/**
 * RFC 8428, 12.1, has no degree Brix and no °C per minute: strength is sugar's share of the mass ("/"), and the rate is
 * left out. A rise is a difference, so kelvin. Litres are m3, for "l" is for old systems only.
 */
const QUANTITIES: readonly (readonly [name: string, unit: string, value: (fields: Fields) => number | null])[] = [
  ['temperature', 'Cel', (fields) => fields.temperature_c],
  ['water-point', 'Cel', (fields) => fields.water_c],
  ['rise', 'K', (fields) => fields.rise_c],
  ['sugar-share', '/', (fields) => scaled(fields.brix, 1e-2)],
  ['sugar-share-low', '/', (fields) => scaled(fields.brix_low, 1e-2)],
  ['sugar-share-high', '/', (fields) => scaled(fields.brix_high, 1e-2)],
  ['volume-at-20-Cel', 'm3', (fields) => scaled(fields.litres, 1e-3)],
  ['depth', 'm', (fields) => scaled(fields.depth_mm, 1e-3)],
  ['evaporation', 'm3/s', (fields) => scaled(fields.evaporation_l_per_h, 1 / 3.6e6)],
  ['finish-in', 's', (fields) => fields.finish_in_s],
  ['scorch-in', 's', (fields) => fields.scorch_in_s],
  ['top-up-in', 's', (fields) => fields.top_up_in_s],
];

/** The array, one record a line. What is not known has no record. */
export async function* senmlPack(source: BoilSource, options: SliceOptions): AsyncGenerator<string> {
  const writer = new PackWriter();
  for (const record of aboutTheBoil(source)) writer.add(record);
  const said = new Map<string, string>();
  const listener = {
    readings: (t: number, readings: PanReading[]) => {
      for (const reading of readings) for (const record of recordsOf(reading, t / 1000, said)) writer.add(record);
    },
  };
  for await (const _ of foldInSlices(source, EXPORT_EVERY_MS, listener, options)) yield writer.take();
  yield '\n]\n';
}

/** The first record carries the base that all others stand on; these have the time of the start. */
function aboutTheBoil({ boil, header, practice }: BoilSource): SenmlRecord[] {
  const base = { bn: baseNameOf(boil, header), bt: Date.parse(header.started) / 1000 };
  const altitude = header.site?.altitude_m;
  const others: SenmlRecord[] = [
    ...textRecord('name', header.name),
    ...textRecord('site', header.site?.name),
    ...(altitude === undefined ? [] : [{ n: 'altitude', u: 'm', v: altitude }]),
    ...panNames(header),
  ];
  return [{ ...base, n: 'practice', vb: practice }, ...others];
}

function panNames(header: Header): SenmlRecord[] {
  return (header.pans ?? []).flatMap(({ id, name }) => textRecord(`${plainName(id)}/name`, name));
}

function textRecord(n: string, text: string | undefined): SenmlRecord[] {
  return text === undefined || text === '' ? [] : [{ n, vs: text }];
}

/** Stage and probe are said when they change. */
function* recordsOf(reading: PanReading, seconds: number, said: Map<string, string>): Generator<SenmlRecord> {
  const fields = readingFields(reading);
  const pan = plainName(reading.pan);
  for (const [name, u, valueOf] of QUANTITIES) {
    const v = valueOf(fields);
    if (v !== null) yield { n: `${pan}/${name}`, u, t: seconds, v };
  }
  for (const name of ['stage', 'probe'] as const) {
    const vs = fields[name];
    const n = `${pan}/${name}`;
    if (vs === null || said.get(n) === vs) continue;
    said.set(n, vs);
    yield { n, t: seconds, vs };
  }
}

/** Without the noise that a factor adds behind the digits that count. */
function scaled(value: number | null, factor: number): number | null {
  return value === null ? null : Number((value * factor).toPrecision(6));
}

class PackWriter {
  #text = '';
  #isFirst = true;

  add(record: SenmlRecord): void {
    this.#text += `${this.#isFirst ? '[' : ','}\n${JSON.stringify(record)}`;
    this.#isFirst = false;
  }

  take(): string {
    const text = this.#text;
    this.#text = '';
    return text;
  }
}
