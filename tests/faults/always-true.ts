// A boil over pretend boards that faults are done to, and the three things that hold through all of them.
import { existsSync, readdirSync } from 'node:fs';
import { expect } from 'vitest';
import type { AlarmTransition } from '../../src/core/alarms/alarm.ts';
import { createHost } from '../../src/host/host.ts';
import type { Host } from '../../src/host/host.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import type { Now } from '../../src/protocol/messages.ts';
import { ownFolder } from '../cli/program.ts';
import { pretendBoard } from '../ingest/pretend-board.ts';
import { until } from '../ingest/until.ts';

/** A turn of the loop may take so much processor time, ms; what else the machine does is not counted. */
const LONGEST_TURN_MS = 200;
const LOOK_EVERY_MS = 10;
/** A probe that breaks is called within so long, ms: the middle of three tries, for the machine may be full. */
const CALL_WITHIN_MS = 1000;
const TRIES = 3;

export const rows: { fault: number; what: string; turnMs: number; callMs: number; entries: number }[] = [];

export interface FaultRig {
  host: Host;
  /** The board that faults are done to: port A, channels T1 to T3. */
  board: ReturnType<typeof pretendBoard>;
  alarms: AlarmTransition[];
  notices: string[];
  now(): Now;
  /** Entries of the record so far, from the notebook. */
  record(): Record<string, unknown>[];
  pan(id: string): Now['readings'][number] | undefined;
  raised(alarm: string, pan?: string): AlarmTransition[];
  /** Says ten lines, a tenth of a second apart, so that the program knows how often the board speaks. */
  warmUp(line?: string): Promise<void>;
  /** Ends the boil, and asserts the three things. */
  alwaysTrue(fault: number, what: string): Promise<void>;
  remove(): Promise<void>;
}

const setup = (paths: { a: string; b: string }, device?: string) => ({
  name: 'Tarn Hollow, invented',
  ports: [
    { id: 'A', path: paths.a, device },
    { id: 'B', path: paths.b },
  ],
  probes: [1, 2, 3].flatMap((n) => [
    { id: `A/${n}`, port: 'A', channel: `T${n}` },
    { id: `B/${n}`, port: 'B', channel: `T${n}` },
  ]),
  pans: [1, 2, 3].flatMap((n) => [
    { id: `a${n}`, name: `Pan ${n}`, probe: `A/${n}` },
    { id: `b${n}`, name: `Steady pan ${n}`, probe: `B/${n}` },
  ]),
});

export async function faultRig(): Promise<FaultRig> {
  const own = ownFolder();
  const board = pretendBoard();
  const steady = pretendBoard();
  await Promise.all([board.plugIn(), steady.plugIn()]);
  const alarms: AlarmTransition[] = [];
  const notices: string[] = [];
  const host = await createHost({
    folder: own.path('data'),
    listener: {
      alarm: (transition) => void alarms.push(transition),
      notice: ({ sentence }) => void notices.push(sentence),
    },
  });
  let now: Now | null = null;
  host.subscribe((message) => {
    if (message.kind === 'now' && message.view === 'live') now = message;
  });
  const started = await host.command({ ref: 'start', start: setup({ a: board.path, b: steady.path }) });
  expect(started).toMatchObject({ ok: true });
  await until('both ports to open', () => now?.ports.filter(({ state }) => state === 'open').length === 2);
  /** The steady board's probe that is broken just now: it says so in each line, as a broken one does; 0 for none. */
  let broken = 0;
  const steadyLine = (): string => [1, 2, 3].map((n) => `T${n}=${n === broken ? 'nan' : `97.${n}`}`).join(' ');
  const beat = setInterval(() => void steady.send(`${steadyLine()}\n`), 250);
  const turns = watchTurns();
  const boil = host.running?.boil ?? '';

  const raised = (alarm: string, pan?: string): AlarmTransition[] =>
    alarms.filter((each) => each.alarm === alarm && each.event === 'raised' && (pan === undefined || each.pan === pan));

  async function callMs(): Promise<number> {
    const found: number[] = [];
    for (let n = 1; n <= TRIES; n += 1) {
      const fromMs = performance.now();
      broken = n;
      await steady.send(`${steadyLine()}\n`);
      await until('the call of a broken probe', () => raised('probe-lost', `b${n}`).length > 0);
      found.push(performance.now() - fromMs);
    }
    return found.toSorted((a, b) => a - b)[Math.floor(TRIES / 2)] ?? Number.NaN;
  }

  return {
    host,
    board,
    alarms,
    notices,
    raised,
    now: () => now as unknown as Now,
    record: () => [...host.recordingOf(boil)].slice(1).map((line) => JSON.parse(line) as Record<string, unknown>),
    pan: (id) => now?.readings.find(({ pan }) => pan === id),
    async warmUp(line = 'T1=98.1 T2=98.2 T3=98.3') {
      for (let n = 0; n < 10; n += 1) {
        await board.send(`${line}\n`);
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
    },
    async alwaysTrue(fault, what) {
      const calledMs = await callMs();
      const { turnMs } = turns();
      clearInterval(beat);
      await host.close();
      const notebook = openNotebook(own.path('data'));
      const entries = [...notebook.entries(boil)];
      notebook.close();
      rows.push({ fault, what, turnMs, callMs: calledMs, entries: entries.length });
      expect(() => entries.map((text) => JSON.parse(text) as unknown)).not.toThrow();
      expect(entries.length).toBeGreaterThan(0);
      expect(calledMs).toBeLessThan(CALL_WITHIN_MS);
      expect(turnMs).toBeLessThan(LONGEST_TURN_MS);
    },
    async remove() {
      clearInterval(beat);
      turns();
      await host.close().catch(() => undefined);
      await Promise.all([board.remove(), steady.remove()]);
      own.remove();
    },
  };
}

/** The longest turn of this thread's loop, in its own processor time, ms. */
function watchTurns(): () => { turnMs: number } {
  let turnMs = 0;
  let before = process.threadCpuUsage();
  const timer = setInterval(() => {
    const { user, system } = process.threadCpuUsage(before);
    turnMs = Math.max(turnMs, (user + system) / 1000);
    before = process.threadCpuUsage();
  }, LOOK_EVERY_MS);
  return () => {
    clearInterval(timer);
    return { turnMs };
  };
}

export const descriptors = (): number => (existsSync('/proc/self/fd') ? readdirSync('/proc/self/fd').length : 0);

/** What was seen, a line a fault; for afterAll. */
export function printRows(): void {
  const lines = rows.map(
    ({ fault, what, turnMs, callMs, entries }) =>
      `  ${String(fault).padStart(2)}  ${what.padEnd(46)}${turnMs.toFixed(0).padStart(7)} ms${callMs.toFixed(0).padStart(7)} ms${String(entries).padStart(9)}`,
  );
  console.log(
    `\n   #  fault                                       longest turn   call of   entries\n${lines.join('\n')}`,
  );
}
