// Starts the program again when an error stops it, so that the boil goes on with a gap of seconds.
import { app, dialog, shell } from 'electron';
import { say } from './spoken.ts';

const FLAG = '--started-again=';
const MOST = 3;
const WITHIN_MS = 600_000;

/** Whether this start is one after an error. */
export const wasStartedAgain = (words: readonly string[]): boolean => words.some((word) => word.startsWith(FLAG));

/**
 * The words to start again with, which carry the moments (ms since 1970) of such starts; null when an error came three
 * times in ten minutes, for then a start helps nobody.
 */
export function wordsToStartAgain(words: readonly string[], nowMs: number): string[] | null {
  const before =
    words
      .findLast((word) => word.startsWith(FLAG))
      ?.slice(FLAG.length)
      .split(',') ?? [];
  const recent = before.map(Number).filter((time) => nowMs - time < WITHIN_MS);
  if (recent.length >= MOST) return null;
  return [...words.filter((word) => !word.startsWith(FLAG)), `${FLAG}${[...recent, nowMs].join(',')}`];
}

/** Ends this program and starts it again, or says that it cannot go on. */
export function startAgain(error: Error): void {
  process.stderr.write(`${error.stack ?? error.message}\n`);
  const args = wordsToStartAgain(process.argv.slice(1), Date.now());
  if (args !== null) app.relaunch({ args });
  else {
    shell.beep();
    dialog.showErrorBox(say('window.stopped'), say('window.stopped.todo', { error: error.message }));
  }
  app.exit(1);
}
