// What live boils taught is kept with them, goes with them, and can be forgotten; nothing else teaches.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import type { Learnt } from '../../src/core/boil/entries.ts';
import type { Notebook } from '../../src/notebook/contract.ts';
import { APPLICATION_ID, MIGRATIONS, NOTEBOOK_VERSION } from '../../src/notebook/schema.ts';
import { scratchFolder, scratchNotebook } from './scratch-folder.ts';
import { tarnHollow } from './tarn-hollow.ts';

const probes = [{ id: 'A/1', port: 'A', channel: 'T1', offset_c: 0.2 }];

function taught(name: string, mean = 0.4): Learnt {
  return { names: [name], mean: [mean], covariance: [[0.01]] };
}

/** Begins a live boil, keeps what it taught, and ends it. */
function boilThatTaught(notebook: Notebook, learnt: Learnt, started = tarnHollow.started): string {
  const { boil } = notebook.begin({ ...tarnHollow, started }, 'live');
  notebook.keepLearnt(boil, learnt, probes);
  notebook.end(boil, 0);
  return boil;
}

function changeDirectly(folder: string, sql: string): void {
  const database = new DatabaseSync(join(folder, 'notebook.sqlite'));
  database.exec(sql);
  database.close();
}

test('what boils taught is listed, the one begun last first, whatever the clock said', () => {
  const folder = scratchFolder();
  const notebook = scratchNotebook(folder);
  const first = boilThatTaught(notebook, taught('sap birch'));
  const second = boilThatTaught(notebook, taught('probe A/1'), '2001-01-01T00:00:00Z');
  const kept = { name: tarnHollow.name, probes, forgotten: [] };
  expect(scratchNotebook(folder, { readOnly: true }).learnt()).toEqual([
    { ...kept, boil: second, started: '2001-01-01T00:00:00Z', learnt: taught('probe A/1') },
    { ...kept, boil: first, started: tarnHollow.started, learnt: taught('sap birch') },
  ]);
});

test('a boil that learns on replaces what it had taught, and what was taken back is gone', () => {
  const notebook = scratchNotebook();
  const { boil } = notebook.begin(tarnHollow, 'live');
  notebook.keepLearnt(boil, taught('sap birch', 0.1), probes);
  notebook.keepLearnt(boil, taught('sap birch', 0.2), []);
  expect(notebook.learnt()).toMatchObject([{ learnt: { mean: [0.2] }, probes: [] }]);
  notebook.keepLearnt(boil, null, probes);
  expect(notebook.learnt()).toEqual([]);
});

test('practice, imported and ended boils teach nothing', async () => {
  const notebook = scratchNotebook();
  const practice = notebook.begin({ ...tarnHollow, name: 'Practice' }, 'practice').boil;
  const imported = (await notebook.importRecording([`${JSON.stringify(tarnHollow)}\n`], 'a.boil.jsonl')).boil.boil;
  const ended = notebook.begin({ ...tarnHollow, name: 'Over' }, 'live').boil;
  notebook.end(ended, 0);
  for (const boil of [practice, imported, ended]) {
    const sentence = `the boil "${boil}" is no live boil that runs: it teaches the next ones nothing`;
    expect(() => notebook.keepLearnt(boil, taught('sap birch'), probes)).toThrow(sentence);
  }
  expect(notebook.learnt()).toEqual([]);
});

test.each([
  [{ ...taught('sap birch'), mean: [Number.NaN] }, 'learnt.mean[0]'],
  [{ ...taught('sap birch'), covariance: [] }, 'a row and a column of the covariance'],
])('what does not hold together is refused: %j', (learnt, sentence) => {
  const notebook = scratchNotebook();
  const { boil } = notebook.begin(tarnHollow, 'live');
  expect(() => notebook.keepLearnt(boil, learnt, probes)).toThrow(sentence);
  expect(notebook.learnt()).toEqual([]);
});

test('a forgotten name is forgotten in all boils so far, the running one too, and taught anew by later ones', () => {
  const notebook = scratchNotebook();
  boilThatTaught(notebook, taught('sap birch'));
  const running = notebook.begin(tarnHollow, 'live').boil;
  notebook.forget('sap birch');
  notebook.forget('sap birch');
  notebook.keepLearnt(running, taught('sap birch'), probes);
  notebook.end(running, 0);
  expect(notebook.learnt().map(({ forgotten }) => forgotten)).toEqual([['sap birch'], ['sap birch']]);
  boilThatTaught(notebook, taught('sap birch'));
  expect(notebook.learnt()[0]?.forgotten).toEqual([]);
});

test('with a boil goes what it taught, and what of it was forgotten', () => {
  const folder = scratchFolder();
  const notebook = scratchNotebook(folder);
  const boil = boilThatTaught(notebook, taught('sap birch'));
  notebook.forget('sap birch');
  changeDirectly(folder, `DELETE FROM boil WHERE id = '${boil}'`);
  // What is remembered of its last entry would be told as a loss.
  rmSync(join(folder, 'last-kept.json'), { force: true });
  expect(notebook.learnt()).toEqual([]);
  expect(notebook.check().damaged).toBe(false);
});

test('a teaching that does not hold together is said by a check, and is used for nothing', () => {
  const folder = scratchFolder();
  const notebook = scratchNotebook(folder);
  const boil = boilThatTaught(notebook, taught('sap birch'));
  boilThatTaught(notebook, taught('probe A/1'));
  expect(notebook.check().damaged).toBe(false);
  const boilNumber = `(SELECT number FROM boil WHERE id = '${boil}')`;
  changeDirectly(folder, `UPDATE learnt SET taught = '{"learnt":{"names":["sap birch"]}}' WHERE boil = ${boilNumber}`);
  expect(notebook.learnt()).toHaveLength(1);
  const { damaged, findings } = notebook.check();
  expect(damaged).toBe(true);
  expect(findings[0]).toMatch(new RegExp(`^Boil ${boil}: what it taught does not hold together: .*learnt\\.mean`, 'u'));
});

/** A notebook as version 1 left it: one live boil with two entries, and a setting. */
function notebookOfVersion1(folder: string): void {
  const database = new DatabaseSync(join(folder, 'notebook.sqlite'));
  database.exec('PRAGMA journal_mode = WAL');
  database.exec(MIGRATIONS[0] ?? '');
  database.exec(`PRAGMA application_id = ${APPLICATION_ID}`);
  database.exec('PRAGMA user_version = 1');
  database
    .prepare("INSERT INTO boil VALUES (1, 'old', 'live', 'Old', ?, 0, ?, 1, 0, 2, 20)")
    .run(tarnHollow.started, JSON.stringify(tarnHollow));
  database.exec(`INSERT INTO entry VALUES (1, 1, 10, '{"t":10}'), (1, 2, 20, '{"t":20, "x" : 1}')`);
  database.exec(`INSERT INTO setting VALUES ('setup', '{"pans":[]}')`);
  database.close();
}

test('a notebook of version 1 is brought forward with all that it holds, and its boil can teach', () => {
  const folder = scratchFolder();
  notebookOfVersion1(folder);
  expect(() => scratchNotebook(folder, { readOnly: true })).toThrow(
    'is of an older version: open it once with "start"',
  );
  const notebook = scratchNotebook(folder);
  expect([...notebook.entries('old')]).toEqual(['{"t":10}', '{"t":20, "x" : 1}']);
  expect(notebook.headerText('old')).toBe(JSON.stringify(tarnHollow));
  expect(notebook.setting('setup')).toEqual({ pans: [] });
  notebook.keepLearnt('old', taught('sap birch'), probes);
  expect(notebook.learnt()).toMatchObject([{ boil: 'old' }]);
  expect(notebook.check().damaged).toBe(false);
  const database = new DatabaseSync(join(folder, 'notebook.sqlite'), { readOnly: true });
  expect(database.prepare('PRAGMA user_version').get()).toEqual({ user_version: NOTEBOOK_VERSION });
  database.close();
});
