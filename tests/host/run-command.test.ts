// The person's own command is a real program here: it gets the sentence as it is, no shell reads it, and it is ended in time.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { runCommand } from '../../src/host/run-command.ts';

let folder: string;
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'panwarden-'))));
afterEach(() => rmSync(folder, { recursive: true }));

const node = (script: string, ...more: string[]): string[] => [process.execPath, '-e', script, ...more];
const KEEP =
  "require('fs').writeFileSync(process.argv[1], JSON.stringify([process.argv.slice(2), process.env.PANWARDEN_CALL]))";

test('the sentence comes as the last argument and in the environment, untouched', async () => {
  const file = join(folder, 'said');
  const sentence = 'Panwarden: $(touch pwned); "Back pot" `x` | y & z > w';
  expect(await runCommand(node(KEEP, file, 'first'), sentence)).toBe(null);
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual([['first', sentence], sentence]);
});

test('a program that is not there is said', async () => {
  expect(await runCommand([join(folder, 'none')], 'x')).toMatch(/^Your second-channel command .*none failed: .*ENOENT/);
});

test('a program that fails is said with its code', async () => {
  expect(await runCommand(node('process.exit(3)'), 'x')).toMatch(/it ended with 3\.$/);
});

test('a program that does not end is ended, and that is said', async () => {
  expect(await runCommand(node('setInterval(() => {}, 1000); process.on("SIGTERM", () => {})'), 'x', 500)).toMatch(
    /it took longer than 0.5 s\.$/,
  );
});

test('an argument that no program can take is said, and throws nothing', async () => {
  expect(await runCommand(['a\0b'], 'x')).toMatch(/failed/);
});
