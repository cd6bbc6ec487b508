// Proves that the lint keeps clocks, chance and the world out of core, each with its sentence, in a scratch folder with our rules.
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const RULES = '.oxlintrc.jsonc';

const noWorld = 'core has no clock, no chance and no world: time, random numbers and effects are inputs.';
const noChance = 'core has no chance of its own: use the seeded generator of core/simulation.';
const CHART = "import { Chart } from 'chart.js';\nexport const it = Chart;\n";
const given = (code: string): string => `export const it = ${code};\n`;

const REFUSED: readonly [code: string, sentence: string][] = [
  ['Date.now()', noWorld],
  ['new Date()', noWorld],
  ['performance.now()', noWorld],
  ['setTimeout(() => {}, 1)', noWorld],
  ['setInterval(() => {}, 1)', noWorld],
  ['queueMicrotask(() => {})', noWorld],
  ['process.hrtime()', noWorld],
  ["fetch('/')", noWorld],
  ['crypto.randomUUID()', noWorld],
  ['console.log(1)', noWorld],
  ['document.title', noWorld],
  ['Math.random()', noChance],
];
const NO_WAY_ROUND = ['globalThis.Date.now()', 'globalThis.setTimeout(() => {}, 1)', "globalThis['Math'].random()"];

/** What is linted, by where it would stand. */
const FILES: ReadonlyMap<string, string> = new Map([
  ...REFUSED.map(([code], index) => [`src/core/pan/refused-${index}.ts`, given(code)] as const),
  ...NO_WAY_ROUND.map((code, index) => [`src/core/pan/round-${index}.ts`, given(code)] as const),
  ['src/host/clock.ts', given('Date.now()')],
  ['src/core/pan/plain.ts', given('Math.max(1, 2)')],
  ['src/screen/pans/chart.ts', CHART],
  ['src/screen/charts/chart.ts', CHART],
  ['electron/open.ts', 'export const it = (shell: { openPath(path: string): void }) => shell.openPath("x");\n'],
]);

let scratch: string;
let complaints: Map<string, string[]>;

beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'panwarden-lint-'));
  copyFileSync(join(ROOT, RULES), join(scratch, RULES));
  for (const [path, code] of FILES) {
    mkdirSync(dirname(join(scratch, path)), { recursive: true });
    writeFileSync(join(scratch, path), code);
  }
  const { stdout } = spawnSync(process.execPath, [join(ROOT, 'node_modules/oxlint/bin/oxlint'), '--format', 'json'], {
    cwd: scratch,
    encoding: 'utf8',
  });
  const said: { number_of_files: number; diagnostics: { filename: string; message: string; help?: string }[] } =
    JSON.parse(stdout);
  expect(said.number_of_files).toBe(FILES.size);
  complaints = new Map([...FILES.keys()].map((path) => [path, []]));
  for (const { filename, message, help = '' } of said.diagnostics)
    complaints.get(filename.replaceAll('\\', '/'))?.push(`${message} ${help}`);
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

test.each(REFUSED.map(([code, sentence], index) => ({ code, sentence, index })))(
  '$code in core is refused',
  ({ sentence, index }) => {
    const found = complaints.get(`src/core/pan/refused-${index}.ts`);
    expect(found).toHaveLength(1);
    expect(found?.[0]).toContain(sentence);
  },
);

test.each(NO_WAY_ROUND.map((code, index) => ({ code, index })))('$code in core is no way round', ({ index }) => {
  expect(complaints.get(`src/core/pan/round-${index}.ts`)).not.toEqual([]);
});

test('what core may not, host may: it holds the one clock', () => {
  expect(complaints.get('src/host/clock.ts')).toEqual([]);
});

test('plain arithmetic in core passes', () => {
  expect(complaints.get('src/core/pan/plain.ts')).toEqual([]);
});

test('chart.js outside of screen/charts is refused', () => {
  expect(complaints.get('src/screen/pans/chart.ts')?.join(' ')).toContain('only screen/charts imports chart.js.');
  expect(complaints.get('src/screen/charts/chart.ts')).toEqual([]);
});

test('the window leads nowhere out of the program', () => {
  expect(complaints.get('electron/open.ts')?.join(' ')).toContain('the window starts no other program.');
});
