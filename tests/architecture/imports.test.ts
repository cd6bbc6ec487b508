// Proves that a wrong import is refused with its rule's sentence: on small files in a folder laid out like ours, never in src.
import { execFile } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';

const project = fileURLToPath(new URL('../../', import.meta.url));
let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'panwarden-imports-'));
  for (const file of ['.dependency-cruiser.cjs', 'package.json', 'tsconfig.json']) {
    await copyFile(join(project, file), join(folder, file));
  }
  await symlink(join(project, 'node_modules'), join(folder, 'node_modules'), 'dir');
});

afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

/** Lays the files out, runs the rules over them, and takes the files away again. */
async function judged(files: Record<string, string>): Promise<{ code: number; said: string }> {
  for (const [path, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
  const options = ['--config', '.dependency-cruiser.cjs', '--output-type', 'err-long', 'src'];
  const result = await new Promise<{ code: number; said: string }>((resolve) => {
    const command = [join(folder, 'node_modules/.bin/depcruise'), ...options];
    execFile(process.execPath, command, { cwd: folder }, (error, stdout, stderr) => {
      resolve({ code: error === null ? 0 : Number(error.code), said: `${stdout}${stderr}`.replace(/\s+/gu, ' ') });
    });
  });
  await rm(join(folder, 'src'), { recursive: true });
  return result;
}

const importing = (path: string): string => `import * as other from '${path}';\nexport const it = other;\n`;
const other = 'export const other = 1;\n';

test('right imports pass', { timeout: 30_000 }, async () => {
  const { code, said } = await judged({
    'src/core/quantities/units.ts': other,
    'src/protocol/messages.ts': importing('../core/quantities/units.ts'),
    'src/ingest/read-line.ts': importing('../protocol/messages.ts'),
    'src/host/boil-run.ts': `${importing('../ingest/read-line.ts')}export * from 'node:fs';\n`,
    'src/screen/main.ts': importing('../core/quantities/units.ts'),
    'src/web/serve.ts': importing('../host/boil-run.ts'),
  });
  expect({ code, said }).toMatchObject({ code: 0 });
});

const pure = 'core runs without Node and without npm packages: take what you need as an input.';
const screenKnows = 'the screen knows protocol, language and core/quantities only, and talks to the host by messages.';

const wrong: [from: string, imports: string, sentence: string][] = [
  ['src/core/pan/reads-files.ts', 'node:fs', pure],
  ['src/core/pan/has-a-schema.ts', 'zod', pure],
  [
    'src/core/pan/sends.ts',
    '../../protocol/wrong.ts',
    'core imports nothing but core: what it needs from outside is handed in.',
  ],
  ['src/protocol/wrong.ts', '../ingest/wrong.ts', 'protocol imports core only.'],
  ['src/ingest/wrong.ts', '../notebook/wrong.ts', 'ingest knows core and protocol only.'],
  ['src/notebook/wrong.ts', '../host/wrong.ts', 'notebook knows core and protocol only.'],
  ['src/screen/asks-the-host.ts', '../host/wrong.ts', screenKnows],
  ['src/screen/models-pans.ts', '../core/pan/sends.ts', screenKnows],
  ['src/host/wrong.ts', '../web/wrong.ts', 'host serves web, cli and electron and imports none of them.'],
  ['src/web/wrong.ts', '../cli/wrong.ts', 'web wraps the host and knows neither cli nor screen.'],
  ['src/cli/wrong.ts', '../screen/asks-the-host.ts', 'the commands know everything but the screen.'],
  ['src/screen/draws.ts', 'chart.js', 'only screen/charts imports chart.js.'],
  [
    'src/core/plan/is-needed.ts',
    './needs-itself.ts',
    'two files that need each other are one thing, or the wrong two.',
  ],
];

let wrongly = { code: 0, said: '' };

beforeAll(async () => {
  const files = Object.fromEntries(wrong.map(([from, imports]) => [from, importing(imports)]));
  wrongly = await judged({ ...files, 'src/core/plan/needs-itself.ts': importing('./is-needed.ts') });
}, 30_000);

test('wrong imports end the check with a failure', () => {
  expect(wrongly.code).toBeGreaterThan(0);
});

test.each(wrong)('%s importing %s is refused with a sentence', (from, _imports, sentence) => {
  // Each finding reads: error rule-name: from → to, then the rule's sentence.
  const findings = wrongly.said.split(' error ').filter((finding) => finding.includes(`: ${from} `));
  expect(findings.join('\n')).toContain(sentence);
});
