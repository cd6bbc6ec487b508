// What `watch` and `practice` print: JSON lines for programs, or a plain table and a bell for a person.
import type { RunListener } from '../host/boil-run.ts';
import { alarmLine, readingLine } from './json-lines.ts';
import { alarmText, isCall, readingText } from './plain-text.ts';
import type { Printer } from './printer.ts';

export interface LiveOutput extends RunListener {
  serving(url: string): void;
  watching(boil: string, entries: number): void;
  /** A sentence for a person, on standard error. */
  notice(notice: { sentence: string }): void;
  /** A call that nobody answered or could hear, as a sentence. */
  call(sentence: string): void;
}

/** Rings the terminal's bell. */
export type Bell = () => void;

const BELL = '\u0007';

/** The bell of the terminal that this program writes to; null where it writes to none. */
export function bellOf(streams: readonly NodeJS.WriteStream[] = [process.stdout, process.stderr]): Bell | null {
  const terminal = streams.find((stream) => stream.isTTY);
  return terminal === undefined ? null : () => void terminal.write(BELL);
}

/** What happens, as JSON lines. */
export function jsonOutput(out: Printer): LiveOutput {
  const print = out.lineNow;
  return {
    serving: (url) => print(JSON.stringify({ kind: 'serving', url })),
    watching: (boil, entries) => print(JSON.stringify({ kind: 'watching', boil, entries })),
    alarm: (transition) => print(alarmLine(transition)),
    readings: (t, readings) => readings.forEach((reading) => print(readingLine(t, reading))),
    kept: (entries) => print(JSON.stringify({ kind: 'kept', entries })),
    notice: sayOnce(),
    // The program that reads the lines has been told of the alarm itself, and sees that nobody answers it.
    call: () => {},
  };
}

/** What happens, as sentences; `ring` sounds with each call, null for silence. */
export function plainOutput(out: Printer, ring: Bell | null): LiveOutput {
  const print = out.lineNow;
  return {
    serving: (url) => print(`The screen is at ${url}`),
    watching: (boil) => print(`Watching ${boil}. Ctrl-C stops the program.`),
    alarm(transition) {
      print(alarmText(transition));
      if (isCall(transition)) ring?.();
    },
    readings: (t, readings, header) => readings.forEach((reading) => print(readingText(t, reading, header))),
    notice: sayOnce(),
    call(sentence) {
      print(sentence);
      ring?.();
    },
  };
}

/** The same sentence is said again only after another. */
function sayOnce(): (notice: { sentence: string }) => void {
  const said = new Map<string, string>();
  return ({ sentence, ...rest }: { sentence: string; port?: string | null }) => {
    const about = rest.port ?? '';
    if (said.get(about) === sentence) return;
    said.set(about, sentence);
    process.stderr.write(`${sentence}\n`);
  };
}
