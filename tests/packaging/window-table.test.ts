// The table of the window's rules says which test holds each, and where: every test that it names is there under that name.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const TESTS = join(import.meta.dirname, '..');
const text = readFileSync(join(TESTS, '../DEVELOPERS.md'), 'utf8');
const [, part = ''] = text.split("### 6.1 The window's rules\n");
const rows = [...part.split('\n## ')[0]!.matchAll(/^\| (.+) \| (`.+) \| (.+) \|$/gm)].map(([, rule, tests, where]) => ({
  rule: rule!,
  where: where!,
  tests: tests!.split('<br>').map((one) => /^`(.+\.test\.ts)` (.+)$/.exec(one)?.slice(1) ?? [one, '']),
}));

test('the table has its rows, each with a test and a place', () => {
  expect(rows.length).toBeGreaterThan(25);
  expect(new Set(rows.map(({ where }) => where))).toEqual(new Set(['run here', 'needs the runtime']));
});

test.each(rows)('$rule', ({ tests, where }) => {
  for (const [file, name] of tests) {
    const source = readFileSync(join(TESTS, file!), 'utf8');
    const titles = [...source.matchAll(/(?:\btest|\])\)?\(\s*(['"])(.+?)\1,/g)].map(([, , title]) => title);
    expect(titles, file).toContain(name);
    // One file drives the real window; what it holds is left out where there is none.
    expect(file === 'electron/window.test.ts', file).toBe(where === 'needs the runtime');
  }
});
