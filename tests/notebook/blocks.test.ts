// Entries that are put away in packed blocks come back byte for byte, also while somebody reads, and damage to them is found.
import { DatabaseSync } from 'node:sqlite';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';
import { tarnHollow } from './tarn-hollow.ts';

const BLOCK = 2048;
const text = (t: number) => `{ "t":${t}, "port" : "A","line":"T1=9${t % 10}.2${t % 7}C é☃" }`;
const texts = (from: number, to: number) => Array.from({ length: to - from }, (_, index) => text(from + index));

function counts(folder: string): { blocks: number; rows: number } {
  const database = new DatabaseSync(join(folder, 'notebook.sqlite'), { readOnly: true });
  const count = (table: string) => Number(database.prepare(`SELECT count(*) AS n FROM ${table}`).get()?.['n']);
  const counted = { blocks: count('block'), rows: count('entry') };
  database.close();
  return counted;
}

test('whole blocks are put away while a boil runs, the rest at its end, and all of it reads as it was written', () => {
  const folder = scratchFolder();
  const notebook = scratchNotebook(folder);
  const { boil } = notebook.begin(tarnHollow, 'live');
  for (let t = 0; t < 5000; t += 50) expect(notebook.append(boil, texts(t, t + 50))).toBe(t + 50);
  expect(counts(folder)).toEqual({ blocks: 2, rows: 5000 - 2 * BLOCK });
  expect([...notebook.entries(boil)]).toEqual(texts(0, 5000));
  notebook.end(boil, 6000);
  expect(counts(folder)).toEqual({ blocks: 3, rows: 0 });
  expect([...notebook.entries(boil)]).toEqual([...texts(0, 5000), '{"t":6000,"run":"ended"}']);
  expect(notebook.check()).toEqual({
    damaged: false,
    findings: ['1 boil with 5001 entries were read, and all of it holds together.'],
  });
});

test('what a reader has begun ends where the boil ended then, although its rows are put away meanwhile', () => {
  const folder = scratchFolder();
  const notebook = scratchNotebook(folder);
  const { boil } = notebook.begin(tarnHollow, 'live');
  notebook.append(boil, texts(0, BLOCK - 10));
  const readers = [notebook, scratchNotebook(folder, { readOnly: true })].map((one) =>
    one.entries(boil)[Symbol.iterator](),
  );
  const begun = readers.map((reader) => Array.from({ length: 300 }, () => reader.next().value));
  notebook.append(boil, texts(BLOCK - 10, BLOCK + 10));
  expect(counts(folder)).toEqual({ blocks: 1, rows: 10 });
  for (const [index, reader] of readers.entries()) {
    expect([...begun[index]!, ...{ [Symbol.iterator]: () => reader }]).toEqual(texts(0, BLOCK - 10));
  }
});

test('few entries with very long lines fill a block too', () => {
  const folder = scratchFolder();
  const notebook = scratchNotebook(folder);
  const { boil } = notebook.begin(tarnHollow, 'live');
  const long = Array.from({ length: 30 }, (_, t) => JSON.stringify({ t, note: 'x'.repeat(100_000) }));
  notebook.append(boil, long);
  notebook.end(boil, 30);
  expect(counts(folder)).toEqual({ blocks: 4, rows: 0 });
  expect([...notebook.entries(boil)].slice(0, 30)).toEqual(long);
});

test.each([
  ['packed = zeroblob(50)', /^Boil \S+: entries 2049 to 4096 cannot be unpacked \(.+\)\.$/u],
  [
    'packed = (SELECT packed FROM block WHERE first = 1)',
    'entries 2049 to 4096 are not as they were kept: their checksum differs.',
  ],
  ['last_t = 9000', ', entry 4096: it was kept under t 9000, and says 4095.'],
  ['first = 2050', ': entries 2049 to 2049 are missing.'],
])('a check finds a block whose row was changed: %s', (change, words) => {
  const folder = scratchFolder();
  const notebook = openNotebook(folder);
  const { boil } = notebook.begin(tarnHollow, 'live');
  for (let t = 0; t < 6000; t += 500) notebook.append(boil, texts(t, t + 500));
  notebook.close();
  const database = new DatabaseSync(join(folder, 'notebook.sqlite'));
  database.exec(`UPDATE block SET ${change} WHERE first = 2049`);
  database.close();
  const reader = scratchNotebook(folder, { readOnly: true });
  const { damaged, findings } = reader.check();
  expect(damaged).toBe(true);
  expect(findings.some((finding) => (typeof words === 'string' ? finding.includes(words) : words.test(finding)))).toBe(
    true,
  );
  if (change.startsWith('packed'))
    expect(() => [...reader.entries(boil)]).toThrow(/is damaged \(the boil .+: entries 2049/u);
});
