// A damaged notebook is set aside whole, a new one begins at once, what can be read is salvaged, and all of that is told.
import { copyFileSync, existsSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { openForWatching } from '../../src/notebook/rescue.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';
import { tarnHollow } from './tarn-hollow.ts';

const FIRST = '2027-04-17-boil';
const SECOND = '2027-04-18-sundays-run';
const text = (t: number) => JSON.stringify({ t, port: 'A', line: `T1=9${t % 10}.${(t * 7919) % 97}C` });
const texts = (from: number, to: number) => Array.from({ length: to - from }, (_, index) => text(from + index));

/** Two boils, the second running with 3000 entries, of which some stand in a block and some in rows. */
function filled(folder = scratchFolder()): { folder: string; file: string } {
  const notebook = openNotebook(folder);
  const { name: _, ...nameless } = tarnHollow;
  const first = notebook.begin({ ...nameless, started: '2027-04-17T08:00:00-07:00' }, 'live').boil;
  notebook.append(first, texts(0, 5000));
  notebook.end(first, 5000);
  const { boil } = notebook.begin(tarnHollow, 'live');
  for (let t = 0; t < 3000; t += 500) notebook.append(boil, texts(t, t + 500));
  notebook.keepPage(first, { taste: 'caramel' });
  notebook.keepSetting('settings', { theme: 'dark' });
  notebook.close();
  return { folder, file: join(folder, 'notebook.sqlite') };
}

function opened(folder: string): ReturnType<typeof openForWatching> {
  const found = openForWatching(folder);
  onTestFinished(() => found.notebook.close());
  return found;
}

const asideNames = (folder: string) => readdirSync(folder).filter((name) => name.startsWith('notebook-damaged-'));

test('a sound notebook is opened without a word', () => {
  const { folder } = filled();
  expect(opened(folder).told).toEqual([]);
  expect(asideNames(folder)).toEqual([]);
});

test('garbage is set aside, a new notebook begins, and nothing could be read is said', () => {
  const { folder, file } = filled();
  const garbage = Buffer.alloc(100_000, 'these are not the bytes of a notebook');
  writeFileSync(file, garbage);
  const { notebook, told } = opened(folder);
  const [aside] = asideNames(folder);
  expect(aside).toMatch(/^notebook-damaged-\d{4}-\d\d-\d\dT\d{6}\.sqlite$/u);
  expect(told).toEqual([
    `The notebook in ${folder} was damaged (file is not a database). It was set aside as ${aside}, nothing of it was deleted, and a new one was begun.`,
    'Nothing could be read of the one that was set aside.',
  ]);
  expect(readFileSync(join(folder, aside!)).equals(garbage)).toBe(true);
  expect(notebook.boils()).toEqual([]);
  notebook.begin(tarnHollow, 'live');
});

test('an empty file is no new user: it is set aside, and the newest copy is named', () => {
  const { folder, file } = filled();
  const copies = scratchNotebook(folder).backup(join(folder, 'backups'), 10);
  truncateSync(file, 0);
  for (const ending of ['-wal', '-shm']) rmSync(`${file}${ending}`, { force: true });
  expect(() => openNotebook(folder)).toThrow('its file is empty: something has emptied it');
  const { told } = opened(folder);
  expect(told[0]).toContain('was damaged (its file is empty: something has emptied it). It was set aside as');
  expect(told.at(-1)).toBe(`The newest copy is ${copies}: "panwarden restore ${copies}" brings it back.`);
});

test('of half a file what is still there is salvaged, and the boil that ran goes on', () => {
  const { folder, file } = filled();
  truncateSync(file, Math.floor(readFileSync(file).length / 2));
  const { notebook, told } = opened(folder);
  expect(told[0]).toContain('It was set aside as notebook-damaged-');
  expect(told[1]).toMatch(
    /^Salvaged into the new one: 2027-04-17-boil with \d+ of 5001 entries, 2027-04-18-sundays-run with \d+ of 3000 entries\.$/u,
  );
  expect(notebook.running()?.boil).toBe(SECOND);
  for (const boil of [FIRST, SECOND]) {
    const had = [...notebook.entries(boil)];
    const all = new Set([...texts(0, 5000), '{"t":5000,"run":"ended"}']);
    expect(had.every((entry) => all.has(entry))).toBe(true);
  }
  expect(notebook.check().damaged).toBe(false);
  notebook.append(SECOND, ['{"t":9000}']);
});

test('overwritten pages cost what stood on them, and everything else is salvaged', () => {
  const { folder, file } = filled();
  const bytes = readFileSync(file);
  const page = Math.floor(bytes.indexOf('{"t":2600,') / 4096) * 4096;
  bytes.fill(0xa5, page, page + 4096);
  writeFileSync(file, bytes);
  const { notebook, told } = opened(folder);
  const read = notebook.find(SECOND).entries;
  expect(read).toBeGreaterThan(2900);
  expect(read).toBeLessThan(3000);
  expect(told.slice(1)).toEqual([
    `Salvaged into the new one: ${FIRST} with all 5001 entries, ${SECOND} with ${read} of 3000 entries.`,
  ]);
  expect([...notebook.entries(FIRST)]).toEqual([...texts(0, 5000), '{"t":5000,"run":"ended"}']);
  expect(notebook.page(FIRST)).toEqual({ taste: 'caramel' });
  expect(notebook.search('caramel')).toEqual([FIRST]);
  expect(notebook.setting('settings')).toEqual({ theme: 'dark' });
  const [aside] = asideNames(folder);
  expect(readFileSync(join(folder, aside!)).equals(bytes)).toBe(true);
});

/** A folder as a kill leaves it: the last commits stand in the write-ahead file alone. */
function killedFolder(): { folder: string; file: string } {
  const running = scratchFolder();
  filled(running);
  const notebook = scratchNotebook(running);
  for (let t = 3000; t < 3100; t += 1) notebook.append(SECOND, [text(t)]);
  const folder = scratchFolder();
  for (const name of readdirSync(running)) copyFileSync(join(running, name), join(folder, name));
  return { folder, file: join(folder, 'notebook.sqlite') };
}

test('after a kill the write-ahead file brings every entry back', () => {
  const { folder } = killedFolder();
  const { notebook, told } = opened(folder);
  expect(told).toEqual([]);
  expect(notebook.find(SECOND).entries).toBe(3100);
});

test.each([
  ['cut', (wal: string) => truncateSync(wal, Math.floor(readFileSync(wal).length / 2))],
  ['missing', (wal: string) => rmSync(wal)],
])('a write-ahead file that is %s costs its commits, and it is told how many', (_, spoil) => {
  const { folder, file } = killedFolder();
  expect(existsSync(`${file}-wal`)).toBe(true);
  spoil(`${file}-wal`);
  rmSync(`${file}-shm`, { force: true });
  const before = scratchNotebook(folder, { readOnly: true }).check();
  expect(before.damaged).toBe(true);
  const { notebook, told } = opened(folder);
  const there = notebook.find(SECOND).entries;
  expect(there).toBeLessThan(3100);
  const sentence = `Boil ${SECOND}: 3100 entries were kept, and ${there} are there: the file notebook.sqlite-wal was cut or taken away, or an older notebook.sqlite was put back. Where you still have it, put it back while no program runs here.`;
  expect(told).toEqual([sentence]);
  expect(before.findings).toContain(sentence);
  expect([...notebook.entries(SECOND)]).toEqual(texts(0, there));
  notebook.close();
  expect(opened(folder).told).toEqual([]);
});

test('a write-ahead file without its notebook goes aside and is not read into the new one', () => {
  const { folder, file } = killedFolder();
  rmSync(file);
  const { notebook, told } = opened(folder);
  expect(notebook.boils()).toEqual([]);
  expect(asideNames(folder).some((name) => name.endsWith('.sqlite-wal'))).toBe(true);
  expect(told).toEqual([expect.stringContaining(`Boil ${SECOND}: 3100 entries were kept, and 0 are there`)]);
});

test('a stop between setting aside and taking the place is finished by the next start', () => {
  const { folder, file } = filled();
  copyFileSync(file, join(folder, 'notebook.sqlite.waiting'));
  rmSync(file);
  const { notebook } = opened(folder);
  expect(notebook.find(SECOND).entries).toBe(3000);
  expect(existsSync(join(folder, 'notebook.sqlite.waiting'))).toBe(false);
});
