// Takes a file into the notebook: a recording as it is, a SenML pack as the recording that can be made of it.
import { NotebookProblem } from '../../notebook/contract.ts';
import type { BoilSummary, Notebook } from '../../notebook/contract.ts';
import { SenmlProblem } from './senml-records.ts';
import { senmlRecording } from './senml-recording.ts';

type Pieces = AsyncIterable<Uint8Array | string>;

/** `name` is what sentences call the file. Throws NotebookProblem (2) when it is neither, or is beyond what is taken. */
export async function takeIn(
  notebook: Notebook,
  pieces: Pieces,
  name: string,
): Promise<{ boil: BoilSummary; leftOut: string[] }> {
  const told: string[] = [];
  const recording = asRecording(pieces, (sentence) => told.push(`${name}: ${sentence}`));
  try {
    const { boil, leftOut } = await notebook.importRecording(recording, name);
    return { boil, leftOut: [...told, ...leftOut] };
  } catch (error) {
    throw error instanceof SenmlProblem ? new NotebookProblem(`${name}, a SenML pack: ${error.message}`, 2) : error;
  }
}

/** A recording begins with an object, a pack with an array. */
async function* asRecording(pieces: Pieces, tell: (sentence: string) => void): AsyncGenerator<Uint8Array | string> {
  const iterator = each(pieces);
  const all = { [Symbol.asyncIterator]: () => iterator };
  for (let next = await iterator.next(); next.done !== true; next = await iterator.next()) {
    const start = startOf(next.value);
    if (start === '') continue;
    yield* start === '[' ? senmlRecording(withFirst(next.value, all), tell) : withFirst(next.value, all);
    return;
  }
}

/** Pieces that stand ready are taken as those that come. */
async function* each(pieces: Pieces | Iterable<Uint8Array | string>): AsyncGenerator<Uint8Array | string> {
  yield* pieces;
}

async function* withFirst(first: Uint8Array | string, rest: Pieces): AsyncGenerator<Uint8Array | string> {
  yield first;
  yield* rest;
}

/** The first character that is no blank; "" where the piece holds none. */
function startOf(piece: Uint8Array | string): string {
  const text = typeof piece === 'string' ? piece : new TextDecoder().decode(piece.subarray(0, 64));
  return text.trimStart().slice(0, 1) || (piece.length > 64 ? '{' : '');
}
