// A recording that is taken in comes out again byte for byte, once, whole or not at all.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { NotebookProblem, type Notebook } from '../../src/notebook/contract.ts';
import { exportRecording } from '../../src/notebook/export-recording.ts';
import { openForWriting } from '../../src/notebook/database.ts';
import { insertBoil, insertEntries } from '../../src/notebook/write-entries.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';
import { tarnHollow } from './tarn-hollow.ts';

const header = `{"recording":"panwarden", "version":1,"invented":true,"name":"Old pan","started":"2026-03-20T08:00:00+01:00"}`;
const lines = [header, '{"t":0,"port":"A","state":"open"}', '{"t" : 1000,"x":{"y":[ ]}}', '{"t":1000,"run":"ended"}'];
const recording = lines.map((line) => `${line}\n`).join('');

function exported(notebook: Notebook, boil: string): string {
  return [...exportRecording(notebook, boil)].join('');
}

test('in and out is the same text, and it is over', async () => {
  const notebook = scratchNotebook();
  const { boil, leftOut } = await notebook.importRecording([recording], 'old.boil.jsonl');
  expect(leftOut).toEqual([]);
  expect(boil).toEqual({
    boil: '2026-03-20-old-pan',
    kind: 'imported',
    name: 'Old pan',
    started: '2026-03-20T08:00:00+01:00',
    seconds: 1,
    entries: 3,
    running: false,
  });
  expect(exported(notebook, boil.boil)).toBe(recording);
});

test('any entries come out as they went in', async () => {
  const notebook = scratchNotebook();
  const entry = fc.record({ port: fc.string(), line: fc.string({ unit: 'binary' }), later: fc.jsonValue() });
  let run = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(entry, { maxLength: 20 }), fc.nat(4), async (entries, indent) => {
      run += 1;
      const texts = entries.map((fields, t) => JSON.stringify({ t, ...fields }, null, indent).replaceAll('\n', ' '));
      const text = [JSON.stringify({ ...tarnHollow, run }), ...texts].map((line) => `${line}\n`).join('');
      const { boil } = await notebook.importRecording([text], 'made.boil.jsonl');
      expect(exported(notebook, boil.boil)).toBe(text);
    }),
    { numRuns: 30 },
  );
  expect(notebook.check().damaged).toBe(false);
});

test('the same recording twice is one boil; one other byte makes it another', async () => {
  const notebook = scratchNotebook();
  const first = await notebook.importRecording([recording], 'a.boil.jsonl');
  const again = await notebook.importRecording([new TextEncoder().encode(recording)], 'b.boil.jsonl');
  expect(again.boil).toEqual(first.boil);
  expect(notebook.boils()).toHaveLength(1);
  const other = await notebook.importRecording([recording.replace('"t" : 1000', '"t" :1000')], 'c.boil.jsonl');
  expect(other.boil.boil).toBe('2026-03-20-old-pan-2');
});

test('a boil that was watched here and exported is known again', async () => {
  const notebook = scratchNotebook();
  const { boil } = notebook.begin(tarnHollow, 'live');
  notebook.append(boil, ['{"t":3}', '{"t":4}']);
  notebook.end(boil, 5);
  const back = await notebook.importRecording([exported(notebook, boil)], 'own.boil.jsonl');
  expect(back.boil).toEqual(notebook.find(boil));
});

test('a recording without an end is not running', async () => {
  const notebook = scratchNotebook();
  const { boil } = await notebook.importRecording([`${header}\n{"t":1}\n`], 'cut.boil.jsonl');
  expect(boil.running).toBe(false);
  expect(notebook.running()).toBe(null);
});

test('what is left out is said with the name of the file, and the rest is kept', async () => {
  const notebook = scratchNotebook();
  const { boil, leftOut } = await notebook.importRecording(
    [`${header}\n{"t":9}\nnoise\n{"t":8}\n{"t":9,"x":1}\n{"t":`],
    'cut.boil.jsonl',
  );
  expect(leftOut).toEqual([
    'cut.boil.jsonl, line 3 was left out: it is no JSON: "noise"',
    'cut.boil.jsonl, line 4 was left out: its t of 8 steps back behind the 9 of line 2',
    'cut.boil.jsonl, line 6, the last, has no line end: its 5 bytes were left out, and everything before it was used',
  ]);
  expect([...notebook.entries(boil.boil)]).toEqual(['{"t":9}', '{"t":9,"x":1}']);
});

test('of very many bad lines the first are said and the rest counted', async () => {
  const { leftOut } = await scratchNotebook().importRecording(
    [`${header}\n${'noise\n'.repeat(5000)}`],
    'bad.boil.jsonl',
  );
  expect(leftOut).toHaveLength(101);
  expect(leftOut.at(-1)).toBe('bad.boil.jsonl: 4900 more lines were left out');
});

test('a file that is no recording leaves nothing behind', async () => {
  const notebook = scratchNotebook();
  const problem = await notebook.importRecording(['not a boil\n'], 'letter.txt').catch((error: unknown) => error);
  expect(problem).toBeInstanceOf(NotebookProblem);
  expect(problem).toMatchObject({
    code: 2,
    message: 'letter.txt, line 1: the header does not hold together: it is no JSON: "not a boil"',
  });
  expect(notebook.boils()).toEqual([]);
});

test('a file that stops being readable leaves nothing behind, and others are not shown it meanwhile', async () => {
  const folder = scratchFolder();
  const notebook = scratchNotebook(folder);
  const other = scratchNotebook(folder, { readOnly: true });
  async function* failing(): AsyncGenerator<string> {
    yield `${header}\n`;
    yield '{"t":1}\n'.repeat(10_000);
    expect(other.boils()).toEqual([]);
    await expect(notebook.importRecording([recording], 'second')).rejects.toThrow(
      'another recording is being imported',
    );
    throw new Error('the stick was pulled');
  }
  await expect(notebook.importRecording(failing(), 'stick')).rejects.toThrow('the stick was pulled');
  expect(notebook.boils()).toEqual([]);
  expect(notebook.check()).toEqual({
    damaged: false,
    findings: ['0 boils with 0 entries were read, and all of it holds together.'],
  });
  const { boil } = await notebook.importRecording([recording], 'second');
  expect(boil.boil).toBe('2026-03-20-old-pan');
});

test('what a killed import has left is never listed, and is cleared by the next', async () => {
  const folder = scratchFolder();
  const database = openForWriting(folder);
  const staged = {
    header: tarnHollow,
    headerText: JSON.stringify(tarnHollow),
    kind: 'imported',
    running: false,
    staged: true,
  } as const;
  insertEntries(
    database,
    insertBoil(database, staged),
    Array.from({ length: 5000 }, (_, t) => ({ t, text: `{"t":${t}}`, words: null })),
  );
  const notebook = scratchNotebook(folder);
  expect(notebook.boils()).toEqual([]);
  await notebook.importRecording([recording], 'old.boil.jsonl');
  expect(
    database.prepare('SELECT (SELECT count(*) FROM boil) AS boils, (SELECT sum(entries) FROM block) AS entries').get(),
  ).toEqual({
    boils: 1,
    entries: 3,
  });
  database.close();
});

test('a practice boil that was exported comes back as a practice boil', async () => {
  const simulated = `{"recording":"panwarden","version":1,"started":"2027-03-20T09:00:00-07:00","practice":true}\n`;
  const { boil } = await scratchNotebook().importRecording([simulated], 'practice.boil.jsonl');
  expect(boil.kind).toBe('practice');
});
