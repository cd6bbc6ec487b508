// Stands in for Electron's runtime where a package is made without it, and runs the packed window on the stand-in of its modules.
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Marks where the fuses lie in Electron's program; version 1, nine of them, as they come. */
const FUSE_MARK = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const FUSES_AS_THEY_COME = '101100011';

/** A folder that the packager takes for an unpacked runtime of Linux. */
export function standInRuntime(folder: string): string {
  mkdirSync(join(folder, 'resources'), { recursive: true });
  mkdirSync(join(folder, 'locales'));
  const wire = Buffer.from([1, FUSES_AS_THEY_COME.length]);
  const program = Buffer.concat([Buffer.from(FUSE_MARK), wire, Buffer.from(FUSES_AS_THEY_COME)]);
  writeFileSync(join(folder, 'electron'), program, { mode: 0o755 });
  for (const name of ['LICENSE', 'LICENSES.chromium.html']) writeFileSync(join(folder, name), name);
  return folder;
}

const RECORDER = `#!/usr/bin/env node
const { cpSync, statSync, writeFileSync } = require('node:fs');
const { basename, join } = require('node:path');
const words = process.argv.slice(2);
const handed = words.filter((word) => word.startsWith('/') || word.includes('=/')).map((word) => word.split('=')[0]);
const files = handed.filter((path) => statSync(path, { throwIfNoEntry: false })?.isFile());
for (const path of files) cpSync(path, join(__dirname, 'handed', basename(path)));
writeFileSync(join(__dirname, 'words.json'), JSON.stringify(words));
`;

/** Stands in for the tool that makes Debian packages: puts by, beside itself, what the packager handed to it. */
export function standInDebianTool(folder: string): string {
  mkdirSync(join(folder, 'handed'), { recursive: true });
  const tool = join(folder, 'tool.cjs');
  writeFileSync(tool, RECORDER, { mode: 0o755 });
  return tool;
}

const STAND_IN = new URL('../electron/electron-stand-in.ts', import.meta.url).href;
const SCRIPT = `
import { registerHooks } from 'node:module';
registerHooks({
  resolve: (name, context, next) =>
    name === 'electron' ? { url: ${JSON.stringify(STAND_IN)}, shortCircuit: true } : next(name, context),
});
const electron = await import('electron');
await import(process.env.WINDOW_MAIN);
electron.app.becomeReady();
const until = async (isSo) => { while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 20)); };
await until(() => electron.dialog.errors.length > 0 || electron.BrowserWindow.opened[0]?.addresses.length > 0);
const page = await electron.session.defaultSession.schemes.get('app')?.(new Request('app://panwarden/index.html'));
const said = { errors: electron.dialog.errors, page: (await page?.text()) ?? null };
process.stdout.write(JSON.stringify(said), () => process.exit());
`;

/** Starts a packed window's main file (absolute path) with a data folder of its own; what it showed. */
export function runWindow(main: string, data: string): { errors: string[]; page: string | null } {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', SCRIPT], {
    cwd: fileURLToPath(new URL('.', import.meta.url)),
    env: { ...process.env, NODE_OPTIONS: '', WINDOW_MAIN: main, PANWARDEN_DATA: data },
    encoding: 'utf8',
    timeout: 30_000,
  });
  if (status !== 0) throw new Error(`The window ended with ${status}: ${stderr}`);
  return JSON.parse(stdout) as { errors: string[]; page: string | null };
}
