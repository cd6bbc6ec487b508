// `replay`: runs a recording through the fold as fast as it can and prints what it reads and calls.
import { createReadStream } from 'node:fs';
import type { Header } from '../core/boil/entries.ts';
import { startBoil } from '../core/boil/fold.ts';
import { foldTools } from '../host/fold-tools.ts';
import { Folding } from '../host/folding.ts';
import type { FoldingListener } from '../host/folding.ts';
import { readRecording, RecordingProblem } from '../protocol/recording.ts';
import type { RecordingItem } from '../protocol/recording.ts';
import { CommandProblem, fileTrouble } from './failure.ts';
import { alarmLine, readingLine } from './json-lines.ts';
import { patchedHeader, readPatch } from './patches.ts';
import { alarmText, readingText } from './plain-text.ts';
import { printer } from './printer.ts';
import type { Printer } from './printer.ts';

export interface ReplayOptions {
  json?: boolean;
  every?: number;
  with: string[];
}

const PLAIN_EVERY_SECONDS = 600;
const READ_BYTES = 262_144;
/** Beyond these, lines that were left out are only counted. */
const MOST_NAMED = 200;

/** Runs a recording again and prints what it reads and calls; throws a CommandProblem for a file that cannot be read. */
export async function replay(file: string, options: ReplayOptions): Promise<void> {
  const out = printer();
  const leftOut = new LeftOut(file);
  const patches = await Promise.all(options.with.map(readPatch));
  let folding: Folding | null = null;
  let lastT: number | null = null;
  let said = 0;
  const sayNotices = (): void => {
    const notices = folding?.state.notices ?? [];
    for (; said < notices.length; said += 1) process.stderr.write(`${file}: ${notices[said]!.sentence}\n`);
  };
  for await (const item of recordingItems(file)) {
    if (item.kind === 'header') folding = startFolding(patchedHeader(item.header, patches), options, out);
    else if (item.kind !== 'entry') leftOut.say(item.why);
    else {
      folding?.take(item.entry, item.raw);
      sayNotices();
      lastT = item.entry.t;
    }
    if (out.isClosed) return;
    if (out.isFull) await out.flush();
  }
  if (lastT !== null) folding?.reach(lastT);
  leftOut.sum();
  await out.flush();
}

async function* recordingItems(file: string): AsyncGenerator<RecordingItem> {
  try {
    yield* readRecording(createReadStream(file, { highWaterMark: READ_BYTES }));
  } catch (error) {
    if (error instanceof RecordingProblem) throw new CommandProblem(`${file}: ${error.message}.`, 2);
    throw (error as NodeJS.ErrnoException).syscall === undefined ? error : fileTrouble(file, error);
  }
}

function startFolding(header: Header, options: ReplayOptions, out: Printer): Folding {
  const listener = options.json ? jsonListener(out) : plainListener(out, header);
  const every = options.every ?? (options.json ? null : PLAIN_EVERY_SECONDS);
  return new Folding(startBoil(header), foldTools, listener, every === null ? null : Math.round(every * 1000));
}

/** A replay works out conditions; what people answered stands in the recording itself. */
const CONDITION_EVENTS: readonly string[] = ['raised', 'escalated', 'cleared'];

function jsonListener(out: Printer): FoldingListener {
  return {
    alarm: (transition) => CONDITION_EVENTS.includes(transition.event) && out.line(alarmLine(transition)),
    readings: (t, readings) => readings.forEach((reading) => out.line(readingLine(t, reading))),
  };
}

function plainListener(out: Printer, header: Header): FoldingListener {
  out.line(`${header.name ?? 'Boil'}, started ${header.started} (a replay)`);
  return {
    alarm: (transition) => out.line(alarmText(transition)),
    readings: (t, readings) => readings.forEach((reading) => out.line(readingText(t, reading, header))),
  };
}

/** Names what was left out on standard error, and counts it. */
class LeftOut {
  readonly #file: string;
  #count = 0;

  constructor(file: string) {
    this.#file = file;
  }

  say(why: string): void {
    this.#count += 1;
    if (this.#count <= MOST_NAMED) process.stderr.write(`${this.#file}: ${why}.\n`);
  }

  sum(): void {
    if (this.#count === 0) return;
    const lines = this.#count === 1 ? '1 line was' : `${this.#count} lines were`;
    process.stderr.write(`${this.#file}: ${lines} left out; the rest was used.\n`);
  }
}
