// What npm runs before it packs: the program compiled, the screen built, licences and bill of materials written.
import { fileURLToPath } from 'node:url';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { compileProgram } from './compile.ts';
import { writeLicences } from './licences.ts';

/** Everything that a package is made of; throws with a sentence. */
export async function makeParts(): Promise<void> {
  compileProgram();
  await ensureScreenBuilt();
  await writeLicences();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await makeParts();
