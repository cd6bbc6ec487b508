// The screen is built when it is missing or older than what it is made from, and left alone otherwise.
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';

let project: string;
beforeEach(() => (project = mkdtempSync(join(tmpdir(), 'panwarden-'))));
afterEach(() => rmSync(project, { recursive: true }));

/** A file of the project, last changed at so many seconds. */
function put(name: string, changedS: number, text = ''): string {
  const path = join(project, name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  utimesSync(path, changedS, changedS);
  return path;
}

/** Stands in for Vite: makes a page in the folder it is told, or fails. */
const VITE = 'node_modules/vite/bin/vite.js';
const BUILDS = `
const { mkdirSync, writeFileSync } = require('node:fs');
const into = process.argv[process.argv.indexOf('--outDir') + 1];
mkdirSync(into, { recursive: true });
writeFileSync(into + '/index.html', process.argv[2]);
`;

test('a build that is newer than its sources is served as it is', async () => {
  put(VITE, 1, 'process.exit(1)');
  put('src/screen/main.tsx', 100);
  put('dist/screen/index.html', 200);
  expect(await ensureScreenBuilt(project)).toBe(join(project, 'dist/screen'));
});

test.each([
  ['missing', null],
  ['older than the protocol', 'src/protocol/messages.ts'],
  ['older than a language', 'src/language/fr.json'],
  ['older than what protocol takes of core', 'src/core/boil/questioned.ts'],
])('a build that is %s is made', async (_name, changed) => {
  put(VITE, 1, BUILDS);
  put('src/screen/deep/part.tsx', 100);
  if (changed !== null) {
    put('dist/screen/index.html', 200);
    put(changed, 300);
  }
  const folder = await ensureScreenBuilt(project);
  expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('build');
  expect(readdirSync(join(project, 'dist'))).toEqual(['screen']);
});

test('who asks for it at the same time waits for the same build', async () => {
  put(VITE, 1, BUILDS);
  put('src/screen/main.tsx', 100);
  const folders = await Promise.all([1, 2, 3].map(() => ensureScreenBuilt(project)));
  expect(new Set(folders)).toEqual(new Set([join(project, 'dist/screen')]));
  expect(readdirSync(join(project, 'dist'))).toEqual(['screen']);
});

test('a build that fails is said in a sentence with what to do', async () => {
  put(VITE, 1, "console.error('no such module'); process.exit(1)");
  put('src/screen/main.tsx', 100);
  await expect(ensureScreenBuilt(project)).rejects.toThrow(/could not be built; run "npm ci".*no such module/);
});
