// Recordings that somebody made to do harm are refused or limited in words, in flat memory, and write nowhere but in the folder.
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { ownFolder, panwarden } from './program.ts';

const own = ownFolder();
afterAll(() => own.remove());

const header = { recording: 'panwarden', version: 1, started: '2027-04-18T07:30:00-07:00' };
const lines = (...values: unknown[]) => values.map((value) => `${JSON.stringify(value)}\n`).join('');
let count = 0;
const taken = (text: string) => {
  count += 1;
  return panwarden('import', own.write(`${count}.boil.jsonl`, text), '--data', own.path(`data-${count}`));
};

test.each([
  [
    '10,000 probes',
    lines({
      ...header,
      ports: [{ id: 'A' }],
      probes: Array.from({ length: 10_000 }, (_, i) => ({ id: `${i}`, port: 'A', channel: 'T' })),
    }),
    /line 1.*probes/,
  ],
  [
    'deep JSON in the header',
    `{"recording":"panwarden","x":${'['.repeat(400_000)}${']'.repeat(400_000)}}\n`,
    /line 1.*nested deeper/,
  ],
  ['UTF-16', Buffer.from(`\uFEFF${lines(header)}`, 'utf16le').toString('latin1'), /line 1/],
  ['a packed file', `PK\u0003\u0004${'\u0000\u0001\n'.repeat(1000)}`, /line 1.*no JSON/],
  ['a header of 2 MB', lines({ ...header, name: 'x'.repeat(2_000_000) }), /line 1.*longer than/],
  [
    'a number beyond all',
    `{"recording":"panwarden","version":1,"started":"2027-04-18T07:30:00Z","site":{"altitude_m":1e999}}\n`,
    /line 1.*altitude_m/,
  ],
  ['no line end at all', 'x'.repeat(3_000_000), /line 1/],
])('%s is refused in one sentence', (_name, text, sentence) => {
  const { status, stdout, stderr } = taken(text);
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(sentence);
  expect(stderr.length).toBeLessThan(1000);
});

test('bad lines in the middle are left out in words, and the rest is kept', () => {
  const { status, stdout, stderr } = taken(
    lines(header, { t: 1, port: 'A', line: 'T1=99C' }) +
      `{"t":2,"mark":${'['.repeat(1000)}${']'.repeat(1000)}}\n{"t":1e300}\n{"t":3,"port":"A","line":"${'x'.repeat(2_000_000)}"}\n{"t":4}\n`,
  );
  expect([status, stdout]).toEqual([0, expect.stringContaining('"entries":2')]);
  expect(stderr).toMatch(/line 3 was left out[\s\S]*line 4 was left out[\s\S]*line 5 was left out/);
});

test('a path, a script and prototype names are names, and everything stays in the folder', () => {
  const before = readdirSync(own.folder).length;
  const name = '../../../<script>alert(1)</script>\u0000=1+1';
  const { status, stdout } = taken(
    lines({ ...header, name, __proto__: null, constructor: 1 }) + '{"t":1,"__proto__":{"polluted":1}}\n',
  );
  expect([status, stdout]).toEqual([0, expect.stringContaining('"boil":"2027-04-18-script-alert-1-script-1-1"')]);
  expect(readdirSync(own.folder)).toHaveLength(before + 2);
  const data = own.path(`data-${count}`);
  const to = own.path('out.boil.jsonl');
  expect(panwarden('export', 'latest', '--to', to, '--data', data).status).toBe(0);
  expect(readFileSync(to, 'utf8')).toContain(JSON.stringify(name).slice(1, -1));
  expect(panwarden('export', 'latest', '--to', own.path('out.csv'), '--data', data).status).toBe(0);
});

/** Peak memory of an import that reads 50 MB from a pipe, as the kernel counts it, MB. */
async function peakMegabytes(start: string, piece: string): Promise<{ peak: number; stderr: string }> {
  const importer = fileURLToPath(new URL('./import-from-pipe.ts', import.meta.url));
  count += 1;
  const child = spawn(process.execPath, [importer, own.path(`data-${count}`)], { stdio: ['pipe', 'pipe', 'pipe'] });
  let [stdout, stderr] = ['', ''];
  child.stdout.on('data', (chunk: Buffer) => (stdout += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (stderr += chunk.toString()));
  const closed = once(child, 'close');
  // It may refuse before everything is sent.
  child.stdin.on('error', () => {});
  child.stdin.write(start);
  for (let sent = 0; sent < 50_000_000 && child.exitCode === null; sent += piece.length) {
    if (!child.stdin.write(piece)) await Promise.race([once(child.stdin, 'drain').catch(() => {}), closed]);
  }
  child.stdin.end();
  await closed;
  return { peak: Number(stdout), stderr };
}

test.each([
  ['lines of a board', lines(header), lines({ t: 1, port: 'A', line: 'T1=99.25C' }).repeat(2000), /^$/],
  ['lines that are none', lines(header), 'noise\n'.repeat(10_000), /100001 lines are no entries, and 0 are/],
  ['one line without an end', '', 'x'.repeat(100_000), /line 1/],
  ['a pack of other units', '[{"n":"a","v":1}', ',{"n":"a","u":"V","v":1}'.repeat(3000), /breaks off/],
])('50 MB of %s: memory stays under 250 MB', async (_name, start, piece, sentence) => {
  const { peak, stderr } = await peakMegabytes(start, piece);
  expect(stderr).toMatch(sentence);
  expect(peak).toBeGreaterThan(20);
  expect(peak).toBeLessThan(250);
});
