// Makes the screen with Vite when it is missing or older than what it is made from.
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { PROGRAM_FOLDER } from '../program/program-files.ts';

/** What the screen may import, and what that imports in its turn: the schemas of protocol hold numbers of core. */
const MADE_FROM = ['src/screen', 'src/protocol', 'src/language', 'src/core', 'vite.config.ts', 'package-lock.json'];

/** Builds under way in this process, by project: whoever asks meanwhile waits for the same one. */
const underWay = new Map<string, Promise<void>>();

/** The folder to serve: as it came in a package, built if it has to be in a checkout. Throws with a sentence when it cannot be. */
export async function ensureScreenBuilt(project = PROGRAM_FOLDER): Promise<string> {
  const folder = join(project, 'dist/screen');
  const page = join(folder, 'index.html');
  const builtMs = existsSync(page) ? statSync(page).mtimeMs : Number.NEGATIVE_INFINITY;
  if (newestMs(MADE_FROM.map((name) => join(project, name))) > builtMs) await buildOnce(project, folder);
  return folder;
}

async function buildOnce(project: string, folder: string): Promise<void> {
  const building = underWay.get(project) ?? buildBeside(project, folder);
  underWay.set(project, building);
  try {
    await building;
  } finally {
    underWay.delete(project);
  }
}

/** When the newest of these files, and of those in these folders, was changed; a missing one counts as never. */
function newestMs(paths: readonly string[]): number {
  const times = paths.flatMap((path) => {
    if (!existsSync(path)) return [];
    if (!statSync(path).isDirectory()) return [statSync(path).mtimeMs];
    const files = readdirSync(path, { recursive: true, encoding: 'utf8' }).map((name) => join(path, name));
    return files.map((file) => statSync(file)).flatMap((stat) => (stat.isFile() ? [stat.mtimeMs] : []));
  });
  return times.reduce((newest, time) => Math.max(newest, time), Number.NEGATIVE_INFINITY);
}

/** Built beside the old one and put in its place when it is whole: another copy may be serving that one. */
async function buildBeside(project: string, folder: string): Promise<void> {
  const fresh = `${folder}.${process.pid}`;
  await build(project, fresh);
  rmSync(folder, { recursive: true, force: true });
  renameSync(fresh, folder);
}

function build(project: string, into: string): Promise<void> {
  const vite = join(project, 'node_modules/vite/bin/vite.js');
  return new Promise((built, failed) => {
    const child = spawn(process.execPath, [vite, 'build', '--logLevel', 'warn', '--outDir', into, '--emptyOutDir'], {
      cwd: project,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    const hear = (chunk: Buffer) => (said += chunk.toString());
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('error', failed);
    child.on('close', (code) => {
      if (code === 0) built();
      else failed(new Error(`The screen could not be built; run "npm ci" and try again. ${said.trim()}`));
    });
  });
}
