// Reads 100,000 lines that were mutated at random, in every format: nothing throws, no value is out of range, memory stays flat.
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import type { PortFormat, Sensor } from '../../../src/core/boil/entries.ts';
import { plausibleCelsius, probeCelsius } from '../../../src/core/boil/probe-value.ts';
import { nextUniform, randomStream } from '../../../src/core/simulation/random.ts';
import { readLine } from '../../../src/ingest/read-line.ts';
import { recognise } from '../../../src/ingest/recognise/recognise.ts';

/** Another seed, another 100,000 lines: PANWARDEN_SEED=7 before the test's command. */
const seed = Number(process.env.PANWARDEN_SEED ?? 20270418);
const count = 100_000;

const grown: [PortFormat, string][] = [
  [{ kind: 'pairs' }, 'T1=101.25C T2=214.3F; pan3:99.5, T4=nan'],
  [{ kind: 'columns', separator: ';', decimal: ',', channels: ['', 'T1', 'T2'] }, '07:30:01;98,25;97,1'],
  [{ kind: 'json', channels: { T1: '/probes/0/c', T2: '/probes/1/c' } }, '{"probes":[{"c":98.25},{"c":null}]}'],
  [
    { kind: 'pattern', pattern: '(?P<channel>T\\d) is (?P<value>[-0-9.,eEx]+) ?(?P<unit>[CFK])?' },
    'T1 is 98.25 C, T2 is 97.1 F',
  ],
];
const sensors: (Sensor | undefined)[] = [
  undefined,
  { kind: 'temperature', unit: 'F' },
  { kind: 'thermocouple', type: 'K', cold_junction: 'CJ' },
  { kind: 'rtd', r0_ohm: 100 },
  { kind: 'ntc', r25_ohm: 10_000, beta_k: 3950 },
];
const pieces = [
  '',
  '-',
  '+',
  '.',
  ',',
  ';',
  '=',
  ':',
  '"',
  '{',
  '}',
  '[',
  '\0',
  '\xff',
  '\t',
  ' ',
  '9',
  '0',
  '1e999',
  'NaN',
  '0x1F',
  'Infinity',
  '-0',
  'C',
  'T1=',
];

const stream = randomStream(seed, 'lines');
const below = (end: number): number => Math.floor(nextUniform(stream) * end);

/** One to four places changed, doubled, taken out or cut off. */
function mutated(line: string): string {
  let out = line;
  for (let times = 1 + below(4); times > 0; times--) {
    const at = below(out.length + 1);
    const to = at + below(4);
    const put = pieces[below(pieces.length)]!;
    const tail = below(10);
    if (tail === 0) out = out.slice(0, at);
    else if (tail === 1) out = out + out.slice(at);
    else out = out.slice(0, at) + put + out.slice(to);
  }
  return out.slice(0, 5000);
}

function readOne(): void {
  const [format, line] = grown[below(grown.length)]!;
  for (const reading of readLine(mutated(line), format).readings) {
    const celsius = probeCelsius(sensors[below(sensors.length)], reading, () => 25);
    if (typeof celsius !== 'number') continue;
    if (!(celsius >= plausibleCelsius.lowest && celsius <= plausibleCelsius.highest))
      throw new Error(`${celsius} °C from ${JSON.stringify(reading)}; seed ${seed}`);
  }
}

function heapUsed(): number {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
  return process.memoryUsage().heapUsed;
}

test(`${count} mutated lines, seed ${seed}`, { timeout: 120_000 }, () => {
  for (let n = 0; n < count / 10; n++) readOne();
  const before = heapUsed();
  for (let n = count / 10; n < count; n++) readOne();
  expect(heapUsed() - before).toBeLessThan(4_000_000);
});

test(
  `the recogniser takes mutated lines without throwing, and shows only what is then read; seed ${seed}`,
  { timeout: 120_000 },
  () => {
    for (let n = 0; n < 300; n++) {
      const [, line] = grown[below(grown.length)]!;
      const lines = Array.from({ length: 1 + below(6) }, () => mutated(line));
      const { format, lines: shown } = recognise(lines);
      shown.forEach(({ spans, text }) => {
        const read = format === null ? [] : readLine(text, format).readings;
        for (const span of spans)
          if (span.is === 'value') expect(read.find(({ channel }) => channel === span.channel)?.value).toBe(span.value);
      });
    }
  },
);

test('a pattern that would take a backtracking engine for ever is read in linear time: that the test ends is the proof', () => {
  const explosive: PortFormat = { kind: 'pattern', pattern: '(?P<channel>(?:a+)+)+(?P<value>[0-9])$' };
  expect(readLine('a'.repeat(4000), explosive).readings).toEqual([]);
});
