// Bytes to lines: however the bytes are cut, whatever ends a line, and no line that was not sent whole.
import fc from 'fast-check';
import { ReadlineParser } from '@serialport/parser-readline';
import { expect, test } from 'vitest';
import { LineSplitter } from '../../src/ingest/line-splitter.ts';

const bytes = (text: string) => Buffer.from(text, 'latin1');
const split = (...chunks: string[]) => {
  const splitter = new LineSplitter();
  return chunks.flatMap((chunk) => splitter.push(bytes(chunk)));
};

test('lines end with LF, CR or both, and what comes before the first end is dropped', () => {
  expect(split('4.9\nT1=1\nT2=2\r\nT3=3\rT4=4\n\n\r\n')).toEqual(['T1=1', 'T2=2', 'T3=3', 'T4=4']);
  expect(split('T1=1')).toEqual([]);
});

test('a remainder without an end is never handed out, and does not reach the next opening', () => {
  expect(split('\nT1=98\nT1=10')).toEqual(['T1=98']);
  expect(split('4.9\n')).toEqual([]);
});

test('lines are the same however the bytes are cut', () => {
  const text = fc.array(fc.constantFrom('T1=98.5', '\n', '\r\n', '\r', 'é', '\u0000', ' '), { maxLength: 40 });
  fc.assert(
    fc.property(text, fc.array(fc.nat(200), { maxLength: 10 }), (parts, cuts) => {
      const whole = parts.join('');
      const edges = [0, ...cuts.map((cut) => cut % (whole.length + 1)).sort((a, b) => a - b), whole.length];
      const chunks = edges.slice(1).map((edge, index) => whole.slice(edges[index], edge));
      const expected = whole
        .split(/[\r\n]/)
        .slice(1, -1)
        .filter((line) => line !== '');
      expect(split(...chunks)).toEqual(expected);
    }),
    { numRuns: 1000 },
  );
});

test('4096 bytes are a line; one more is dropped to the next end and counted once', () => {
  const splitter = new LineSplitter();
  expect(splitter.push(bytes(`\n${'x'.repeat(4096)}\n`))[0]).toHaveLength(4096);
  expect(splitter.overlong).toBe(0);
  expect(splitter.push(bytes(`${'x'.repeat(4097)}\nT1=98\n`))).toEqual(['T1=98']);
  expect(splitter.overlong).toBe(1);
  for (let n = 0; n < 300; n++) expect(splitter.push(bytes('y'.repeat(4000)))).toEqual([]);
  expect(splitter.overlong).toBe(2);
  expect(splitter.push(bytes('z\nT1=99\n'))).toEqual(['T1=99']);
});

test('a port that never ends a line is counted although its first line is dropped anyway', () => {
  const splitter = new LineSplitter();
  for (let n = 0; n < 300; n++) splitter.push(bytes('y'.repeat(4000)));
  expect(splitter.overlong).toBe(1);
});

// The reference is the general-purpose line parser of the serialport project; the two differ only where ours is meant to
// (a first partial line, a limit, a remainder at the end).
test("well-formed text comes out as from serialport's own line parser", () => {
  const words = fc.array(fc.stringMatching(/^[ -~]{1,40}$/), { minLength: 1, maxLength: 20 });
  fc.assert(
    fc.property(words, fc.integer({ min: 1, max: 17 }), (lines, cut) => {
      const text = `\n${lines.map((line) => `${line}\r\n`).join('')}`;
      const chunks = text.match(new RegExp(`[^]{1,${cut}}`, 'g')) ?? [];
      const reference: string[] = [];
      const parser = new ReadlineParser({ delimiter: '\r\n', encoding: 'latin1' });
      parser.on('data', (line: string) => reference.push(line.replace(/^\n/, '')));
      for (const chunk of chunks) parser.write(bytes(chunk));
      expect(split(...chunks)).toEqual(reference);
    }),
  );
});
