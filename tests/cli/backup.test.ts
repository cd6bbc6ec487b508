// A copy after each boil, by a command and brought back by another; a second program is told where the first one is.
import { existsSync, readdirSync } from 'node:fs';
import { afterEach, expect, test } from 'vitest';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { tarnHollow } from '../notebook/tarn-hollow.ts';
import { ownFolder, panwarden, Program } from './program.ts';

const own = ownFolder();
afterEach(own.remove);

function boilIn(folder: string): string {
  const notebook = openNotebook(folder);
  const { boil } = notebook.begin(tarnHollow, 'live');
  notebook.append(boil, ['{"t":0}', '{"t":1000}']);
  notebook.close();
  return boil;
}

test('a copy is made at the end of a boil and by the command, and one command brings it back', () => {
  const data = own.path('data');
  const boil = boilIn(data);
  expect(panwarden('end', boil, '--data', data).status).toBe(0);
  expect(readdirSync(own.path('data/backups')).filter((name) => name.endsWith('.sqlite'))).toHaveLength(1);
  const made = panwarden('backup', '--to', own.path('stick'), '--data', data);
  expect(made.status).toBe(0);
  const copy = /^A copy of the notebook is in (.+\.sqlite)\.\n$/u.exec(made.stdout)?.[1] ?? '';
  const elsewhere = own.path('other');
  const restored = panwarden('restore', copy, '--data', elsewhere);
  expect(restored).toMatchObject({
    status: 0,
    stdout: `The notebook of ${copy} is back in ${elsewhere}, with 1 boil.\n`,
  });
  expect(panwarden('boils', '--json', '--data', elsewhere).lines()).toEqual([
    expect.objectContaining({ kind: 'boil', boil, entries: 3, running: false }),
  ]);
  expect(panwarden('restore', copy, '--data', data).stdout).toMatch(
    /The one before is set aside as notebook-replaced-/u,
  );
});

test('a stick that is not there fails the copy in words, and not the end of the boil', () => {
  const data = own.path('data');
  const boil = boilIn(data);
  const notebook = openNotebook(data);
  notebook.keepSetting('settings', { backup_folder: '/proc/no-stick' });
  notebook.close();
  const ended = panwarden('end', boil, '--data', data);
  expect(ended.status).toBe(0);
  expect(ended.stderr).toContain(
    'The boil is over and kept, but no copy of the notebook could be made in /proc/no-stick',
  );
  expect(panwarden('backup', '--data', data)).toMatchObject({
    status: 1,
    stderr: expect.stringContaining('/proc/no-stick'),
  });
});

test('the second program on a folder is told where the first one is, and nothing is brought back under it', async () => {
  const data = own.path('data');
  boilIn(data);
  const first = new Program('watch', '--json', '--http', '0', '--data', data);
  const { url } = await first.line(({ kind }) => kind === 'serving');
  const second = panwarden('watch', '--data', data);
  expect(second.status).toBe(2);
  expect(second.stderr).toContain(`another program watches a boil in ${data}, and its screen is at ${String(url)}`);
  const copy = /(\/\S+\.sqlite)\.\n/u.exec(panwarden('backup', '--data', data).stdout)?.[1] ?? '';
  const restored = panwarden('restore', copy, '--data', data);
  expect(restored).toMatchObject({ status: 2, stderr: expect.stringContaining('while a boil is watched in') });
  await first.kill('SIGTERM');
  expect(existsSync(own.path('data/watching.json'))).toBe(false);
});
