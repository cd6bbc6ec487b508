// A boil that was watched live over a pseudo terminal is replayed from its export: its alarms are the same, byte for byte.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ownFolder, panwarden, Program } from './program.ts';
import type { Line } from './program.ts';
import { plugIn } from './pseudo-terminals.ts';
import type { Board } from './pseudo-terminals.ts';

let own: ReturnType<typeof ownFolder>;
let board: Board;
let program: Program | null = null;

beforeEach(async () => {
  own = ownFolder();
  board = await plugIn(own.path('A'));
});

afterEach(async () => {
  if (program !== null && program.process.exitCode === null) await program.kill('SIGKILL');
  await board.pull();
  own.remove();
});

/** Invented; birch syrup of 67 °Bx boils at 104.2 °C at 940 hPa (computed). */
const setup = () => ({
  name: 'Tarn Hollow, invented',
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A', path: own.path('A') }],
  probes: [
    { id: 'A/1', port: 'A', channel: 'T1' },
    { id: 'A/2', port: 'A', channel: 'T2' },
  ],
  pans: [
    { id: 'p1', name: 'Back pot', sap: 'birch', probe: 'A/1' },
    { id: 'p2', name: 'Front pot', sap: 'maple', probe: 'A/2' },
  ],
});

const isAlarm = (alarm: string, event: string) => (line: Line) =>
  line['kind'] === 'alarm' && line['alarm'] === alarm && line['event'] === event;
const readings = (watched: Program): number => watched.lines.filter(({ kind }) => kind === 'reading').length;

/** One line of the board with each line of readings that the program prints, until it prints what is waited for. */
async function feedUntil(
  watched: Program,
  line: (count: number) => string,
  fits: (line: Line) => boolean,
): Promise<void> {
  for (let count = 0; !watched.lines.some(fits); count += 1) {
    const before = readings(watched);
    board.feed(line(count));
    await watched.until(() => readings(watched) > before || watched.lines.some(fits));
  }
}

const CONDITION_EVENTS = ['raised', 'escalated', 'cleared'];
const alarmsOf = (texts: readonly string[]): string[] =>
  texts.filter((text) => {
    const { kind, event } = JSON.parse(text) as Line;
    return kind === 'alarm' && CONDITION_EVENTS.includes(String(event));
  });

test(
  'raised and cleared live, answered, through a broken probe and a pulled cable: a replay calls the same',
  { timeout: 180_000 },
  async () => {
    const file = own.write('setup.json', setup());
    const data = own.path('data');
    program = new Program('watch', '--data', data, '--setup', file, '--json', '--every', '1');
    await program.line(({ kind }) => kind === 'watching');
    program.say({ ref: 'a1', mark: { kind: 'pressure', hpa: 940 } });
    const hot = (count: number): string =>
      `T1=${(105.6 + (count % 3) / 10).toFixed(1)}C T2=${(99 + (count % 3) / 10).toFixed(1)}C`;
    await feedUntil(program, hot, isAlarm('finish', 'raised'));
    program.say({ ref: 'a2', answer: { acknowledge: { pan: 'p1', alarm: 'finish' } } });
    await program.line(({ ref }) => ref === 'a2');
    await feedUntil(program, () => 'T1=105.6C T2=nan', isAlarm('probe-lost', 'raised'));
    await feedUntil(program, hot, isAlarm('probe-lost', 'cleared'));
    await board.pull();
    await program.line(isAlarm('port-lost', 'raised'));
    board = await plugIn(own.path('A'));
    await program.line(isAlarm('port-lost', 'cleared'));
    program.say({ ref: 'a3', end: true });
    await program.ended;
    const live = alarmsOf(program.texts);
    expect(live.length).toBeGreaterThanOrEqual(5);
    const recording = own.path('out.boil.jsonl');
    expect(panwarden('export', 'latest', '--to', recording, '--data', data).status).toBe(0);
    const { status, stdout } = panwarden('replay', recording, '--json');
    expect(status).toBe(0);
    expect(alarmsOf(stdout.trimEnd().split('\n'))).toEqual(live);
  },
);
