// Checks the form of the project's own files: what each opens with, what none is called, how long they are, and that no test is left out.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const project = new URL('../../', import.meta.url);
const rooms = ['src', 'electron', 'tests', 'fixtures', 'firmware-notes'];
const code = /\.(ts|tsx|js|cjs|mjs|css|html)$/u;

interface SourceFile {
  path: string;
  text: string;
}

function filesOf(room: string, ending: RegExp): SourceFile[] {
  const root = new URL(`${room}/`, project);
  return readdirSync(fileURLToPath(root), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && ending.test(entry.name))
    .map((entry) => `${entry.parentPath}/${entry.name}`)
    .map((path) => ({ path: path.slice(fileURLToPath(project).length), text: readFileSync(path, 'utf8') }));
}

const everything = rooms.flatMap((room) => filesOf(room, code));
const programs = everything.filter(({ path }) => /\.(ts|tsx)$/u.test(path));
const tests = programs.filter(({ path }) => path.startsWith('tests/'));
const sources = programs.filter(({ path }) => path.startsWith('src/') || path.startsWith('electron/'));

const pathsOf = (files: SourceFile[]): string[] => files.map(({ path }) => path);

test('there are files to judge', () => {
  expect(sources.length).toBeGreaterThan(80);
  expect(tests.length).toBeGreaterThan(30);
});

test('every file opens with a sentence on what it is responsible for', () => {
  const opening = /^(#!.*\n)?(\/\/ [A-Z`].{20,}[.:]|\/\* [A-Z`])/u;
  expect(pathsOf(programs.filter(({ text }) => !opening.test(text)))).toEqual([]);
});

test('no file is a drawer for odds and ends', () => {
  const drawer = /(^|\/)(utils?|helpers?|misc|common)(\/|\.[a-z]+$)|[-.](utils?|helpers?)\.[a-z]+$/iu;
  expect(pathsOf(everything).filter((path) => drawer.test(path))).toEqual([]);
});

test('no text speaks of a file that is a drawer for odds and ends', () => {
  const named = new RegExp(
    `['"\`/](${['util', 'helper'].map((word) => `${word}s?`).join('|')})(/|\\.(ts|js)\\b|['"\`])`,
    'iu',
  );
  const own = 'tests/architecture/form.test.ts';
  expect(pathsOf(everything.filter(({ path, text }) => path !== own && named.test(text)))).toEqual([]);
});

test('no test is left out and none runs alone', () => {
  const word = ['only', 'skip', 'todo'].join('|');
  const leftOut = new RegExp(`\\b(test|it|describe|suite)(\\.[a-z]+)*\\.(${word})\\b`, 'u');
  const allowed = /^tests\/electron\//u;
  expect(pathsOf(tests.filter(({ path, text }) => leftOut.test(text) && !allowed.test(path)))).toEqual([]);
});

test('no test sleeps in the pure rooms', () => {
  const sleeping = /\b(setTimeout|setInterval|useFakeTimers)\b|timers\/promises/u;
  const pure = tests.filter(({ path }) => /^tests\/(core|protocol|stories)\//u.test(path));
  expect(pathsOf(pure.filter(({ text }) => sleeping.test(text)))).toEqual([]);
});

test('core holds no async and no await: it is arithmetic over its inputs', () => {
  const core = sources.filter(({ path }) => path.startsWith('src/core/'));
  expect(pathsOf(core.filter(({ text }) => /^[^/]*\b(async|await)\b/mu.test(text)))).toEqual([]);
});

test('modules are small: half of them under 90 lines, nine in ten under 350, none over 450', () => {
  const lines = sources.map(({ text }) => text.split('\n').length).sort((a, b) => a - b);
  expect(lines[Math.floor(lines.length / 2)]).toBeLessThan(90);
  expect(lines[Math.floor(lines.length * 0.9)]).toBeLessThan(350);
  expect(lines.at(-1)).toBeLessThan(450);
});

test('tests mirror the source: each folder under tests/core and tests/ingest has its room', () => {
  for (const room of ['core', 'ingest', 'protocol', 'notebook']) {
    const at = (top: string): Set<string> =>
      new Set(
        programs
          .filter(({ path }) => path.startsWith(`${top}/${room}/`))
          .map(({ path }) => path.split('/').slice(1, -1).join('/')),
      );
    const rooms = at('src');
    expect([...at('tests')].filter((folder) => !rooms.has(folder))).toEqual([]);
  }
});
