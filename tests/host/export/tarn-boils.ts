// Small invented boils of Tarn Hollow in a notebook of their own, for what is written out of it.
import { fileURLToPath } from 'node:url';
import { createReadStream } from 'node:fs';
import type { BoilSummary, Notebook } from '../../../src/notebook/contract.ts';
import { scratchNotebook } from '../../notebook/scratch-folder.ts';
import { takeIn } from '../../../src/host/import/take-in.ts';

const header = {
  recording: 'panwarden',
  version: 1,
  name: 'Sunday’s run',
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow (invented)', altitude_m: 640 },
  ports: [{ id: 'A' }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
  pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1' }],
};

/** Twenty minutes that warm up and boil, a line a second. */
export function recordingText(changes: object = {}, more: object[] = []): string {
  const lines = Array.from({ length: 1200 }, (_, second) => ({
    t: second * 1000,
    port: 'A',
    line: `T1=${Math.min(98.2, 60 + second * 0.1).toFixed(2)}C`,
  }));
  return [{ ...header, ...changes }, ...more, ...lines].map((line) => `${JSON.stringify(line)}\n`).join('');
}

export async function* inOnePiece(text: string): AsyncGenerator<string> {
  yield text;
}

export async function kept(text: string): Promise<{ notebook: Notebook; boil: BoilSummary; leftOut: string[] }> {
  const notebook = scratchNotebook();
  return { notebook, ...(await takeIn(notebook, inOnePiece(text), 'it')) };
}

export async function keptFixture(name: string): Promise<{ notebook: Notebook; boil: string }> {
  const notebook = scratchNotebook();
  const file = fileURLToPath(new URL(`../../../fixtures/recordings/${name}.boil.jsonl`, import.meta.url));
  const { boil } = await notebook.importRecording(createReadStream(file), name);
  return { notebook, boil: boil.boil };
}

export async function whole(
  pieces: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>,
): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const piece of pieces) parts.push(Buffer.from(piece as string));
  return Buffer.concat(parts);
}
