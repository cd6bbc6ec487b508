// Runs the person's own command of the second channel: without a shell, for ten seconds at most, its output ignored.
import { spawn } from 'node:child_process';

const LONGEST_MS = 10_000;

/**
 * Runs `command` (a program and its arguments) with the sentence as one more argument, which also stands in
 * PANWARDEN_CALL. Resolves with null, or with a sentence that says what failed. Never rejects.
 */
export function runCommand(
  command: readonly string[],
  sentence: string,
  longestMs = LONGEST_MS,
): Promise<string | null> {
  const [program = '', ...rest] = command;
  const failed = (why: string): string => `Your second-channel command ${program} failed: ${why}.`;
  return new Promise((resolve) => {
    try {
      const child = spawn(program, [...rest, sentence], {
        shell: false,
        stdio: 'ignore',
        windowsHide: true,
        timeout: longestMs,
        killSignal: 'SIGKILL',
        env: { ...process.env, PANWARDEN_CALL: sentence },
      });
      child.once('error', (error) => resolve(failed(error.message)));
      child.once('exit', (code, signal) => {
        if (code === 0) resolve(null);
        else if (signal === null) resolve(failed(`it ended with ${code}`));
        else
          resolve(failed(signal === 'SIGKILL' ? `it took longer than ${longestMs / 1000} s` : `it ended by ${signal}`));
      });
    } catch (error) {
      resolve(failed((error as Error).message));
    }
  });
}
