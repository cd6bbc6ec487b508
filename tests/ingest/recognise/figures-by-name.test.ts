// Figures that are printed in degrees beside a pan's temperature and are none of it: dialects of fresh eyes, in which they were once read.
import { expect, test } from 'vitest';
import { recognise } from '../../../src/ingest/recognise/recognise.ts';

const twenty = (line: (celsius: string, n: number) => string): string[] =>
  Array.from({ length: 20 }, (_, n) => line((96.1 + n / 10).toFixed(1), n));

test.each([
  ['a set point', (c: string) => `PV=${c}C SV=104.0C`, ['PV']],
  ['a limit', (c: string) => `T=${c}C LIM=110.0C`, ['T']],
  ['a rate', (c: string) => `T=${c}C ROC=0.3C`, ['T']],
  ['a difference', (c: string) => `T=${c}C dT=0.1C`, ['T']],
  ['an offset', (c: string) => `T=${c}C OFS=-0.4C`, ['T']],
  ['the board itself', (c: string) => `T=${c}C CPU=41.0C`, ['T']],
  ['the case of the board', (c: string) => `T=${c}C case=33.1C`, ['T']],
  ['what a controller holds', (c: string) => `T ${c}C SP 104.0C HYS 2.0C CAL -0.4C RATE 0.6C`, ['T']],
  ['a node’s name', (c: string, n: number) => `up=${33 + n}s heap=181K T1=${c}C node=3C crc=6${n % 10}`, ['T1']],
])('%s is left out, and said to be', (_what, line, read) => {
  const { channels, reasons } = recognise(twenty(line));
  expect(channels.map(({ channel }) => channel)).toEqual(read);
  expect(reasons.join(' ')).toMatch(/left out/i);
});

test('a unit that only a line at the start says is taken and asked about; an empty column is said', () => {
  const lines = twenty((c, n) => `${n}\t${(Number(c) * 1.8 + 32).toFixed(1)}\t-----`).slice(0, 16);
  const { channels, reasons, verdict } = recognise(['units: deg F', '#\tback\tfront', ...lines]);
  expect([verdict, channels.map(({ channel, unit }) => `${channel} ${unit}`)]).toEqual(['unsure', ['back F']]);
  expect(reasons).toContain('back: A line without a reading says degrees Fahrenheit.');
  expect(reasons).toContain('Left out: column 3 (front), no number in it so far.');
});

test('a sign that stands apart from its number makes the proposal unsure', () => {
  const { verdict, reasons } = recognise(twenty((c) => `+  ${c} C`));
  expect([verdict, reasons.join(' ')]).toEqual(['unsure', expect.stringContaining('A sign stands apart')]);
});

test('a number of another name is no repeat of the one before it, whatever letter it begins with', () => {
  const lines = Array.from(
    { length: 20 },
    (_, n) => `pan=${(97 + n / 20).toFixed(2)}C coil=${(210 + n / 11).toFixed(1)}ohm`,
  );
  const { channels, reasons } = recognise(lines);
  expect([...channels.map(({ channel }) => channel), reasons.join(' ')]).toEqual([
    'pan',
    expect.stringContaining('coil'),
  ]);
});
