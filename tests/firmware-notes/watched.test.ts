// The sketch on its simulated board, heard through a pseudo terminal by the real `watch`: values, an open lead, a brown-out.
import { closeSync, openSync, readFileSync, writeSync } from 'node:fs';
import { setTimeout as delay } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Line, ownFolder, panwarden, Program } from '../cli/program.ts';
import { type Board, plugIn } from '../cli/pseudo-terminals.ts';
import { hasCompiler, sketch } from './compile.ts';
import { OneWireSensor } from './one-wire-sensor.ts';
import { SimulatedBoard } from './simulated-board.ts';

let own: ReturnType<typeof ownFolder>;
let terminal: Board;
let program: Program | undefined;

beforeEach(async () => {
  own = ownFolder();
  terminal = await plugIn(own.path('A'));
});

afterEach(async () => {
  if (program?.process.exitCode === null) await program.kill('SIGKILL');
  await terminal.pull();
  own.remove();
});

const pan = (id: string, probe: string) => ({ id, name: id, sap: 'birch', probe });
const setup = () => ({
  name: 'Tarn Hollow, invented',
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A', path: own.path('A') }],
  probes: ['T1', 'D1'].map((channel) => ({ id: channel, port: 'A', channel })),
  pans: [pan('back', 'T1'), pan('front', 'D1')],
});

/** Runs the board, at most as fast as its own time goes by, until the program has said a line that fits; `meanwhile` goes on happening. */
async function until(board: SimulatedBoard, fits: (line: Line) => boolean, meanwhile = () => {}): Promise<Line> {
  const from = program!.lines.length;
  const began = performance.now();
  for (let milliseconds = 0; milliseconds < 40_000; milliseconds += 10) {
    meanwhile();
    board.run(10);
    await delay(Math.max(0, milliseconds - (performance.now() - began)));
    const found = program!.lines.slice(from).find(fits);
    if (found) return found;
  }
  throw new Error(`waited in vain: ${JSON.stringify(program!.lines.slice(-6))} ${program!.stderr}`);
}

const reading = (of: string, probe: string) => (line: Line) =>
  line['kind'] === 'reading' && line['pan'] === of && line['probe'] === probe;

test.runIf(hasCompiler)('what the board says is watched: values, an open lead, power-on 85, a brown-out', async () => {
  const converter = { bits: ((98.25 * 4) << 18) >>> 0 };
  const sensor = new OneWireSensor(97.0625);
  const board = new SimulatedBoard(sketch(), [converter, { bits: null }], [sensor, null]);
  const file = own.write('setup.json', setup());
  program = new Program('watch', '--data', own.path('data'), '--setup', file, '--json', '--every', '1');
  await program.line((line) => line['kind'] === 'kept');
  const wire = openSync(`${own.path('A')}-far`, 'w');
  board.onByte = (byte) => writeSync(wire, Uint8Array.of(byte));
  try {
    const isSeen = (of: string) => (line: Line) => reading(of, 'ok')(line) && line['temperature_c'] !== null;
    expect((await until(board, isSeen('back')))['temperature_c']).toBeCloseTo(98.25, 2);
    expect((await until(board, isSeen('front')))['temperature_c']).toBeCloseTo(97.0625, 2);

    converter.bits |= 0x10001;
    expect(await until(board, (line) => line['alarm'] === 'probe-lost' && line['pan'] === 'back')).toMatchObject({
      event: 'raised',
      why: expect.stringContaining('the board says that the probe is broken'),
    });
    converter.bits = ((98.5 * 4) << 18) >>> 0;
    await until(board, (line) => line['alarm'] === 'probe-lost' && line['event'] === 'cleared');

    // Once alone it shows for a second, which a program that says something each second may pass over.
    await until(board, reading('front', 'broken'), () => sensor.losePower());
    await until(board, isSeen('front'));

    // What was seen before goes on being said, so that another value shows that a line after the restart was read.
    board.restart('brown-out');
    converter.bits = ((98.25 * 4) << 18) >>> 0;
    await until(board, (line) => isSeen('back')(line) && line['temperature_c'] === 98.25);
    await until(board, isSeen('front'));
  } finally {
    closeSync(wire);
  }
  await program.kill('SIGTERM');
  const to = own.path('out.boil.jsonl');
  expect(panwarden('export', 'latest', '--to', to, '--data', own.path('data')).status).toBe(0);
  const kept = readFileSync(to, 'utf8');
  expect(kept).toMatch(/#0b\*[0-9A-F]{2}"/u);
  expect(kept).toContain('T1=open');
  expect(kept).not.toContain('D1=85');
  const temperatures = program.lines.flatMap((line) =>
    line['kind'] === 'reading' && typeof line['temperature_c'] === 'number' ? [line['temperature_c']] : [],
  );
  expect(Math.max(...temperatures)).toBeLessThan(98.6);
  expect(Math.min(...temperatures)).toBeGreaterThan(97);
});
