// What to say of a file that was handed over: kept, there already, or no recording at all.
import type { FileAnswer } from '../client/link.ts';
import { say } from '../language/say.ts';
import { hostWords } from '../language/host-words.ts';

/** The first line of a recording is an object that says so; see the recording's own description. */
export function isRecording(start: string): boolean {
  const [line = ''] = start.split('\n', 1);
  return /^\uFEFF?\s*\{/u.test(line) && /"recording"\s*:\s*"panwarden"/u.test(line);
}

/** `known` are the boils that the notebook held before. */
export function importNews(
  file: string,
  answer: FileAnswer,
  isOne: boolean,
  known: readonly string[],
): { good: boolean; sentence: string } {
  if (!answer.ok) return { good: false, sentence: refusal(file, answer.why, isOne) };
  if (known.includes(answer.boil)) {
    return { good: true, sentence: say('notebook.had_it', { file }) };
  }
  return { good: true, sentence: say('notebook.taken_in', { file }) };
}

/** What the file is not comes before the cause, which a person may not care about. */
export function refusal(file: string, why: string, isOne: boolean): string {
  return say(isOne ? 'notebook.file_why' : 'notebook.no_recording', { file, why: hostWords(why) });
}
