// The `start` command: opens the screen in a desktop window where Electron's runtime is there, else in the browser.
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { platform } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import open from 'open';
import { ensureScreenBuilt } from '../web/screen-build.ts';
import { PROGRAM_FOLDER, programFile } from '../program/program-files.ts';
import { dataFolder } from '../host/data-folder.ts';
import { CommandProblem } from './failure.ts';
import { runLive } from './live.ts';

/** Starts no boil; goes on with one that was running. */
export async function start(options: { data?: string }): Promise<void> {
  const electron = electronRuntime(PROGRAM_FOLDER);
  if (electron !== null && hasDisplay(process.env)) return openWindow(electron, options);
  process.stdout.write(`This is no desktop window, because ${whyNoWindow(electron)}.\n`);
  return runLive({ ...options, http: 0 }, async ({ host, output, served }) => {
    if (host.running !== null) output.watching(host.running.boil, host.running.entries);
    if (served !== null && hasDisplay(process.env)) await openBrowser(served.url);
  });
}

/** The path of Electron's program, or null when its runtime was not downloaded. */
export function electronRuntime(project: string): string | null {
  const folder = join(project, 'node_modules/electron');
  const named = join(folder, 'path.txt');
  if (!existsSync(named)) return null;
  const program = join(folder, 'dist', readFileSync(named, 'utf8').trim());
  return existsSync(program) ? program : null;
}

/** Whether a window could be shown here. */
export function hasDisplay(environment: NodeJS.ProcessEnv): boolean {
  if (platform() === 'darwin' || platform() === 'win32') return true;
  return Boolean(environment['DISPLAY'] ?? environment['WAYLAND_DISPLAY']);
}

async function openWindow(electron: string, options: { data?: string }): Promise<void> {
  await ensureScreenBuilt();
  const environment = { ...process.env, PANWARDEN_DATA: dataFolder(options.data) };
  const main = fileURLToPath(programFile('../../electron/main', import.meta.url));
  const child = spawn(electron, [main], { cwd: PROGRAM_FOLDER, stdio: 'inherit', env: environment });
  const code = await new Promise<number | null>((closed, failed) => {
    child.once('error', failed);
    child.once('close', closed);
  });
  if (code !== 0) throw new CommandProblem('The desktop window ended with an error.', 1);
}

function whyNoWindow(electron: string | null): string {
  if (electron !== null) return 'there is no display here';
  return existsSync(join(PROGRAM_FOLDER, 'node_modules/electron'))
    ? 'the runtime of Electron is not installed; "npx install-electron" gets it'
    : 'this copy of the program comes without one';
}

/** A browser that does not open is no failure: the address was printed. */
async function openBrowser(url: string): Promise<void> {
  try {
    const child = await open(url);
    child.once('error', () => {});
  } catch {
    process.stderr.write('The browser could not be opened: open the address yourself.\n');
  }
}
