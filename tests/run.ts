// What `npm test` does: checks, builds the screen and runs the tests, and says at the end how long each of them took.
import { spawnSync } from 'node:child_process';

/** Words after `npm test --` go to vitest: a project, a folder, a file. */
const STEPS = [
  ['checks', 'npm', ['run', '-s', 'check']],
  ['build', 'npm', ['run', '-s', 'build']],
  ['tests', 'vitest', ['run', ...process.argv.slice(2)]],
] as const;

const took: string[] = [];
for (const [step, command, words] of STEPS) {
  const sinceMs = performance.now();
  // npm and vitest are scripts of another kind on Windows, which only its shell can start.
  const { status } = spawnSync(command, words, { stdio: 'inherit', shell: process.platform === 'win32' });
  took.push(`${step} ${((performance.now() - sinceMs) / 1000).toFixed(0)} s`);
  process.exitCode = status ?? 1;
  if (status !== 0) break;
}
console.log(took.join(', '));
