// What a person knows a board by, long after its port is called otherwise, and which pans it watches.
import { expect, test } from 'vitest';
import type { Header } from '../../src/core/boil/entries.ts';
import { boardCalled, boardName, pansOfBoard } from '../../src/protocol/boards.ts';

const listed = { maker: 'Tarn Works', serialNumber: 'TH-1', alike: [] };

test.each([
  ['its maker and serial number', '/dev/ttyACM0', listed, 'Tarn Works TH-1'],
  ['the end of a long one', '/dev/ttyACM0', { ...listed, serialNumber: '9573 53F0 7353' }, 'Tarn Works 7353'],
  ['no address beside the maker', '/dev/ttyACM0', { ...listed, maker: 'Tarn (tarn.invalid)' }, 'Tarn TH-1'],
  ['its port where no maker is told', 'COM3', { ...listed, maker: null }, 'COM3 TH-1'],
  ['its port alone where another has the same serial number', 'COM3', { ...listed, alike: ['COM4'] }, 'COM3'],
  ['its port alone without a serial number', '/dev/ttyUSB0', { ...listed, serialNumber: null }, 'ttyUSB0'],
  ['its port alone where it is not listed', '/dev/pts/3', undefined, 'pts 3'],
])('a board goes by %s', (_what, path, board, name) => expect(boardName(path, board)).toBe(name));

const header: Header = {
  recording: 'panwarden',
  version: 1,
  started: '2027-04-18T07:30:00-07:00',
  ports: [{ id: 'A', path: '/dev/ttyUSB0' }, { id: 'Tarn Works TH-1', path: '/dev/ttyACM0' }, { id: 'B' }],
  probes: [
    { id: 'A/1', port: 'A', channel: 'T1' },
    { id: 'A/2', port: 'A', channel: 'T2' },
    { id: 'B/1', port: 'B', channel: 'T1' },
  ],
  pans: [
    { id: 'p1', probe: ['A/1', 'A/2'] },
    { id: 'p2', probe: 'B/1' },
  ],
};

test('a port’s id names its board, unless it is a letter and the port has a path', () => {
  const called = ['A', 'Tarn Works TH-1', 'B', '/dev/ttyUSB7'].map((port) => boardCalled(header, port));
  expect(called).toEqual(['ttyUSB0', 'Tarn Works TH-1', 'B', '/dev/ttyUSB7']);
});

test('a board watches the pans that its probes hang in', () => {
  const of = (port: string) => pansOfBoard(header, port).map(({ id }) => id);
  expect([of('A'), of('B'), of('Tarn Works TH-1')]).toEqual([['p1'], ['p2'], []]);
});
