// Makes a recording of a SenML pack: each sensor that tells degrees Celsius becomes a probe in a pan of its own.
import { jsonItems, JsonItemsProblem } from './json-items.ts';
import { SenmlProblem, SenmlResolver } from './senml-records.ts';
import { SenmlSamples } from './senml-samples.ts';

type Pieces = AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>;

const PORT = 'senml';
const PIECE_CHARACTERS = 65_536;
/** A line holds at most 4096 bytes, and a pair here at most 20. */
const MOST_PAIRS_A_LINE = 100;

/** The recording in pieces; `tell` hears what the pack could not give. Throws SenmlProblem. */
export async function* senmlRecording(pieces: Pieces, tell: (sentence: string) => void): AsyncGenerator<string> {
  const samples = await readSamples(pieces);
  if (samples.times.length === 0) {
    throw new SenmlProblem('none of its records is a temperature in degrees Celsius ("u":"Cel")');
  }
  for (const sentence of sentencesOn(samples)) tell(sentence);
  yield* inPieces(linesOf(samples));
}

async function readSamples(pieces: Pieces): Promise<SenmlSamples> {
  const resolver = new SenmlResolver();
  const samples = new SenmlSamples();
  try {
    for await (const items of jsonItems(pieces)) {
      for (const item of items) {
        const record = resolver.take(item);
        if (record !== null) samples.take(record);
      }
    }
  } catch (error) {
    throw error instanceof JsonItemsProblem ? new SenmlProblem(error.message) : error;
  }
  return samples.finished();
}

function sentencesOn({ leftOut }: SenmlSamples): string[] {
  const others = [...leftOut].map(([unit, count]) => `${count} in ${unit}`).join(', ');
  return [
    ...(others === '' ? [] : [`records that are no measured temperature of a pan were left out: ${others}`]),
    'a pack does not say which sap, vessel and finish a pan had: the usual ones are taken',
  ];
}

function* linesOf(samples: SenmlSamples): Generator<string> {
  const order = samples.times.map((_, index) => index);
  order.sort((a, b) => samples.times[a]! - samples.times[b]! || a - b);
  const startMs = Math.round(samples.times[order[0]!]! * 1000);
  yield JSON.stringify(headerOf(samples, startMs));
  let t = 0;
  let pairs = new Map<number, number>();
  for (const index of order) {
    const at = Math.round(samples.times[index]! * 1000) - startMs;
    const owner = samples.owners[index]!;
    if (at !== t || pairs.has(owner) || pairs.size >= MOST_PAIRS_A_LINE) {
      if (pairs.size > 0) yield entryOf(t, pairs);
      pairs = new Map();
      t = at;
    }
    pairs.set(owner, samples.values[index]!);
  }
  if (pairs.size > 0) yield entryOf(t, pairs);
}

function headerOf({ channels, name, site, altitude, practice }: SenmlSamples, startMs: number): object {
  const where = {
    ...(site === null ? {} : { name: site }),
    ...(altitude === null ? {} : { altitude_m: altitude }),
  };
  return {
    recording: 'panwarden',
    version: 1,
    name: name ?? 'From SenML',
    started: new Date(startMs).toISOString(),
    ...(practice ? { practice: true } : {}),
    ...(Object.keys(where).length === 0 ? {} : { site: where }),
    ports: [{ id: PORT }],
    probes: channels.map((_, index) => ({ id: probeOf(index), port: PORT, channel: channelOf(index) })),
    pans: channels.map(({ pan, title }, index) => ({ id: pan, name: title ?? pan, probe: probeOf(index) })),
  };
}

const channelOf = (index: number): string => `T${index + 1}`;
const probeOf = (index: number): string => `${PORT}/${channelOf(index)}`;

/** A line as a board would have sent it. */
function entryOf(t: number, pairs: ReadonlyMap<number, number>): string {
  const line = [...pairs].map(([owner, celsius]) => `${channelOf(owner)}=${plainNumber(celsius)}C`).join(' ');
  return JSON.stringify({ t, port: PORT, line });
}

/** Without an exponent, which lines do not know; a ten-thousandth of a degree is more than any probe tells. */
function plainNumber(value: number): string {
  return (Math.round(value * 10_000) / 10_000 + 0).toFixed(4).replace(/\.?0+$/u, '');
}

function* inPieces(lines: Iterable<string>): Generator<string> {
  let piece = '';
  for (const line of lines) {
    piece += `${line}\n`;
    if (piece.length < PIECE_CHARACTERS) continue;
    yield piece;
    piece = '';
  }
  yield piece;
}
