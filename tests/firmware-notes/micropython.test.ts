// The MicroPython sketch of firmware-notes in the WebAssembly build of MicroPython, with stand-ins for the board's buses.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadMicroPython } from '@micropython/micropython-webassembly-pyscript';
import { expect, test } from 'vitest';
import { readPairs } from '../../src/ingest/formats/pairs.ts';
import { SKETCH_FOLDER } from './compile.ts';
import { busCrc } from './one-wire-sensor.ts';

const standIn = (name: string) => readFileSync(fileURLToPath(new URL(`stand-in-${name}.py`, import.meta.url)), 'utf8');
const SKETCH = readFileSync(`${SKETCH_FOLDER}probe_lines.py`, 'utf8');

/** What Python code prints that finds the sketch and the stand-ins imported. */
async function printed(code: string): Promise<string[]> {
  const lines: string[] = [];
  const python = await loadMicroPython({ stdout: (line) => lines.push(line) });
  python.FS.writeFile('machine.py', standIn('machine'));
  python.FS.writeFile('onewire.py', standIn('onewire'));
  python.FS.writeFile('probe_lines.py', SKETCH);
  python.runPython(`import machine, onewire, probe_lines\n${code}`);
  return lines;
}

/** Two converters and two sensors; each line of the board is preceded by what then happens to them. */
const board = (...happens: string[]) => `
def word(sixteenths):
    return ((sixteenths // 4 & 0x3FFF) << 18 | 0x1900).to_bytes(4, "big")
machine.converters = {9: word(1572), 10: word(-12)}
onewire.sensors = {4: onewire.StandInSensor(1553), 5: onewire.StandInSensor(-162)}
first, second = onewire.sensors[4], onewire.sensors[5]
happens = ${JSON.stringify(happens)}
class Over(Exception):
    pass
def pause(due):
    if not happens:
        raise Over()
    exec(happens.pop(0))
    return due
try:
    probe_lines.run(pause)
except Over:
    pass
`;

const values = (line: string) =>
  Object.fromEntries(readPairs(line).readings.map(({ channel, value }) => [channel, value]));

test('values come as pairs with the line’s number, the cause of the start and a checksum', async () => {
  const lines = await printed(board('pass', 'pass'));
  expect(lines.map(values)).toEqual(Array(2).fill({ T1: 98.25, T2: -0.75, D1: 97.0625, D2: -10.125 }));
  expect(lines.map((line) => /#(\w+)\*/u.exec(line)?.[1])).toEqual(['0p', '1']);
  for (const line of lines)
    expect(busCrc([...Buffer.from(line.slice(0, -3))])).toBe(Number.parseInt(line.slice(-2), 16));
});

test('open, shorted, missing and spoilt say so and give no number; a start that was none of power spoils a half line', async () => {
  const lines = await printed(
    `machine.cause = machine.WDT_RESET\n${board(
      'machine.converters[9] = b"\\x06\\x25\\x19\\x01"; machine.converters[10] = b"\\xff" * 4; del onewire.sensors[4]; machine.low.add(5)',
      'machine.converters[9] = bytes(4); onewire.sensors[4] = first; machine.low.discard(5)',
      'first.spoilt = 2; second.spoilt = 3',
      'pass',
    )}`,
  );
  expect(lines[0]).toBe('#');
  expect(lines[1]).toMatch(/^T1=open T2=fault D1=open D2=fault #0w\*/u);
  expect(values(lines[2]!)).toMatchObject({ T1: null });
  expect(values(lines[3]!)).toMatchObject({ D1: 97.0625, D2: null });
  expect(values(lines[4]!)).toMatchObject({ D1: 97.0625, D2: -10.125 });
});

test('85 after a loss of supply is never sent, and a pan that is at 85 is', async () => {
  const lines = await printed(
    board('first.sixteenths = 1360', 'pass', 'first.lose_power(); second.lose_power()', 'pass'),
  );
  expect(lines.map(values).map(({ D1, D2 }) => [D1, D2])).toEqual([
    [97.0625, -10.125],
    [85, -10.125],
    [null, null],
    [85, -10.125],
  ]);
});

test('its pure parts give the published examples', async () => {
  // Application note 27 of the bus, example 2; data sheets of the converter (table 4) and of the sensor (table 1).
  const lines = await printed(`
print(probe_lines.crc8(b"\\x02\\x1c\\xb8\\x01\\x00\\x00\\x00") == 0xA2)
for bits in (0x6400, 0x3E80, 0x064C, 0x0190, 0x0000, 0xFFFC, 0xFFF0, 0xF060):
    print(probe_lines.converter_text((bits << 16 | 0x1900).to_bytes(4, "big")))
for raw in (0x07D0, 0x0550, 0x0191, 0x00A2, 0x0008, 0x0000, 0xFFF8, 0xFF5E, 0xFE6F, 0xFC90):
    body = bytes([raw & 255, raw >> 8]) + probe_lines.MARK + b"\\x7f\\xff\\x0c\\x10"
    print(probe_lines.one_wire_text(body + bytes([onewire.crc(body)])))
`);
  expect(lines).toEqual([
    'True',
    ...['1600.0C', '1000.0C', '100.75C', '25.0C', '0.0C', '-0.25C', '-1.0C', '-250.0C'],
    ...['125.0C', '85.0C', '25.0625C', '10.125C', '0.5C', '0.0C', '-0.5C', '-10.125C', '-25.0625C', '-55.0C'],
  ]);
});
