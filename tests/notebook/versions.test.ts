// A notebook of every older version is copied, then brought forward with everything in it; a kill in the middle costs nothing.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { NOTEBOOK_VERSION } from '../../src/notebook/schema.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';

const fixtures = fileURLToPath(new URL('../../fixtures/notebooks/', import.meta.url));
const SECOND = '2027-04-18-sundays-run';

function folderOf(version: number): string {
  const folder = scratchFolder();
  copyFileSync(join(fixtures, `v${version}.sqlite`), join(folder, 'notebook.sqlite'));
  return folder;
}

/** The texts straight from the fixture's rows. */
function textsOf(version: number, boil: number): string[] {
  const database = new DatabaseSync(join(fixtures, `v${version}.sqlite`), { readOnly: true });
  const rows = database.prepare('SELECT text FROM entry WHERE boil = ? ORDER BY place').all(boil);
  database.close();
  return rows.map(({ text }) => String(text));
}

const copies = (folder: string) => readdirSync(folder).filter((name) => name.startsWith('notebook-of-version-'));

test('there is a fixture of every version', () => {
  expect(readdirSync(fixtures).toSorted()).toEqual(
    Array.from({ length: NOTEBOOK_VERSION }, (_, index) => `v${index + 1}.sqlite`),
  );
});

test.each(Array.from({ length: NOTEBOOK_VERSION }, (_, index) => index + 1))('version %i', (version) => {
  const folder = folderOf(version);
  const notebook = scratchNotebook(folder);
  expect(notebook.boils().map(({ boil, entries }) => [boil, entries])).toEqual([
    [SECOND, 300],
    ['2027-04-17-first-run', 300],
  ]);
  expect([...notebook.entries(SECOND)]).toEqual(textsOf(version, 2));
  expect(notebook.setting('settings')).toEqual({ temperature: 'F' });
  expect(notebook.learnt()).toHaveLength(version >= 2 ? 1 : 0);
  expect(notebook.search('ladle')).toEqual([SECOND]);
  expect(notebook.search('back pot')).toHaveLength(2);
  expect(notebook.append(SECOND, ['{"t":301000}'])).toBe(301);
  expect(notebook.check().damaged).toBe(false);
  const [copy, ...more] = copies(folder);
  expect(more).toEqual([]);
  if (version === NOTEBOOK_VERSION) return expect(copy).toBe(undefined);
  expect(copy).toMatch(new RegExp(`^notebook-of-version-${version}-\\d{4}-\\d\\d-\\d\\dT\\d{6}\\.sqlite$`, 'u'));
  const before = new DatabaseSync(join(folder, copy!), { readOnly: true });
  expect(before.prepare('PRAGMA user_version').get()).toEqual({ user_version: version });
  expect(before.prepare('SELECT count(*) AS n FROM entry').get()).toEqual({ n: 600 });
  before.close();
});

test('an older notebook is not read before it is brought forward', () => {
  expect(() => scratchNotebook(folderOf(1), { readOnly: true })).toThrow(/is of an older version: open it once/u);
});

test('kills while it is brought forward leave it whole, old or new', { timeout: 60_000 }, async () => {
  const opener = fileURLToPath(new URL('opening-program.ts', import.meta.url));
  for (const afterMs of [0, 1, 3, 6, 10, 20]) {
    const folder = folderOf(1);
    const child = spawn(process.execPath, [opener, folder], { stdio: ['ignore', 'pipe', 'inherit'] });
    await once(child.stdout, 'data');
    await new Promise((resolve) => setTimeout(resolve, afterMs));
    child.kill('SIGKILL');
    await once(child, 'exit');
    const notebook = scratchNotebook(folder);
    expect([...notebook.entries(SECOND)]).toEqual(textsOf(1, 2));
    expect(notebook.check().damaged).toBe(false);
  }
});
