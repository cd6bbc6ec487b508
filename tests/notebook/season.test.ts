// What a person writes beside the boils is kept whole, refused where it is wrong, and found again.
import { existsSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Photo } from '../../src/core/season/records.ts';
import type { Notebook } from '../../src/notebook/contract.ts';
import { exportRecording } from '../../src/notebook/export-recording.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';
import { tarnHollow } from './tarn-hollow.ts';

function withBoil(folder = scratchFolder()): { notebook: Notebook; boil: string; folder: string } {
  const notebook = scratchNotebook(folder);
  return { notebook, boil: notebook.begin(tarnHollow, 'live').boil, folder };
}

/** Bytes that no picture program would know; the notebook keeps what it is handed. */
const picture = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]);
const jpeg = { type: 'image/jpeg', caption: 'Foam at noon' } as const;

test('a page replaces the one before, also after the boil is over, and a wrong one is refused with its field', () => {
  const { notebook, boil } = withBoil();
  expect(notebook.page(boil)).toEqual({});
  notebook.end(boil, 0);
  notebook.keepPage(boil, { syrup: { litres: 3.1, brix: undefined }, taste: 'caramel' });
  notebook.keepPage(boil, { syrup: { litres: 3.2 }, jars: [{ litres: 0.25, count: 12, lot: 'B7' }] });
  expect(notebook.page(boil)).toEqual({ syrup: { litres: 3.2 }, jars: [{ litres: 0.25, count: 12, lot: 'B7' }] });
  expect(() => notebook.keepPage(boil, { syrup: { litres: -1 } })).toThrow(
    'the page of the boil cannot be so: syrup.litres',
  );
  expect(() => notebook.keepPage('monday', {})).toThrow('there is no boil "monday"');
  expect(notebook.page(boil).syrup).toEqual({ litres: 3.2 });
});

test('a boil can be given another name, is found by either, and its recording keeps the first', () => {
  const { notebook, boil } = withBoil();
  notebook.end(boil, 0);
  const before = [...exportRecording(notebook, boil)];
  notebook.keepPage(boil, { name: 'The long Sunday' });
  expect(notebook.find(boil).name).toBe('The long Sunday');
  expect(notebook.boils().map(({ name }) => name)).toEqual(['The long Sunday']);
  expect([notebook.search('long sunday'), notebook.search(tarnHollow.name!)]).toEqual([[boil], [boil]]);
  expect([...exportRecording(notebook, boil)]).toEqual(before);
  notebook.keepPage(boil, {});
  expect(notebook.find(boil).name).toBe(tarnHollow.name);
  expect(() => notebook.keepPage(boil, { name: '' })).toThrow('the page of the boil cannot be so: name');
});

test('figures are kept under their key until an entry comes', () => {
  const { notebook, boil } = withBoil();
  expect(notebook.figures(boil, 'season-1')).toBe(null);
  notebook.keepFigures(boil, 'season-1', { hours: 7.5, litres: null });
  expect(notebook.figures(boil, 'season-1')).toEqual({ hours: 7.5, litres: null });
  expect(notebook.figures(boil, 'season-2')).toBe(null);
  notebook.append(boil, ['{"t":10}']);
  expect(notebook.figures(boil, 'season-1')).toBe(null);
});

test('collections come newest day first, one replaces its id, and one goes', () => {
  const { notebook } = withBoil();
  notebook.keepCollection({ id: 'a', day: '2027-04-16', litres: 40, brix: 1.1, sap: 'birch' });
  notebook.keepCollection({ id: 'b', day: '2027-04-18', litres: 55, trees: 'Tarn side (invented)' });
  notebook.keepCollection({ id: 'a', day: '2027-04-17', litres: 42 });
  expect(notebook.collections()).toEqual([
    { id: 'b', day: '2027-04-18', litres: 55, trees: 'Tarn side (invented)' },
    { id: 'a', day: '2027-04-17', litres: 42 },
  ]);
  expect(() => notebook.keepCollection({ id: 'c', day: '2027-02-30', litres: 5 })).toThrow(/cannot be so: day/u);
  notebook.dropCollection('b');
  expect(notebook.collections().map(({ id }) => id)).toEqual(['a']);
});

test('a photo is kept byte for byte as a file beside the notebook, once, until it is dropped', () => {
  const { notebook, boil, folder } = withBoil();
  const photo = notebook.addPhoto(boil, jpeg, picture);
  expect(photo).toMatchObject({ ...jpeg, bytes: 7 });
  const file = join(folder, 'photos', boil, `${photo.id}.jpg`);
  expect(new Uint8Array(readFileSync(file))).toEqual(picture);
  notebook.addPhoto(boil, { type: 'image/png', caption: 'Two' }, Uint8Array.from([1]));
  notebook.addPhoto(boil, { ...jpeg, caption: 'Foam at one' }, picture);
  expect(notebook.photos(boil).map(({ caption }) => caption)).toEqual(['Foam at one', 'Two']);
  expect(new Uint8Array(notebook.photo(boil, photo.id).bytes)).toEqual(picture);
  notebook.dropPhoto(boil, photo.id);
  expect(existsSync(file)).toBe(false);
  expect(() => notebook.photo(boil, photo.id)).toThrow(`the boil "${boil}" has no photo "${photo.id}"`);
});

test.each([
  ['of another type', { type: 'image/svg+xml' as Photo['type'], caption: '' }, 5, /JPEG, PNG or WebP/u],
  ['without bytes', jpeg, 0, /empty/u],
  ['of more than 10 MB', jpeg, 10 * 1024 * 1024 + 1, /has 10\.0 MB, and at most 10 are kept/u],
])('a photo %s is refused and leaves no file', (_, photo, size, why) => {
  const { notebook, boil, folder } = withBoil();
  expect(() => notebook.addPhoto(boil, photo, new Uint8Array(size))).toThrow(why);
  expect(existsSync(join(folder, 'photos'))).toBe(false);
});

test('a check finds a photo that is gone, one that was changed, and a page that does not hold together', () => {
  const { notebook, boil, folder } = withBoil();
  const photo = notebook.addPhoto(boil, jpeg, picture);
  const file = join(folder, 'photos', boil, `${photo.id}.jpg`);
  expect(notebook.check().damaged).toBe(false);
  truncateSync(file, 3);
  expect(notebook.check().findings).toContain(`Boil ${boil}: the photo ${file} is not as it was kept.`);
  writeFileSync(file, picture);
  expect(notebook.check().damaged).toBe(false);
});

test('boils are found by name, pan, note and page, by the beginnings of words, whatever signs are typed', async () => {
  const { notebook, boil } = withBoil();
  const pans = [{ id: 'p1', name: 'Back pot' }];
  notebook.append(boil, [
    '{"t":1,"mark":{"kind":"note","text":"Niter like snow"}}',
    JSON.stringify({ t: 2, set: { pans } }),
  ]);
  const recording = JSON.stringify({ ...tarnHollow, name: 'Été', pans: [{ id: 'p1', name: 'Långpanna' }] });
  const other = (await notebook.importRecording([`${recording}\n{"t":0,"mark":{"kind":"note","text":"windy"}}\n`], 'f'))
    .boil.boil;
  notebook.keepPage(boil, { colour: 'amber' });
  notebook.keepPage(boil, { colour: 'copper' });
  for (const words of ['sunday', 'NIT', 'snow niter', 'back', 'copper', '"copper" OR (', 'pot* sun'])
    expect(notebook.search(words), words).toEqual(words === '"copper" OR (' ? [] : [boil]);
  for (const words of ['ete', 'lang', 'WINDY']) expect(notebook.search(words), words).toEqual([other]);
  for (const words of ['amber', 'snow windy', '', '()"*']) expect(notebook.search(words), words).toEqual([]);
});

test('copies are whole, dated, and only the newest stay', () => {
  const { notebook, boil, folder } = withBoil();
  const photo = notebook.addPhoto(boil, jpeg, picture);
  const to = join(scratchFolder(), 'stick');
  writeFileSync(join(folder, 'other.txt'), '');
  const copies = [1, 2, 3].map((round) => {
    notebook.append(boil, [`{"t":${round}}`]);
    return notebook.backup(to, 2);
  });
  expect(readdirSync(to).toSorted()).toEqual(
    ['photos', ...copies.slice(1).map((path) => path.slice(to.length + 1))].toSorted(),
  );
  const copied = scratchFolder();
  writeFileSync(join(copied, 'notebook.sqlite'), readFileSync(copies[1]!));
  expect([...scratchNotebook(copied).entries(boil)]).toEqual(['{"t":1}', '{"t":2}']);
  expect(existsSync(join(to, 'photos', boil, `${photo.id}.jpg`))).toBe(true);
  expect(() => notebook.backup(join(folder, 'other.txt', 'x'), 2)).toThrow(/no copy of the notebook could be made/u);
});
