// A boil's recording in pieces worth writing: one for each line would cost more than the line.
import { exportRecording } from '../../notebook/export-recording.ts';
import type { Notebook } from '../../notebook/contract.ts';

const PIECE_CHARACTERS = 65_536;

/** A boil as the text of its recording, piece by piece; throws where there is no such boil. */
export function* recordingPieces(notebook: Notebook, boil: string): Generator<string> {
  let piece = '';
  for (const line of exportRecording(notebook, boil)) {
    piece += line;
    if (piece.length < PIECE_CHARACTERS) continue;
    yield piece;
    piece = '';
  }
  yield piece;
}
