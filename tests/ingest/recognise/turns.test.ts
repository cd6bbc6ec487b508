// Probes that send a line each in turn are told apart by what stands before the number, and never read as one.
import { expect, test } from 'vitest';
import { recognise } from '../../../src/ingest/recognise/recognise.ts';
import { takeTurns } from '../../../src/ingest/recognise/turns.ts';

const twenty = (line: (n: number, celsius: (from: number) => string) => string): string[] =>
  Array.from({ length: 20 }, (_, n) => line(n, (from) => (from + n / 20).toFixed(2)));
const STARTS = [60, 99, 98];
const of = <T>(all: readonly T[], n: number): T => all[n % all.length]!;
const ADDRESSES = ['28FF4A11C316049E', '28FF0B77C3160471', '28FF92D0C31605E3'];

test.each([
  ['by an address', twenty((n, c) => `${of(ADDRESSES, n)} ${c(of(STARTS, n))} C`), ADDRESSES],
  ['by an address with its key', twenty((n, c) => `addr=${of(ADDRESSES, n)} t=${c(of(STARTS, n))}`), ADDRESSES],
  ['by a number', twenty((n, c) => `${(n % 3) + 1} ${c(of(STARTS, n))}`), ['1', '2', '3']],
  ['by a number between commas', twenty((n, c) => `${(n % 2) + 1},${c([60, 99][n % 2]!)},C`), ['1', '2']],
  ['by a number in JSON', twenty((n, c) => `{"id":${n % 2},"t":${c([60, 99][n % 2]!)}}`), ['0', '1']],
  [
    'by a word out of order',
    twenty((n, c) => `ch${of([0, 1, 1, 0, 2, 1, 0, 0, 2, 1], n)} ${c(98)}`),
    ['ch0', 'ch1', 'ch2'],
  ],
])('%s', (_how, lines, names) => {
  const { channels, lines: shown } = recognise(lines);
  expect(channels.map(({ channel }) => channel).sort()).toEqual([...names].sort());
  for (const { spans } of shown) expect(spans.filter(({ is }) => is === 'value')).toHaveLength(1);
});

test('where it cannot be told apart, nothing is read or it is asked about', () => {
  const two = recognise(twenty((n, c) => `[${n % 2}] a=${c(of(STARTS, n))} b=${c(50)}`));
  expect([two.verdict, two.reasons.join(' ')]).toEqual(['unsure', expect.stringContaining('take turns')]);
  const blinks = recognise(twenty((n, c) => `led=${n % 2} t=${c(98)}`));
  expect(blinks.verdict).toBe('unsure');
  const titled = recognise(['id,temp_c', ...twenty((n, c) => `${(n % 2) + 1},${c([60, 99][n % 2]!)}`)]);
  expect(titled.channels.map(({ channel }) => channel)).not.toContain('temp_c');
  const text = recognise(twenty((n, c) => `{"addr":"28-${n % 2}f","t":${c([60, 99][n % 2]!)}}`));
  expect(text.channels.map(({ channel }) => channel)).not.toContain('t');
});

test.each([
  ['a, b, c, a, b, c', ['a', 'b', 'c', 'a', 'b', 'c'], true],
  ['with one that is lost', ['a', 'b', 'c', 'a', 'c', 'a', 'b', 'c', 'a', 'b', 'c', 'a', 'b', 'c'], true],
  ['one alone', ['a', 'a', 'a', 'a'], false],
  ['a state that changes at times', ['on', 'on', 'on', 'off', 'off', 'on', 'on', 'on'], false],
  ['each another', ['1', '2', '3', '4', '5', '6'], false],
  ['without an order', ['a', 'c', 'b', 'a', 'b', 'c', 'b', 'a', 'c', 'a', 'b'], false],
])('%s: turns or not', (_what, texts, turns) => expect(takeTurns(texts)).toBe(turns));

test('what is seen in one line among many is left out, and said', () => {
  const lines = twenty((n, c) => (n === 7 ? 'emp 1 = 98.10 C' : `Temp 1 = ${c(98)} C Temp 2 = ${c(97)} C`));
  const { channels, reasons } = recognise(lines);
  expect(channels.map(({ channel }) => channel)).toEqual(['Temp 1', 'Temp 2']);
  expect(reasons).toContain('Left out: emp 1, it stands in 1 of 20 lines alone.');
});

test('a status word before a name at the start of a line is none of it, known or not', () => {
  const lines = twenty((n, c) => `#${n} ${n % 9 === 8 ? 'LOWBAT' : 'OK'} pan=${c(98)}C`);
  expect(recognise(lines).channels.map(({ channel }) => channel)).toEqual(['pan']);
});

test('numbers that jump to and fro with nothing before them are two probes perhaps, and never sure', () => {
  const mixed = recognise(twenty((n, c) => `pan ${c([60, 99][n % 2]!)} C`));
  expect([mixed.verdict, mixed.reasons.join(' ')]).toEqual(['unsure', expect.stringContaining('jump to and fro')]);
  // Cold sap was poured in: it falls once and climbs again.
  const poured = recognise(twenty((n, c) => `pan ${c(n < 8 ? 98 : 91)} C`));
  expect([poured.verdict, poured.reasons.join(' ')]).toEqual(['sure', expect.not.stringContaining('jump')]);
});
