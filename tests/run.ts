// What `npm test` does: builds the screen and runs the tests, the checks beside them; says at the end how long each of them took.
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { constants, setPriority } from 'node:os';

const took: string[] = [];

/** Starts one step; `status` is its exit code. Children of its own are of its priority, too. */
function start(
  step: string,
  command: string,
  words: readonly string[],
): { child: ChildProcess; status: Promise<number> } {
  const sinceMs = performance.now();
  // npm and vitest are scripts of another kind on Windows, which only its shell can start.
  const child = spawn(command, words, { stdio: 'inherit', shell: process.platform === 'win32' });
  const status = new Promise<number>((resolve) => {
    child.once('error', () => resolve(1));
    child.once('close', (code) => resolve(code ?? 1));
  });
  return {
    child,
    status: status.then((code) => {
      took.push(`${step} ${((performance.now() - sinceMs) / 1000).toFixed(0)} s`);
      return code;
    }),
  };
}

const checks = start('checks', 'npm', ['run', '-s', 'check']);
// They take what the tests leave of the processor: there is always a little, and some tests have deadlines.
if (checks.child.pid !== undefined) setPriority(checks.child.pid, constants.priority.PRIORITY_LOW);
const built = await start('build', 'npm', ['run', '-s', 'build']).status;
// Words after `npm test --` go to vitest: a project, a folder, a file.
const tests = built === 0 ? start('tests', 'vitest', ['run', ...process.argv.slice(2)]) : null;
const checked = await checks.status;
// Nobody waits minutes to read that a type is wrong.
if (checked !== 0) tests?.child.kill();
process.exitCode = Math.max(built, checked, (await tests?.status) ?? 0);
console.log(took.join(', '));
