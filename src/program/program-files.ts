// Where the program's own files lie, and which version they are: in a checkout as TypeScript, in a package compiled.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** The folder with the program's package.json, above `from` (absolute). Throws where there is none. */
function folderAbove(from: string): string {
  if (existsSync(join(from, 'package.json'))) return from;
  const above = dirname(from);
  if (above === from) throw new Error('The package.json of this program is missing: install it again.');
  return folderAbove(above);
}

/** The folder of the program: a checkout, an installed package, or the archive of the desktop app. */
export const PROGRAM_FOLDER = folderAbove(import.meta.dirname);

/** The version as package.json names it. */
export const { version: VERSION } = JSON.parse(readFileSync(join(PROGRAM_FOLDER, 'package.json'), 'utf8')) as {
  version: string;
};

/** Another file of the program, named without its ending from the file at `url`: it ends as this one does. */
export function programFile(name: string, url: string): URL {
  return new URL(`${name}${import.meta.filename.endsWith('.js') ? '.js' : '.ts'}`, url);
}
