// A copy is brought back by one call, with its photos; the notebook that it replaces is set aside, and what is no copy changes nothing.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { restoreNotebook } from '../../src/notebook/restore.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';
import { tarnHollow } from './tarn-hollow.ts';

test('a copy comes back into another folder and over a later notebook', () => {
  const folder = scratchFolder();
  const notebook = openNotebook(folder);
  const { boil } = notebook.begin(tarnHollow, 'live');
  notebook.append(boil, ['{"t":1}', '{"t":2}']);
  const photo = notebook.addPhoto(boil, { type: 'image/png', caption: 'Foam' }, Uint8Array.from([1, 2]));
  const copy = notebook.backup(join(scratchFolder(), 'stick'), 10);
  notebook.append(boil, ['{"t":3}']);
  notebook.close();

  const elsewhere = scratchFolder();
  expect(restoreNotebook(elsewhere, copy)).toBe(null);
  const there = scratchNotebook(elsewhere);
  expect([...there.entries(boil)]).toEqual(['{"t":1}', '{"t":2}']);
  expect([...there.photo(boil, photo.id).bytes]).toEqual([1, 2]);
  expect(there.check().damaged).toBe(false);

  const later = readFileSync(join(folder, 'notebook.sqlite'));
  const aside = restoreNotebook(folder, copy);
  expect(aside).toMatch(/notebook-replaced-[\dT-]+\.sqlite$/u);
  expect(readFileSync(aside!).equals(later)).toBe(true);
  const back = scratchNotebook(folder);
  expect(back.remarks).toEqual([]);
  expect([...back.entries(boil)]).toEqual(['{"t":1}', '{"t":2}']);
});

test.each([
  ['is not there', null, 'there is no such file'],
  ['is no database', 'a letter', 'it cannot be read (file is not a database)'],
  ['is empty', '', 'it is no copy of a notebook'],
])('a file that %s is refused and changes nothing', (_, content, why) => {
  const folder = scratchFolder();
  scratchNotebook(folder).begin(tarnHollow, 'live');
  const file = join(scratchFolder(), 'copy.sqlite');
  if (content !== null) writeFileSync(file, content);
  expect(() => restoreNotebook(folder, file)).toThrow(`${file} cannot be brought back: ${why}`);
  expect(existsSync(join(folder, 'notebook.sqlite.waiting'))).toBe(false);
  expect(scratchNotebook(folder).boils()).toHaveLength(1);
});
