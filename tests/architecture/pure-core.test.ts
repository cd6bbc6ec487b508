// Proves that the lint keeps clocks, chance and the world out of core, each with its sentence; nothing is written to disk.
import { ESLint } from 'eslint';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const eslint = new ESLint({ cwd: fileURLToPath(new URL('../../', import.meta.url)) });

async function complaints(path: string, code: string): Promise<string[]> {
  const results = await eslint.lintText(code, { filePath: path });
  return results.flatMap((result) =>
    result.messages.filter(({ severity }) => severity === 2).map(({ message }) => message),
  );
}

const noWorld = 'core has no clock, no chance and no world: time, random numbers and effects are inputs.';
const noChance = 'core has no chance of its own: use the seeded generator of core/simulation.';

test.each([
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
])('%s in core is refused', { timeout: 30_000 }, async (code, sentence) => {
  const found = await complaints('src/core/pan/invented.ts', `export const it = ${code};\n`);
  expect(found).toHaveLength(1);
  expect(found[0]).toContain(sentence);
});

test.each(['globalThis.Date.now()', 'globalThis.setTimeout(() => {}, 1)', "globalThis['Math'].random()"])(
  '%s in core is no way round',
  { timeout: 30_000 },
  async (code) => {
    expect(await complaints('src/core/pan/invented.ts', `export const it = ${code};\n`)).not.toEqual([]);
  },
);

test('what core may not, host may: it holds the one clock', { timeout: 30_000 }, async () => {
  expect(await complaints('src/host/invented.ts', 'export const it = Date.now();\n')).toEqual([]);
});

test('plain arithmetic in core passes', { timeout: 30_000 }, async () => {
  expect(await complaints('src/core/pan/invented.ts', 'export const it = Math.max(1, 2);\n')).toEqual([]);
});

test('an enum is refused: Node runs the files as they stand', { timeout: 30_000 }, async () => {
  const found = await complaints('src/host/invented.ts', 'export enum Stage { Off }\n');
  expect(found.join(' ')).toContain('Node runs this file as it stands: use a union of strings instead of an enum.');
});

test('chart.js outside of screen/charts is refused', { timeout: 30_000 }, async () => {
  const code = "import { Chart } from 'chart.js';\nexport const it = Chart;\n";
  expect((await complaints('src/screen/pans/invented.ts', code)).join(' ')).toContain(
    'only screen/charts imports chart.js.',
  );
  expect(await complaints('src/screen/charts/invented.ts', code)).toEqual([]);
});
