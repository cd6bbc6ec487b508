// Reads a recording into memory to be replayed without being imported.
import { openedTitle } from '../../protocol/replay-messages.ts';
import { readRecording, RecordingProblem } from '../../protocol/recording.ts';
import type { Replayable } from './whole-boil.ts';

/** About what a two-day boil of six pans at ten lines a second holds; longer ones are imported first. */
const MOST_CHARACTERS = 400_000_000;

/** `name` is what sentences call the file. Throws an Error with a sentence when it is no recording. */
export async function readOpened(
  pieces: AsyncIterable<Uint8Array | string>,
  name: string,
  boil: string,
): Promise<{ recording: Replayable; leftOut: number }> {
  const texts: string[] = [];
  let recording: Replayable | null = null;
  let leftOut = 0;
  let characters = 0;
  try {
    for await (const item of readRecording(pieces)) {
      if (item.kind === 'header') {
        recording = {
          boil,
          title: openedTitle(item.header.name ?? 'Boil'),
          header: item.header,
          texts,
        };
      } else if (item.kind === 'entry') {
        texts.push(item.raw);
        characters += item.raw.length;
      } else {
        leftOut += 1;
      }
      if (characters > MOST_CHARACTERS)
        throw new Error(`${name} is too long to be opened so: import it, then replay it.`);
    }
  } catch (error) {
    throw error instanceof RecordingProblem ? new Error(`${name}, ${error.message}.`) : error;
  }
  if (recording === null) throw new Error(`${name} is no recording: it has no header.`);
  return { recording, leftOut };
}
