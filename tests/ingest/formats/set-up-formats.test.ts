// Lines in columns, as JSON and by a pattern: what they give, what they refuse, and that no line throws or hangs.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { PortFormat } from '../../../src/core/boil/entries.ts';
import { readLine } from '../../../src/ingest/read-line.ts';

const columns: PortFormat = { kind: 'columns', separator: ',', decimal: '.', channels: ['', 'T1', 'T2'] };
const json: PortFormat = { kind: 'json', channels: { T1: '/probes/0/c', 'a/b': '/a~1b', tilde: '/~0' } };
const pattern: PortFormat = {
  kind: 'pattern',
  pattern: 'CH(?P<channel>\\d): *(?P<value>-?[0-9.]+|nan) *(?P<unit>[CFK])?',
};

const values = (line: string, format: PortFormat) =>
  Object.fromEntries(readLine(line, format).readings.map((r) => [r.channel, r.value]));
const rejected = (line: string, format: PortFormat) => readLine(line, format).rejected;

test('columns are read in their order and unnamed ones skipped', () => {
  expect(values('1700000000, 98.25C ,nan', columns)).toEqual({ T1: 98.25, T2: null });
  expect(values('12:00,98.25,97.1,', columns)).toEqual({ T1: 98.25, T2: 97.1 });
  expect(rejected('12:00,,0x1F', columns)).toEqual(['no value: T1', 'not a number: 0x1F']);
});

test('columns may have a decimal comma, and blanks that line them up', () => {
  const semicolons: PortFormat = { kind: 'columns', separator: ';', decimal: ',', channels: ['T1', 'T2'] };
  expect(values('98,25;-3,5', semicolons)).toEqual({ T1: 98.25, T2: -3.5 });
  expect(rejected('98.25;97', semicolons)).toEqual(['not a number: 98.25']);
  expect(values('  98.25   97.1 ', { kind: 'columns', separator: ' ', channels: ['T1', 'T2'] })).toEqual({
    T1: 98.25,
    T2: 97.1,
  });
  expect(values('98.25\t\t97.1', { kind: 'columns', separator: '\t', channels: ['T1', '', 'T2'] })).toEqual({
    T1: 98.25,
    T2: 97.1,
  });
});

test('a line with too few or too many columns gives nothing, as its values may belong to other probes', () => {
  expect(readLine('1,98.25', columns)).toEqual({ readings: [], rejected: ['2 columns where 3 are expected'] });
  expect(readLine('1,98,25,97', columns)).toEqual({ readings: [], rejected: ['4 columns where 3 are expected'] });
});

test('JSON Pointers find numbers; null and the words of a broken probe give null', () => {
  expect(values('{"probes":[{"c":98.25}],"a/b":97,"~":null}', json)).toEqual({ T1: 98.25, 'a/b': 97, tilde: null });
  expect(values('{"probes":[{"c":"nan"}]}', json)).toEqual({ T1: null });
});

test('JSON that is no object, or holds no number there, gives nothing', () => {
  for (const line of ['', '[1]', '98', 'null', '{"probes":', '{"probes":[{"c":0x1F}]}']) {
    expect(readLine(line, json)).toEqual({ readings: [], rejected: ['not a JSON object'] });
  }
  expect(values('{"probes":[{"c":"98.25"}],"a/b":1e999}', json)).toEqual({});
  expect(rejected('{"probes":[{"c":"98.25"}],"a/b":1e999}', json)).toEqual([
    'not a number: /probes/0/c',
    'out of range: /a~1b',
    'nothing there: /~0',
  ]);
  expect(
    values('{"a":[5]}', { kind: 'json', channels: { x: '/a/length', y: '/a/00', z: '/__proto__', w: 'a' } }),
  ).toEqual({});
});

test('every match of a pattern is a reading', () => {
  expect(readLine('CH1: 98.5 C, CH2:nan, CH3: 212F, CH4: 32650', pattern).readings).toEqual([
    { channel: '1', value: 98.5, unit: 'C' },
    { channel: '2', value: null, unit: null },
    { channel: '3', value: 212, unit: 'F' },
    { channel: '4', value: 32_650, unit: null },
  ]);
  expect(rejected('CH1: 9.8.5', pattern)).toEqual(['not a number: CH1: 9.8.5']);
  expect(rejected('hello', pattern)).toEqual(['no match']);
  expect(values('CH1: 98, CH1: 97', pattern)).toEqual({});
  expect(values('x=98', { kind: 'pattern', pattern: '(?P<channel>x)=(?P<value>\\d+)' })).toEqual({ x: 98 });
});

test('a pattern that cannot be used is the reason of every line', () => {
  const cases = {
    '(a': /cannot be read/,
    '(?P<value>\\d)': /no group named channel/,
    '(?P<channel>a)': /no group named value/,
    '(?=a)': /cannot be read/,
  };
  for (const [text, reason] of Object.entries(cases)) {
    expect(rejected('CH1: 98', { kind: 'pattern', pattern: text })[0]).toMatch(reason);
  }
  expect(rejected('CH1: 98', { kind: 'pattern', pattern: 'a'.repeat(1001) })[0]).toMatch(/longer than 1000/);
});

test('a pattern made to waste time is stopped after a fixed amount of work', () => {
  const costly: PortFormat = { kind: 'pattern', pattern: '(?P<channel>a|b|ab)*?(?P<value>.{0,500}z|a)' };
  expect(rejected('a'.repeat(4096), costly)).toEqual(['too much work for this pattern']);
});

test('no line throws in any format', () => {
  const anyFormat = fc.constantFrom(columns, json, pattern);
  const anyLine = fc.oneof(fc.string({ unit: 'binary', maxLength: 100 }), fc.json());
  fc.assert(
    fc.property(anyLine, anyFormat, (line, format) => {
      for (const { value } of readLine(line, format).readings) {
        expect(value === null || Number.isFinite(value)).toBe(true);
      }
    }),
    { numRuns: 3000 },
  );
});
