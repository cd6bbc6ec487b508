// The sketch of firmware-notes, compiled and run on a simulated board with simulated chips and sensors on its pins.
import { beforeAll, expect, test } from 'vitest';
import { readPairs } from '../../src/ingest/formats/pairs.ts';
import { hasCompiler, sketch } from './compile.ts';
import { busCrc, OneWireSensor } from './one-wire-sensor.ts';
import { type Converter, SimulatedBoard } from './simulated-board.ts';

let program: Uint16Array;
beforeAll(() => {
  if (hasCompiler) program = sketch();
});

/** The 32 bits of a converter whose tip is so hot; quarter degrees above bit 18, cold junction 25 °C (its data sheet, table 4 and 5). */
const converterBits = (celsius: number): number => (((celsius * 4) << 18) | (0x190 << 4)) >>> 0;

function wired(...celsius: [number, number, number, number]) {
  const converters: Converter[] = [{ bits: converterBits(celsius[0]) }, { bits: converterBits(celsius[1]) }];
  const sensors = [new OneWireSensor(celsius[2]), new OneWireSensor(celsius[3])] as const;
  return { converters, sensors, board: new SimulatedBoard(program, converters, [...sensors]) };
}

const values = (line: string) =>
  Object.fromEntries(readPairs(line).readings.map(({ channel, value }) => [channel, value]));

test.runIf(hasCompiler)('values of both kinds come as pairs, one line a second, within the times of the bus', () => {
  const { board, sensors } = wired(98.25, -0.75, 97.0625, -10.125);
  expect(board.lines(3).map(values)).toEqual(Array(3).fill({ T1: 98.25, T2: -0.75, D1: 97.0625, D2: -10.125 }));
  expect(sensors.flatMap(({ violations }) => violations)).toEqual([]);
});

test.runIf(hasCompiler)('each line has its number and a checksum, and the first says why the board started', () => {
  const { board } = wired(98.25, 97, 96, 95);
  const lines = board.lines(3);
  for (const line of lines) {
    const [, body, sum] = /^(.*)\*([0-9A-F]{2})$/u.exec(line) ?? [];
    expect(busCrc([...Buffer.from(body ?? '')])).toBe(Number.parseInt(sum ?? '', 16));
  }
  expect(lines.map((line) => /#(\w+)\*/u.exec(line)?.[1])).toEqual(['0p', '1', '2']);
});

test.runIf(hasCompiler)('open leads, shorted leads and chips that are not there say so and give no number', () => {
  const { board, converters, sensors } = wired(98.25, 97, 96, 95);
  board.lines(1);
  converters[0]!.bits = converterBits(98.25) | 0x10001;
  converters[1]!.bits = converterBits(97) | 0x10004;
  sensors[0].unplugged = true;
  sensors[1].shorted = true;
  expect(board.lines(2)[1]).toMatch(/^T1=open T2=fault D1=open D2=fault #/u);
  converters[0]!.bits = null;
  converters[1]!.bits = 0;
  expect(board.lines(1)[0]).toMatch(/^T1=fault T2=fault /u);
  converters[0]!.bits = converterBits(99);
  sensors[0].unplugged = false;
  sensors[1].shorted = false;
  expect(values(board.lines(3)[2]!)).toMatchObject({ T1: 99, D1: 96, D2: 95 });
});

test.runIf(hasCompiler)('85 after a loss of supply is never sent, and a pan that is at 85 is', () => {
  const { board, sensors } = wired(98.25, 97, 85, 95);
  expect(values(board.lines(2)[1]!)['D1']).toBe(85);
  sensors[0].losePower();
  sensors[1].losePower();
  const after = board.lines(3).map(values);
  expect(after[0]).toMatchObject({ D1: null, D2: null });
  expect(after[2]).toMatchObject({ D1: 85, D2: 95 });
});

test.runIf(hasCompiler)('a byte spoilt on the lead is asked for again; one that stays spoilt is a fault', () => {
  const { board, sensors } = wired(98.25, 97, 96, 95);
  board.lines(1);
  sensors[0].spoilt = [0x10, 0x02];
  sensors[1].spoilt = [1, 2, 4, 8];
  expect(values(board.lines(1)[0]!)).toMatchObject({ D1: 96, D2: null });
});

test.runIf(hasCompiler)(
  'a brown-out in the middle of a line leaves no value of the half line, and says what it was',
  () => {
    for (const cut of ['T1=9', 'T1=98.25C T2=1', 'T1=98.25C T', 'T1=98.25C ']) {
      const { board } = wired(98.25, 104.5, 96, 95);
      board.lines(1);
      const from = board.said.length;
      while (board.said.slice(from) !== cut) board.run(0.5);
      board.restart('brown-out');
      const [half, next] = board.lines(2) as [string, string];
      const read = values(cut + half);
      expect([undefined, 98.25]).toContain(read['T1']);
      expect(Object.keys(read).filter((channel) => channel !== 'T1')).toEqual([]);
      expect(next).toMatch(/#0b\*/u);
      expect(values(next)).toEqual({ T1: 98.25, T2: 104.5, D1: 96, D2: 95 });
    }
  },
);
