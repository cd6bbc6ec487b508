// A boil over pretend boards that faults are done to, and the three things that hold through all of them.
import { chmodSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect } from 'vitest';
import type { AlarmTransition } from '../../src/core/alarms/alarm.ts';
import { createHost } from '../../src/host/create-host.ts';
import type { Host } from '../../src/host/host.ts';
import type { SystemPort } from '../../src/ingest/device-identity.ts';
import { openSerialPort, type OpenPort } from '../../src/ingest/open-port.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import type { Now } from '../../src/protocol/messages.ts';
import { ownFolder } from '../cli/program.ts';
import { pretendBoard, type PretendBoard } from '../ingest/pretend-board.ts';
import { until } from '../ingest/until.ts';
import { Pace } from './pace.ts';
import { addRow } from './table.ts';
import { watchTurns } from './turns.ts';

/** A turn of the loop may take so much processor time, ms; what else the machine does is not counted. */
const LONGEST_TURN_MS = 200;
/** A probe that breaks is called within so long, ms: the middle of three tries, for the machine may be full. */
const CALL_WITHIN_MS = 1000;
const TRIES = 3;
const NEWLINE = 0x0a;

/** A boil second of a boil whose time is moved by hand, ms. */
const SECOND_MS = 1000;

export interface RigOptions {
  /** What the boil is told beside its ports, probes and pans. */
  setup?: Record<string, unknown>;
  /** Pans a1 to a3 with more than their names. */
  pans?: Record<string, unknown>;
  /** What the system says of its ports; nothing unless said. */
  list?: (board: PretendBoard) => SystemPort[];
  openPort?: OpenPort;
  /** Who may use the boards' devices, as chmod has it. */
  mode?: number;
  /** The clock is moved by hand (`seconds`), so that minutes of a boil take no minutes. */
  byHand?: boolean;
}

export interface FaultRig {
  host: Host;
  /** The board that faults are done to: port A, channels T1 to T3. */
  board: PretendBoard;
  alarms: AlarmTransition[];
  notices: string[];
  /** Every temperature that was ever shown of a probe, °C. */
  shown(probe: string): number[];
  /** How often a screen was told. */
  published(): number;
  now(): Now;
  /** Entries of the record so far, from the notebook. */
  record(): Record<string, unknown>[];
  pan(id: string): Now['readings'][number] | undefined;
  raised(alarm: string, pan?: string): AlarmTransition[];
  /** Says ten lines, a tenth of a second apart, so that the program knows how often the board speaks. */
  warmUp(line?: string): Promise<void>;
  /** By hand: so many seconds of the boil, in each of which the board says a line and the program has read it. */
  seconds(count: number, line: (second: number) => string): Promise<void>;
  /** By hand: so many seconds in which the board says nothing, and the steady one goes on. */
  stall(count: number): Promise<void>;
  /** By hand: what the board says all at once; the program has begun to read it. */
  burst(lines: readonly string[]): Promise<void>;
  /** Ends the boil, and asserts the three things; `seen` are figures of this fault for the table. */
  alwaysTrue(fault: number, what: string, seen?: string): Promise<void>;
  remove(): Promise<void>;
}

const setup = (paths: { a: string; b: string }, pans: Record<string, unknown>) => ({
  name: 'Tarn Hollow, invented',
  ports: [
    { id: 'A', path: paths.a },
    { id: 'B', path: paths.b },
  ],
  probes: [1, 2, 3].flatMap((n) => [
    { id: `A/${n}`, port: 'A', channel: `T${n}` },
    { id: `B/${n}`, port: 'B', channel: `T${n}` },
  ]),
  pans: [1, 2, 3].flatMap((n) => [
    { id: `a${n}`, name: `Pan ${n}`, probe: `A/${n}`, ...pans },
    { id: `b${n}`, name: `Steady pan ${n}`, probe: `B/${n}` },
  ]),
});

export async function faultRig(options: RigOptions = {}): Promise<FaultRig> {
  const own = ownFolder();
  const board = pretendBoard();
  const steady = pretendBoard();
  await Promise.all([board.plugIn(), steady.plugIn()]);
  if (options.mode !== undefined) {
    for (const { path } of [board, steady]) {
      chmodSync(dirname(path), 0o755);
      chmodSync(path, options.mode);
    }
  }
  const alarms: AlarmTransition[] = [];
  const notices: string[] = [];
  const pace = options.byHand === true ? new Pace() : null;
  const { openPort, lineRead } = listened(options.openPort ?? openSerialPort);
  const host = await createHost({
    folder: own.path('data'),
    machine: pace?.clock,
    // The machine's own ports are none of a test's business.
    ports: { openPort, list: async () => options.list?.(board) ?? [] },
    listener: {
      alarm: (transition) => void alarms.push(transition),
      notice: ({ sentence }) => void notices.push(sentence),
    },
  });
  let now: Now | null = null;
  let published = 0;
  const shown = new Set<string>();
  host.subscribe((message) => {
    if (message.kind !== 'now' || message.view !== 'live') return;
    now = message;
    published += 1;
    for (const { id, celsius } of message.probes) if (celsius !== null) shown.add(`${id} ${celsius}`);
  });
  pace?.runOn();
  const start = { ...setup({ a: board.path, b: steady.path }, options.pans ?? {}), ...options.setup };
  expect(await host.command({ ref: 'start', start })).toMatchObject({ ok: true });
  await until('both ports to open', () => now?.ports.filter(({ state }) => state === 'open').length === 2);
  /** The steady board's probe that is broken just now: it says so in each line, as a broken one does; 0 for none. */
  let broken = 0;
  const steadyLine = (): string => [1, 2, 3].map((n) => `T${n}=${n === broken ? 'nan' : `97.${n}`}`).join(' ');
  const steadyBeat = (): NodeJS.Timeout => setInterval(() => void steady.send(`${steadyLine()}\n`), 250);
  let beat = pace === null ? steadyBeat() : undefined;
  const turns = watchTurns();
  const boil = host.running?.boil ?? '';
  if (pace !== null) {
    pace.stand();
    // What comes first may be the rest of a cut line.
    const bothRead = Promise.all([lineRead(board.path), lineRead(steady.path)]);
    await Promise.all([board.send('\n'), steady.send('\n')]);
    await bothRead;
  }

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
    published: () => published,
    shown: (probe) => [...shown].filter((one) => one.startsWith(`${probe} `)).map((one) => Number(one.split(' ')[1])),
    record: () => [...host.recordingOf(boil)].slice(1).map((line) => JSON.parse(line) as Record<string, unknown>),
    pan: (id) => now?.readings.find(({ pan }) => pan === id),
    async warmUp(line = 'T1=98.1 T2=98.2 T3=98.3') {
      for (let n = 0; n < 10; n += 1) {
        await board.send(`${line}\n`);
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
    },
    async seconds(count, line) {
      for (let second = 0; second < count; second += 1) {
        const bothRead = Promise.all([lineRead(board.path), lineRead(steady.path)]);
        await Promise.all([board.send(`${line(second)}\n`), steady.send(`${steadyLine()}\n`)]);
        await bothRead;
        pace?.clock.run(SECOND_MS);
      }
    },
    async stall(count) {
      for (let second = 0; second < count; second += 1) {
        const read = lineRead(steady.path);
        await steady.send(`${steadyLine()}\n`);
        await read;
        pace?.clock.run(SECOND_MS);
      }
    },
    async burst(lines) {
      const read = lineRead(board.path);
      await board.send(`${lines.join('\n')}\n`);
      await read;
    },
    async alwaysTrue(fault, what, seen = '') {
      pace?.runOn();
      beat ??= steadyBeat();
      const calledMs = await callMs();
      const { turnMs } = turns();
      clearInterval(beat);
      pace?.stand();
      await host.close();
      const notebook = openNotebook(own.path('data'));
      const entries = [...notebook.entries(boil)];
      notebook.close();
      addRow({ fault, what, turnMs, callMs: calledMs, entries: entries.length, seen });
      expect(() => entries.map((text) => JSON.parse(text) as unknown)).not.toThrow();
      expect(entries.length).toBeGreaterThan(0);
      expect(calledMs).toBeLessThan(CALL_WITHIN_MS);
      expect(turnMs).toBeLessThan(LONGEST_TURN_MS);
    },
    async remove() {
      clearInterval(beat);
      pace?.stand();
      turns();
      await host.close().catch(() => undefined);
      await Promise.all([board.remove(), steady.remove()]);
      own.remove();
    },
  };
}

/** The same, and a way to wait until the program has taken in the next line of a path. */
function listened(openPort: OpenPort): { openPort: OpenPort; lineRead(path: string): Promise<void> } {
  const waiting = new Map<string, () => void>();
  return {
    lineRead: (path) => new Promise((resolve) => waiting.set(path, resolve)),
    openPort: (path, baud, events) =>
      openPort(path, baud, {
        ...events,
        bytes(chunk) {
          events.bytes(chunk);
          if (chunk.includes(NEWLINE)) waiting.get(path)?.();
        },
      }),
  };
}
