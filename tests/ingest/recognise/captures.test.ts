// Holds the recogniser against captures of boards that we invented: what must come out of each stands beside it.
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { LineSpan } from '../../../src/core/boil/line-proposal.ts';
import { LineSplitter } from '../../../src/ingest/line-splitter.ts';
import { readLine } from '../../../src/ingest/read-line.ts';
import { recognise } from '../../../src/ingest/recognise/recognise.ts';

const folder = new URL('../../../fixtures/captures/', import.meta.url);
const names = readdirSync(folder).flatMap((file) => (file.endsWith('.expected.json') ? [file.slice(0, -14)] : []));

interface Expected {
  format: string | null;
  /** 'asks' where any sensor will do as long as the person is asked. */
  sensors: Record<string, object | null | 'asks'>;
  /** Sentences that must be among the reasons. */
  tells?: string[];
  readings: Record<string, number | null>[];
}

const expectedOf = (name: string): Expected =>
  JSON.parse(readFileSync(new URL(`${name}.expected.json`, folder), 'utf8'));
/** As from a port that was open before: its first line end tells that what follows is whole. */
const linesOf = (name: string): string[] =>
  new LineSplitter().push(Buffer.concat([Buffer.from('\n'), readFileSync(new URL(`${name}.txt`, folder))]));
const isValue = (span: LineSpan): span is LineSpan & { is: 'value' } => span.is === 'value';

test('there are captures to judge', () => expect(names.length).toBeGreaterThanOrEqual(22));

test.each(names)('%s', (name) => {
  const { format, sensors, readings, tells = [] } = expectedOf(name);
  const lines = linesOf(name);
  const proposal = recognise(lines);
  expect(proposal.format?.kind ?? null).toBe(format);
  expect(proposal.channels.map(({ channel }) => channel).sort()).toEqual(Object.keys(sensors).sort());
  for (const { channel, sensor, sure } of proposal.channels) {
    if (sensors[channel] === 'asks') expect(sure).toBe(false);
    else expect(sensor, channel).toEqual(sensors[channel]);
  }
  const shown = proposal.lines.map(({ spans }) =>
    Object.fromEntries(spans.filter(isValue).map((one) => [one.channel, one.value])),
  );
  expect(shown).toEqual(readings);
  expect(proposal.reasons).toEqual(expect.arrayContaining(tells));
});

test.each(names)('%s: what is shown is what the port then reads, and nothing overlaps', (name) => {
  const lines = linesOf(name);
  const { format, channels, lines: shown, reasons } = recognise(lines);
  expect(reasons.length).toBeGreaterThan(0);
  const known = new Set(channels.map(({ channel }) => channel));
  lines.forEach((line, at) => {
    const { spans, text, why } = shown[at]!;
    expect(text).toBe(line);
    const values = spans.filter(isValue);
    expect(why === null).toBe(values.length > 0);
    const read = format === null ? [] : readLine(line, format).readings.filter(({ channel }) => known.has(channel));
    const told = (one: { channel: string; value: number | null }): string => `${one.channel} ${one.value}`;
    expect(values.map(told).sort()).toEqual(read.map(told).sort());
    for (const { start, end, value } of values)
      if (value !== null) expect(Number(line.slice(start, end).replace(',', '.'))).toBe(value);
    spans.slice(1).forEach(({ start }, before) => expect(start).toBeGreaterThanOrEqual(spans[before]!.end));
  });
});
