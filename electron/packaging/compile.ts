// Makes JavaScript of the program's TypeScript, for Node runs no TypeScript in an installed package.
import { spawnSync } from 'node:child_process';
import { copyFileSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { PROGRAM_FOLDER } from '../../src/program/program-files.ts';

/** A plain script that the window's page loads, and the picture of the desktop's bar. */
const AS_THEY_ARE = ['preload.cjs', 'watching.png'];
/** The compiler takes along only the catalogue that is imported; the others are found in their folder. */
const CATALOGUES = 'src/language';
const INTO = join(PROGRAM_FOLDER, 'dist/program');

/** Compiles src (but for the screen) and electron into dist/program, emptied before. Throws when the compiler refuses. */
export function compileProgram(): void {
  rmSync(INTO, { recursive: true, force: true });
  const compiler = join(PROGRAM_FOLDER, 'node_modules/typescript7/bin/tsc');
  const words = [compiler, '-p', join(PROGRAM_FOLDER, 'electron/packaging/tsconfig.json')];
  const done = spawnSync(process.execPath, words, { encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`The program could not be compiled: ${done.stdout}${done.stderr}`.trim());
  for (const name of AS_THEY_ARE) copyFileSync(join(PROGRAM_FOLDER, 'electron', name), join(INTO, 'electron', name));
  for (const name of readdirSync(join(PROGRAM_FOLDER, CATALOGUES)).filter((each) => each.endsWith('.json')))
    copyFileSync(join(PROGRAM_FOLDER, CATALOGUES, name), join(INTO, CATALOGUES, name));
}
