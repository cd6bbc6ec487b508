// The frame around every command that runs a boil: host, screen server, output, and a clean end on a signal.
import type { Setup } from '../protocol/header-schema.ts';
import { createHost } from '../host/create-host.ts';
import type { Host } from '../host/host.ts';
import { languages } from '../host/languages.ts';
import { systemClock } from '../host/clock.ts';
import { systemPower } from '../host/power.ts';
import { systemSleep } from '../host/sleep-settings.ts';
import { ensureScreenBuilt } from '../web/screen-build.ts';
import { serveHost } from '../web/serve.ts';
import type { Served } from '../web/serve.ts';
import { readCommands } from './commands-in.ts';
import { dataFolder } from '../host/data-folder.ts';
import { CommandProblem } from './failure.ts';
import { bellOf, jsonOutput, plainOutput } from './live-output.ts';
import type { LiveOutput } from './live-output.ts';
import { printer } from './printer.ts';

export interface LiveOptions {
  data?: string;
  json?: boolean;
  every?: number;
  http?: number;
}

export interface Live {
  host: Host;
  output: LiveOutput;
  served: Served | null;
  /** Ends the program as a signal would. */
  stop(): void;
}

const PLAIN_EVERY_SECONDS = 60;
const NOTHING_SOUNDS =
  'Nothing here can sound: there is no terminal to ring a bell, and no screen. Add --http, or let somebody stand by.';
/** A signal is answered within 2 s, whatever still hangs on a socket or a port. */
const LONGEST_CLOSE_MS = 1500;

/**
 * Opens the folder, serves the screen when asked to, lets `begin` start what is to run, and resolves when a
 * signal came or it was stopped.
 */
export async function runLive(
  options: LiveOptions & { setup?: Setup | undefined; practice?: boolean },
  begin: (live: Live) => Promise<void>,
): Promise<void> {
  let stop = (): void => {};
  const stopped = new Promise<void>((resolve) => (stop = resolve));
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP'] as const) process.once(signal, stop);
  // Nobody reads on: without a screen there is nobody left to watch for.
  const out = printer(process.stdout, () => options.http === undefined && stop());
  const ring = bellOf();
  const output = options.json ? jsonOutput(out) : plainOutput(out, ring);
  const every = options.every ?? (options.json ? null : PLAIN_EVERY_SECONDS);
  const everyMs = every === null ? undefined : Math.round(every * 1000);
  const folder = dataFolder(options.data);
  const host = await createHost({
    folder,
    setup: options.setup,
    practice: options.practice,
    everyMs,
    listener: output,
    // Without a screen the terminal's bell is the sound, or whatever the program does that reads the JSON lines.
    pagesSound: options.http !== undefined,
    tellOtherwise: (sentence) => output.call(sentence(languages().tongue('en'))),
    readPower: systemPower,
    readSleep: systemSleep,
  });
  if (options.http === undefined && options.json !== true && ring === null) output.notice({ sentence: NOTHING_SOUNDS });
  let served: Served | null = null;
  let stopReading = (): void => {};
  try {
    served = options.http === undefined ? null : await serveScreen(host, options.http, output);
    await begin({ host, output, served, stop });
    if (options.json) stopReading = readCommands(process.stdin, host, out.lineNow, () => served === null && stop());
    await stopped;
  } finally {
    stopReading();
    await within(LONGEST_CLOSE_MS, closeAll(host, served));
    await within(LONGEST_CLOSE_MS / 5, out.flush());
  }
}

async function serveScreen(host: Host, port: number, output: LiveOutput): Promise<Served> {
  const folder = await ensureScreenBuilt();
  try {
    const served = await serveHost(host, { port, folder, nowMs: systemClock().monotonicMs });
    output.serving(served.url);
    host.servedAt(served.url);
    return served;
  } catch (error) {
    throw new CommandProblem((error as Error).message, 2);
  }
}

/** What was noted is written down before anything else is closed. */
async function closeAll(host: Host, served: Served | null): Promise<void> {
  await host.close();
  await served?.close();
}

async function within(milliseconds: number, work: Promise<void>): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<void>((resolve) => (timer = setTimeout(resolve, milliseconds)));
  await Promise.race([work, late]);
  clearTimeout(timer);
}
