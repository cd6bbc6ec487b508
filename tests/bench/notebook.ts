// What the notebook costs: room and opening time of a long boil, and listing, searching and copying with 500 boils in it.
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Header } from '../../src/core/boil/entries.ts';
import { ENTRIES_PER_BLOCK } from '../../src/notebook/blocks.ts';
import type { Notebook } from '../../src/notebook/contract.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { middleMilliseconds } from './timing.ts';

const SECONDS = 14 * 3600;
const PANS = 8;
const BOILS = 500;

const header = (index: number): Header => ({
  recording: 'panwarden',
  version: 1,
  name: `Tarn Hollow (invented) ${index}`,
  started: new Date(Date.UTC(2027, 2, 1) + index * 3_600_000).toISOString(),
  pans: [{ id: 'p1', name: 'Back pot' }],
});

export async function notebook(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-bench-'));
  try {
    await longBoil(folder, 'one port, eight channels in a line', 1);
    await longBoil(folder, 'eight ports, a line each', PANS);
    await manyBoils(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Kept as a live boil is: one transaction a second. */
async function longBoil(folder: string, words: string, ports: number): Promise<void> {
  const data = join(folder, `long-${ports}`);
  const kept = openNotebook(data);
  const { boil } = kept.begin(header(0), 'live');
  const raw: string[] = [];
  const plain: number[] = [];
  const packing: number[] = [];
  for (let second = 0; second < SECONDS; second += 1) {
    const texts = linesAt(second, ports);
    const start = performance.now();
    kept.append(boil, texts);
    const took = performance.now() - start;
    const blocks = Math.floor(raw.length / ENTRIES_PER_BLOCK);
    raw.push(...texts);
    (Math.floor(raw.length / ENTRIES_PER_BLOCK) > blocks ? packing : plain).push(took);
  }
  kept.end(boil, SECONDS * 1000);
  kept.close();
  const recording = join(folder, 'raw.boil.jsonl');
  writeFileSync(recording, `${raw.join('\n')}\n`);
  const reading = await middleMilliseconds(5, () => void readFileSync(recording, 'utf8').split('\n'));
  const opening = await middleMilliseconds(5, () => {
    const reader = openNotebook(data, { readOnly: true });
    const entries = [...reader.entries(boil)];
    if (entries.length !== raw.length + 1 || entries[999] !== raw[999]) throw new Error('it came back otherwise');
    reader.close();
  });
  const megabytes = (path: string) => (statSync(path).size / 1e6).toFixed(2);
  console.log(`  14 h, ${PANS} pans, 1 Hz: ${words} (${raw.length} entries)`);
  console.log(
    `    size                ${megabytes(join(data, 'notebook.sqlite'))} MB of ${megabytes(recording)} MB (goal: under 12)`,
  );
  console.log(
    `    opened for replay   ${opening.toFixed(0)} ms = ${(opening / reading).toFixed(1)} x reading the raw file (goal: under 300 ms)`,
  );
  console.log(`    a second's commit   ${times(plain)}`);
  console.log(`    one that packs too  ${times(packing)} (goal: under 50 ms; the slowest wait for the disk)`);
}

function times(took: number[]): string {
  const inOrder = took.toSorted((a, b) => a - b);
  const at = (share: number) => (inOrder[Math.floor(share * (inOrder.length - 1))] ?? 0).toFixed(1);
  return `middle ${at(0.5)} ms, 99 of 100 under ${at(0.99)} ms, slowest ${at(1)} ms`;
}

let seed = 1;
const random = () => (seed = (seed * 48_271) % 2_147_483_647) / 2_147_483_647;

/** Probes with the noise of a cheap board, rising over the day. */
function linesAt(second: number, ports: number): string[] {
  const t = second * 1000 + Math.floor(random() * 40);
  const value = (pan: number) => (96 + pan + second / 12_000 + (random() + random() - 1) * 0.15).toFixed(2);
  const pans = Array.from({ length: PANS }, (_, pan) => pan);
  if (ports === 1)
    return [JSON.stringify({ t, port: 'A', line: pans.map((pan) => `T${pan + 1}=${value(pan)}C`).join(' ') })];
  return pans.map((pan) =>
    JSON.stringify({ t: t + pan, port: String.fromCharCode(65 + pan), line: `T1=${value(pan)}C` }),
  );
}

async function manyBoils(folder: string): Promise<void> {
  const data = join(folder, 'many');
  const filled = openNotebook(data);
  for (let index = 0; index < BOILS; index += 1) fill(filled, index);
  filled.close();
  const reader = openNotebook(data, { readOnly: true });
  const list = await middleMilliseconds(9, () => void reader.boils());
  const search = await middleMilliseconds(9, () => void reader.search('niter ladle'));
  const common = await middleMilliseconds(9, () => void reader.search('tarn'));
  const copy = await middleMilliseconds(1, () => void reader.backup(join(folder, 'copies'), 10));
  reader.close();
  console.log(`  ${BOILS} boils, ${(statSync(join(data, 'notebook.sqlite')).size / 1e6).toFixed(0)} MB`);
  console.log(
    `    list ${list.toFixed(1)} ms, search for rare words ${search.toFixed(1)} ms, for one in all of them ${common.toFixed(1)} ms (goal: under 100)`,
  );
  console.log(`    a whole copy        ${copy.toFixed(0)} ms, in a thread of its own`);
}

function fill(kept: Notebook, index: number): void {
  const { boil } = kept.begin(header(index), 'live');
  const texts = Array.from({ length: 2000 }, (_, second) => linesAt(second, 1)[0] ?? '');
  const note = `${index % 97 === 0 ? 'Niter on the ladle' : 'Foam'}, boil ${index}`;
  kept.append(boil, [...texts, JSON.stringify({ t: 2_000_000, mark: { kind: 'note', text: note } })]);
  kept.keepPage(boil, { taste: 'caramel', notes: 'Windy, and the wood was wet' });
  kept.end(boil, 2_000_000);
}
