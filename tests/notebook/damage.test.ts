// A notebook that is damaged, foreign, newer or out of reach is said to be so, and left as it is.
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import { NotebookProblem } from '../../src/notebook/contract.ts';
import { checkEngine } from '../../src/notebook/database.ts';
import { DamagedNotebook, lockFolder, openNotebook } from '../../src/notebook/open-notebook.ts';
import { NOTEBOOK_VERSION } from '../../src/notebook/schema.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';
import { tarnHollow } from './tarn-hollow.ts';

function filledFolder(entries: number): { folder: string; file: string; boil: string } {
  const folder = scratchFolder();
  const notebook = openNotebook(folder);
  const { boil } = notebook.begin(tarnHollow, 'live');
  notebook.append(
    boil,
    Array.from({ length: entries }, (_, t) => `{"t":${t},"port":"A","line":"T1=98.25C"}`),
  );
  notebook.close();
  return { folder, file: join(folder, 'notebook.sqlite'), boil };
}

function problemOf(work: () => unknown): NotebookProblem {
  try {
    work();
  } catch (error) {
    if (error instanceof NotebookProblem) return error;
    throw error;
  }
  throw new Error('it went through');
}

test.each([false, true])(
  'garbage and half a notebook are damage, and not a byte is changed (reading only: %s)',
  (readOnly) => {
    const { folder, file } = filledFolder(2000);
    const spoilings = [
      () => truncateSync(file, Math.floor(readFileSync(file).length / 2)),
      () => writeFileSync(file, 'these are not the bytes of a notebook, whatever they are'),
    ];
    for (const spoil of spoilings) {
      spoil();
      const before = readFileSync(file);
      const problem = problemOf(() => openNotebook(folder, { readOnly }));
      expect(problem).toBeInstanceOf(DamagedNotebook);
      expect(problem.code).toBe(2);
      expect(problem.message).toContain(`the notebook in ${folder} is damaged`);
      expect(readFileSync(file).equals(before)).toBe(true);
    }
  },
);

test('a database of another program is not written into', () => {
  const folder = scratchFolder();
  const other = new DatabaseSync(join(folder, 'notebook.sqlite'));
  other.exec('CREATE TABLE recipe (name TEXT)');
  other.close();
  expect(problemOf(() => openNotebook(folder)).message).toContain('its file is a database of another program');
});

test('a notebook of a newer version is read, with a word on it, and never written', () => {
  const { folder, file } = filledFolder(1);
  const later = new DatabaseSync(file);
  later.exec('PRAGMA journal_mode = DELETE; PRAGMA user_version = 9');
  later.close();
  const before = readFileSync(file);
  const problem = problemOf(() => openNotebook(folder));
  expect(problem.message).toContain(
    `the notebook in ${folder} is of version 9, and this program knows ${NOTEBOOK_VERSION}`,
  );
  expect(problem.code).toBe(2);
  const reader = scratchNotebook(folder, { readOnly: true });
  expect([...reader.entries('latest')]).toHaveLength(1);
  expect(reader.remarks).toEqual([
    `The notebook in ${folder} is of version 9, and this program knows ${NOTEBOOK_VERSION}: it is only read, and what newer versions keep beside it is not shown.`,
  ]);
  expect(readFileSync(file).equals(before)).toBe(true);
});

test('a folder that cannot be made is named, with the cure', () => {
  const file = join(scratchFolder(), 'a-file');
  writeFileSync(file, '');
  for (const folder of [file, join(file, 'inside')]) {
    for (const open of [openNotebook, lockFolder]) {
      const problem = problemOf(() => open(folder));
      expect(problem.message).toBe(
        `the data folder ${folder} cannot be used (a file stands in its place): name another with --data, or give yourself the right to write there`,
      );
      expect(problem.code).toBe(2);
    }
  }
});

/** Rights do not bind the system's administrator, so a child of a user who has none tries the folder. */
function openAsNobody(folder: string, readOnly: boolean): string {
  // As root the program and its modules are loaded first: the checkout itself may be closed to others.
  const source = `
    import { openNotebook } from ${JSON.stringify(new URL('../../src/notebook/open-notebook.ts', import.meta.url).href)};
    if (process.getuid() === 0) { process.setgid(65534); process.setuid(65534); }
    try { console.log(openNotebook(${JSON.stringify(folder)}, { readOnly: ${readOnly} }).boils().length + ' boils'); }
    catch (error) { console.log(error.code + ' ' + error.message); }`;
  const child = spawnSync(process.execPath, ['--input-type=module-typescript', '-e', source], { encoding: 'utf8' });
  return `${child.stdout}${child.stderr}`.trim();
}

test.skipIf(process.platform === 'win32')(
  'a read-only folder cannot be written, and is said to be so; it can be read',
  () => {
    const { folder, file } = filledFolder(1);
    chmodSync(file, 0o444);
    chmodSync(folder, 0o555);
    expect(openAsNobody(folder, false)).toBe(
      `2 the data folder ${folder} cannot be used (permission denied): name another with --data, or give yourself the right to write there`,
    );
    expect(openAsNobody(folder, true)).toBe('1 boils');
    chmodSync(folder, 0o755);
  },
);

test('a folder that is taken away or replaced fails the next write, and does not swallow it', () => {
  const folder = join(scratchFolder(), 'data');
  const notebook = scratchNotebook(folder);
  const { boil } = notebook.begin(tarnHollow, 'live');
  rmSync(folder, { recursive: true });
  expect(problemOf(() => notebook.append(boil, ['{"t":1}'])).message).toContain(
    `the data folder ${folder} cannot be used`,
  );
  mkdirSync(folder);
  scratchNotebook(folder);
  expect(problemOf(() => notebook.append(boil, ['{"t":1}'])).message).toContain('was replaced by another');
});

test('an engine that can lose committed rows is refused', () => {
  for (const version of ['3.51.3', '3.51.10', '3.53.0', '4.0']) checkEngine(version);
  for (const version of ['3.51.2', '3.50.9', '2.99.99']) expect(problemOf(() => checkEngine(version)).code).toBe(2);
});

test('a check finds every way in which rows can be wrong, and changes nothing', () => {
  const { folder, file, boil } = filledFolder(50);
  expect(scratchNotebook(folder, { readOnly: true }).check()).toEqual({
    damaged: false,
    findings: ['1 boil with 50 entries were read, and all of it holds together.'],
  });
  const database = new DatabaseSync(file);
  database.exec(`
    UPDATE entry SET text = 'T1=98' WHERE place = 10;
    UPDATE entry SET text = '{"t":7000}' WHERE place = 20;
    UPDATE entry SET t = 3, text = '{"t":3}' WHERE place = 30;
    DELETE FROM entry WHERE place IN (40, 41, 50);`);
  database.close();
  expect(scratchNotebook(folder, { readOnly: true }).check()).toEqual({
    damaged: true,
    findings: [
      `Boil ${boil}, entry 10: it is no JSON: "T1=98".`,
      `Boil ${boil}, entry 20: it was kept under t 19, and says 7000.`,
      `Boil ${boil}, entry 30: its t of 3 steps back behind 28.`,
      `Boil ${boil}: entries 40 to 41 are missing.`,
      `Boil ${boil}: 50 entries were kept, and 49 are there.`,
      `Boil ${boil}: it should end at t 49, and ends at 48.`,
      'The notebook is damaged; it lists 1 boil with 50 entries.',
    ],
  });
});

test('a check finds a spoiled page in the middle of the file', () => {
  const { folder, file } = filledFolder(5000);
  const bytes = readFileSync(file);
  const middle = Math.floor(bytes.indexOf('{"t":3500,') / 4096) * 4096;
  bytes.fill(0xa5, middle, middle + 4096);
  writeFileSync(file, bytes);
  const { damaged, findings } = scratchNotebook(folder, { readOnly: true }).check();
  expect(damaged).toBe(true);
  expect(findings).toContainEqual(
    expect.stringMatching(/: its first 3[34]\d\d of 5000 entries can be read, and then none: /u),
  );
  expect(readFileSync(file).equals(bytes)).toBe(true);
});
