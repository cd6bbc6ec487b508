// A boil is begun, added to, ended and listed; settings stay; what cannot be done is said.
import { DatabaseSync } from 'node:sqlite';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { openForWriting } from '../../src/notebook/database.ts';
import { exportRecording } from '../../src/notebook/export-recording.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';
import { tarnHollow } from './tarn-hollow.ts';

test('a boil keeps its entries byte for byte, and goes on after the notebook was closed', () => {
  const folder = scratchFolder();
  const first = openNotebook(folder);
  const { boil } = first.begin(tarnHollow, 'live');
  expect(boil).toBe('2027-04-18-sundays-run');
  const texts = [
    '{"t":0,"port":"A","state":"open"}',
    '{ "t":1000, "later" : [ 1,2 ],"é":"☃" }',
    '{"t":1000,"port":"A","line":"T1=98C"}',
  ];
  expect(first.append(boil, texts.slice(0, 2))).toBe(2);
  first.close();
  const second = scratchNotebook(folder);
  expect(second.running()).toEqual({
    boil,
    kind: 'live',
    name: "Sunday's run",
    started: tarnHollow.started,
    seconds: 1,
    entries: 2,
    running: true,
  });
  expect(second.append(boil, texts.slice(2))).toBe(3);
  expect(second.header(boil)).toEqual(tarnHollow);
  const lines = [...exportRecording(second, 'latest')];
  expect(lines).toEqual([JSON.stringify(tarnHollow), ...texts].map((line) => `${line}\n`));
});

test('the end is an entry at the greater of the two times, and nothing can follow it', () => {
  const notebook = scratchNotebook();
  const { boil } = notebook.begin(tarnHollow, 'live');
  notebook.append(boil, ['{"t":5000}']);
  expect(notebook.end(boil, 4000)).toBe(2);
  expect([...notebook.entries(boil)]).toEqual(['{"t":5000}', '{"t":5000,"run":"ended"}']);
  expect(notebook.running()).toBe(null);
  const over = /the boil "2027-04-18-sundays-run" is over already/u;
  expect(() => notebook.append(boil, ['{"t":6000}'])).toThrow(over);
  expect(() => notebook.end(boil, 7000)).toThrow(over);
});

test('boils of one day and name are told apart, newest start first, and an unknown one is answered with what exists', () => {
  const notebook = scratchNotebook();
  expect(() => notebook.find('latest')).toThrow('there is no boil "latest": the notebook is empty');
  for (const started of ['2027-04-18T07:30:00-07:00', '2027-04-18T23:00:00-07:00', '2027-04-18T09:00:00-07:00']) {
    notebook.end(notebook.begin({ ...tarnHollow, started }, 'live').boil, 0);
  }
  const names = ['2027-04-18-sundays-run-2', '2027-04-18-sundays-run-3', '2027-04-18-sundays-run'];
  expect(notebook.boils().map(({ boil }) => boil)).toEqual(names);
  expect(notebook.find('latest').boil).toBe(names[0]);
  expect(() => notebook.find('monday')).toThrow(`there is no boil "monday": the notebook has ${names.join(', ')}`);
});

test('one live boil runs at a time, and a practice boil beside it comes second', () => {
  const notebook = scratchNotebook();
  const practice = notebook.begin({ ...tarnHollow, name: 'Practice' }, 'practice');
  const live = notebook.begin(tarnHollow, 'live');
  expect(notebook.running()).toEqual(live);
  expect(() => notebook.begin(tarnHollow, 'live')).toThrow(`the boil "${live.boil}" is still running`);
  notebook.end(live.boil, 0);
  expect(notebook.running()).toEqual(practice);
});

test.each([
  ['no JSON', 'this is no entry of a boil: it is no JSON: "no JSON"'],
  ['{"t":\n10}', 'this is no entry of a boil: it holds a line end'],
  ['{"t":9}', 'this entry comes too late: its t of 9 is before the 10 that is kept'],
])('%j is refused with all that came with it', (text, sentence) => {
  const notebook = scratchNotebook();
  const { boil } = notebook.begin(tarnHollow, 'live');
  notebook.append(boil, ['{"t":10}']);
  expect(() => notebook.append(boil, ['{"t":10,"x":1}', text])).toThrow(sentence);
  expect([...notebook.entries(boil)]).toEqual(['{"t":10}']);
  expect(notebook.find(boil).entries).toBe(1);
});

test('a header that does not hold together begins nothing', () => {
  const notebook = scratchNotebook();
  expect(() => notebook.begin({ ...tarnHollow, pans: [{ id: 'p1', probe: 'A/1' }] }, 'live')).toThrow(
    'no boil can begin so: pans[0].probe names "A/1", which is not among the probes',
  );
  expect(notebook.boils()).toEqual([]);
});

test('settings stay, the last one wins, and one that was never kept is undefined', () => {
  const folder = scratchFolder();
  const first = openNotebook(folder);
  first.keepSetting('settings', { temperature: 'C' });
  first.keepSetting('settings', { temperature: 'F', none: null });
  first.close();
  const second = scratchNotebook(folder);
  expect(second.setting('settings')).toEqual({ temperature: 'F', none: null });
  expect(second.setting('setup')).toBe(undefined);
});

test('each commit is synced before it returns, and waiting for another program stays short', () => {
  const database = openForWriting(scratchFolder());
  onTestFinished(() => database.close());
  expect(database.prepare('PRAGMA journal_mode').get()).toEqual({ journal_mode: 'wal' });
  // 2 is FULL (sqlite.org/pragma.html#pragma_synchronous).
  expect(database.prepare('PRAGMA synchronous').get()).toEqual({ synchronous: 2 });
  expect(database.prepare('PRAGMA busy_timeout').get()).toEqual({ timeout: 150 });
});

test('a reader works beside the writer, sees each commit, and changes nothing', () => {
  const folder = scratchFolder();
  const writer = scratchNotebook(folder);
  const { boil } = writer.begin(tarnHollow, 'live');
  writer.append(
    boil,
    Array.from({ length: 500 }, (_, t) => `{"t":${t}}`),
  );
  const reader = scratchNotebook(folder, { readOnly: true });
  const entries = reader.entries(boil)[Symbol.iterator]();
  entries.next();
  expect(writer.append(boil, ['{"t":500}'])).toBe(501);
  expect(reader.find(boil).entries).toBe(501);
  // What it had begun to read ends where the boil ended then.
  expect([...{ [Symbol.iterator]: () => entries }]).toHaveLength(499);
  expect(() => reader.append(boil, ['{"t":600}'])).toThrow(/opened for reading only/u);
});

test('a folder without a notebook reads as an empty one, and none is made', () => {
  const folder = join(scratchFolder(), 'none');
  const notebook = scratchNotebook(folder, { readOnly: true });
  expect(notebook.boils()).toEqual([]);
  expect(notebook.check().damaged).toBe(false);
  expect(() => new DatabaseSync(join(folder, 'notebook.sqlite'), { readOnly: true })).toThrow();
});
