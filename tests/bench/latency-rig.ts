// From a byte on a pseudo terminal to an alarm in the page, measured: the real program, the real page, one clock for both.
/// <reference lib="dom" />
import { execFile, spawn } from 'node:child_process';
import { createReadStream, existsSync, readFileSync, rmSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { Browser, BrowserContext, Page } from 'playwright';
import { LAPTOP, startChromium } from '../browser/chromium.ts';
import { plugIn } from '../cli/pseudo-terminals.ts';
import type { Board } from '../cli/pseudo-terminals.ts';
import { Program, ownFolder } from '../cli/program.ts';
import type { Line } from '../cli/program.ts';
import type { LoopDelays } from './latency-loop-watch.ts';

const PANS = 12;
/** The board speaks twice a second beside what is measured. */
const SAYS_EVERY_MS = 500;
const LONGEST_WAIT_MS = 20_000;
const run = promisify(execFile);
const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

const MAIN = here('../../src/cli/main.ts');
const nowMs = (): number => performance.timeOrigin + performance.now();

export interface Rig {
  page: Page;
  context: BrowserContext;
  program: Program;
  url: string;
  /** Breaks pan after pan's probe by a `nan`; gives for each how long after the write its call stood in the page, ms. */
  alarms(count: number): Promise<number[]>;
  /** Says a line so many times a second into the second port, until it is stopped. */
  flood(linesASecond: number): Promise<() => Promise<void>>;
  /** How long the program's event loop was held up since this was asked last. */
  loopDelays(): Promise<LoopDelays>;
  /** Silences the board of the pans for good; how many lines it said, and how many of them stand in the boil. */
  sampled(): Promise<{ said: number; kept: number }>;
  /** The clocks of page and process were compared to so much, ms. */
  clockErrorMs: number;
  close(): Promise<void>;
}

/** So often it is looked for lines that are not kept yet. */
const LOOKS = 10;

const setup = (paths: { a: string; b: string }) => ({
  name: 'Tarn Hollow, invented',
  ports: [
    { id: 'A', path: paths.a },
    { id: 'B', path: paths.b },
  ],
  probes: [
    ...Array.from({ length: PANS }, (_, i) => ({ id: `A/${i + 1}`, port: 'A', channel: `T${i + 1}` })),
    { id: 'B/1', port: 'B', channel: 'T1' },
  ],
  pans: [
    ...Array.from({ length: PANS }, (_, i) => ({ id: `p${i + 1}`, name: `Pan ${i + 1}`, probe: `A/${i + 1}` })),
    { id: 'loud', name: 'Loud pan', probe: 'B/1' },
  ],
});

export async function latencyRig(): Promise<Rig> {
  const own = ownFolder();
  const [a, b] = [await plugIn(own.path('a')), await plugIn(own.path('b'))];
  const file = own.write('setup.json', setup({ a: a.path, b: b.path }));
  const loopFile = own.path('loop.json');
  const program = watched(loopFile, ['--data', own.path('data'), '--setup', file, '--json', '--http', '0']);
  const url = String((await program.line(({ kind }) => kind === 'serving'))['url']);
  await program.line(({ kind }) => kind === 'watching');
  const browser = await startChromium();
  const board = new SpeakingBoard(a);
  const { context, page, seen } = await openPage(browser, url);
  const { offsetMs, errorMs } = await comparedClocks(page);
  // A dozen lines tell the program how often the board speaks.
  await program.until(() => Number(program.lines.findLast(({ kind }) => kind === 'kept')?.['entries'] ?? 0) > 12);
  let stopFlood: () => Promise<void> = () => Promise.resolve();
  // The splitter drops the first, which may have lost its beginning.
  const saidBefore = 1;

  return {
    page,
    context,
    program,
    url,
    clockErrorMs: errorMs,
    async alarms(count) {
      const found: number[] = [];
      for (let i = 0; i < count; i += 1)
        found.push((await oneAlarm({ board, program, seen }, (i % PANS) + 1)) - offsetMs);
      return found;
    },
    async flood(linesASecond) {
      await stopFlood();
      stopFlood = feed(`${b.path}-far`, linesASecond);
      return stopFlood;
    },
    async loopDelays() {
      rmSync(loopFile, { force: true });
      program.process.kill('SIGUSR2');
      await untilTrue(() => existsSync(loopFile), 'the program to tell of its event loop');
      return JSON.parse(readFileSync(loopFile, 'utf8')) as LoopDelays;
    },
    async sampled() {
      board.stop();
      const said = board.said - saidBefore;
      let kept = 0;
      // The last of them is on disk a second later, or more where the machine is full.
      for (let tries = 0; kept < said && tries < LOOKS; tries += 1) {
        await pause(1000);
        kept = await keptLines(own.path('data'), own.path('kept.boil.jsonl'));
      }
      return { said, kept };
    },
    async close() {
      board.stop();
      await stopFlood();
      await browser.close();
      await program.kill('SIGKILL');
      await Promise.all([a.pull(), b.pull()]);
      own.remove();
    },
  };
}

/** `watch` with a look at its event loop. */
function watched(loopFile: string, options: string[]): Program {
  const before = { ...process.env };
  Object.assign(process.env, {
    NODE_OPTIONS: `--import ${here('latency-loop-watch.ts')}`,
    LATENCY_LOOP_FILE: loopFile,
  });
  const program = new Program('watch', ...options);
  process.env = before;
  return program;
}

/** A board of a dozen probes in a steady pan each; some of them are broken. */
class SpeakingBoard {
  readonly broken = new Set<number>();
  readonly #board: Board;
  readonly #timer: NodeJS.Timeout;
  /** So many lines were written. */
  said = 0;

  constructor(board: Board) {
    this.#board = board;
    this.#timer = setInterval(() => this.#say(), SAYS_EVERY_MS);
  }

  /** Gives the moment before the line was written, ms. */
  breaks(probe: number): number {
    this.broken.add(probe);
    const beforeMs = nowMs();
    this.#feed(`T${probe}=nan`);
    return beforeMs;
  }

  stop(): void {
    clearInterval(this.#timer);
  }

  #feed(line: string): void {
    this.#board.feed(line);
    this.said += 1;
  }

  #say(): void {
    const values = Array.from({ length: PANS }, (_, i) =>
      this.broken.has(i + 1) ? 'nan' : (97 + i / 10 + (this.said % 3) / 20).toFixed(2),
    );
    this.#feed(values.map((value, i) => `T${i + 1}=${value}`).join(' '));
  }
}

/** Lines of the board of the pans in the boil that is watched. */
async function keptLines(data: string, file: string): Promise<number> {
  await run(process.execPath, [MAIN, 'export', 'latest', '--data', data, '--to', file]);
  let kept = 0;
  for await (const line of createInterface({ input: createReadStream(file) })) {
    if (line.includes('"port":"A","line"')) kept += 1;
  }
  return kept;
}

/** Every call that comes into the page's list, with the page's own time of it, ms. */
class SeenCalls {
  #seen = new Map<string, number>();
  #wake = (): void => {};

  note(title: string, ms: number): void {
    if (!this.#seen.has(title)) this.#seen.set(title, ms);
    this.#wake();
  }

  /** What called before is no answer to what is done next. */
  forget(title: string): void {
    this.#seen.delete(title);
  }

  async first(title: string): Promise<number> {
    // Its own word, not the clock's: a timer may come a hair before the time that it was set to.
    let isLate = false;
    const timer = setTimeout(() => {
      isLate = true;
      this.#wake();
    }, LONGEST_WAIT_MS);
    while (!this.#seen.has(title)) {
      if (isLate) throw new Error(`"${title}" was not shown within ${LONGEST_WAIT_MS / 1000} s`);
      await new Promise<void>((resolve) => (this.#wake = resolve));
    }
    clearTimeout(timer);
    const ms = this.#seen.get(title) ?? Number.NaN;
    this.#seen.delete(title);
    return ms;
  }
}

async function openPage(browser: Browser, url: string) {
  const context = await browser.newContext({ viewport: LAPTOP });
  const page = await context.newPage();
  const seen = new SeenCalls();
  await page.exposeFunction('callSeen', (title: string, ms: number) => seen.note(title, ms));
  await page.addInitScript(watchCalls);
  await page.goto(url);
  await page.locator('.card').first().waitFor();
  return { context, page, seen };
}

/** Runs in the page: says each title the moment it stands in the list as a call that nobody has answered. */
function watchCalls(): void {
  const { callSeen } = globalThis as unknown as { callSeen(title: string, ms: number): void };
  let before = new Set<string>();
  const look = (): void => {
    const ms = performance.timeOrigin + performance.now();
    const rows = [...document.querySelectorAll('.alarm-head')];
    const calling = rows.filter((row) => row.querySelector('.alarm-word:not(.alarm-word-quiet)') !== null);
    const titles = new Set(calling.map((row) => row.querySelector('.alarm-title')?.textContent ?? ''));
    for (const title of titles) if (!before.has(title)) callSeen(title, ms);
    before = titles;
  };
  new MutationObserver(look).observe(document, {
    subtree: true,
    childList: true,
    characterData: true,
    attributes: true,
  });
}

/** How much the page's clock is ahead of ours, by the quickest of many exchanges. */
async function comparedClocks(page: Page): Promise<{ offsetMs: number; errorMs: number }> {
  let best = { offsetMs: 0, errorMs: Number.POSITIVE_INFINITY };
  for (let tries = 0; tries < 100; tries += 1) {
    const fromMs = nowMs();
    const pageMs = await page.evaluate(() => performance.timeOrigin + performance.now());
    const toMs = nowMs();
    const errorMs = (toMs - fromMs) / 2;
    if (errorMs < best.errorMs) best = { offsetMs: pageMs - (fromMs + toMs) / 2, errorMs };
  }
  return best;
}

interface Round {
  board: SpeakingBoard;
  program: Program;
  seen: SeenCalls;
}

/** Breaks a probe at some moment of a second, waits for its call in the page, answers it and lets it be whole again. */
async function oneAlarm({ board, program, seen }: Round, probe: number): Promise<number> {
  const told = program.lines.findLast((line) => line['alarm'] === 'probe-lost' && line['pan'] === `p${probe}`);
  // What was called the time before has to be over, or there is nothing new to call.
  if (told !== undefined) await program.line((line) => isCleared(line, probe), program.lines.indexOf(told));
  await pause(100 + 200 * Math.random());
  const from = program.lines.length;
  const title = `Pan ${probe}: Probe lost`;
  // A board that a busy machine held up for seconds was called, too, while nobody waited for it.
  seen.forget(title);
  const writtenMs = board.breaks(probe);
  const shownMs = await seen.first(title);
  program.say({ ref: `seen-${from}`, answer: { acknowledge: { pan: `p${probe}`, alarm: 'probe-lost' } } });
  board.broken.delete(probe);
  return shownMs - writtenMs;
}

const isCleared = (line: Line, probe: number): boolean =>
  line['alarm'] === 'probe-lost' && line['pan'] === `p${probe}` && line['event'] === 'cleared';

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

async function untilTrue(isSo: () => boolean, what: string): Promise<void> {
  const sinceMs = nowMs();
  while (!isSo()) {
    if (nowMs() - sinceMs > LONGEST_WAIT_MS) throw new Error(`waited in vain for ${what}`);
    await pause(20);
  }
}

function feed(path: string, linesASecond: number): () => Promise<void> {
  const options = [here('latency-feeder.ts'), path, String(linesASecond), 'T1=98.25C'];
  const feeder = spawn(process.execPath, options, { stdio: 'ignore' });
  const gone = new Promise<void>((resolve) => feeder.once('close', () => resolve()));
  return () => {
    feeder.kill('SIGKILL');
    return gone;
  };
}
