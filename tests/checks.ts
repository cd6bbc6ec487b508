// What `npm run check` does: types, rules, imports, form and what nothing uses, two beside each other; says all that is wrong.
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import packageJson from '../package.json' with { type: 'json' };

/** The scripts of package.json named so, the longest first, so that none of them is left running alone. */
const CHECKS = Object.keys(packageJson.scripts).filter((name) => name.startsWith('check:'));

/** Resolves to what the check said where it failed, and to null where all is well. */
function failureOf(check: string): Promise<string | null> {
  return new Promise((resolve) => {
    let said = '';
    const child = spawn('npm', ['run', '-s', check], { shell: process.platform === 'win32' });
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => (said += chunk.toString()));
    child.on('error', (error) => (said += error.message));
    child.on('close', (code) => resolve(code === 0 ? null : `npm run ${check}\n${said}`));
  });
}

const waiting = [...CHECKS];
async function work(): Promise<void> {
  for (let check = waiting.shift(); check !== undefined; check = waiting.shift()) {
    const failure = await failureOf(check);
    if (failure === null) continue;
    console.error(failure);
    process.exitCode = 1;
  }
}
await Promise.all(Array.from({ length: Math.min(4, availableParallelism()) }, work));
