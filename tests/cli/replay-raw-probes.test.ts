// `replay` of a recording whose probes give millivolts, ohms and Fahrenheit: temperatures as the published tables have them.
import { afterAll, expect, test } from 'vitest';
import { ownFolder, panwarden } from './program.ts';

const own = ownFolder();
afterAll(() => own.remove());

/** Invented: four pots at Tarn Hollow behind one board that sends what its converters measure, and one behind another. */
const header = {
  recording: 'panwarden',
  version: 1,
  name: 'Raw probes, invented',
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow', altitude_m: 0 },
  ports: [
    { id: 'A' },
    { id: 'B', format: { kind: 'columns', separator: ';', decimal: ',', channels: ['', 'cold', 'couple', 'ohms'] } },
  ],
  probes: [
    { id: 'A/1', port: 'A', channel: 'V1', sensor: { kind: 'thermocouple', type: 'K', cold_junction: 'CJ' } },
    { id: 'A/2', port: 'A', channel: 'R2', sensor: { kind: 'rtd', r0_ohm: 100 } },
    {
      id: 'A/3',
      port: 'A',
      channel: 'R3',
      sensor: { kind: 'ntc', steinhart_hart: [1.129241e-3, 2.341077e-4, 8.775468e-8] },
    },
    { id: 'A/4', port: 'A', channel: 'F4', sensor: { kind: 'temperature', unit: 'F' } },
    { id: 'B/1', port: 'B', channel: 'couple', sensor: { kind: 'thermocouple', type: 'T', cold_junction: 'cold' } },
    { id: 'B/2', port: 'B', channel: 'ohms', offset_c: -0.5, sensor: { kind: 'ntc', r25_ohm: 10_000, beta_k: 3950 } },
  ],
  pans: ['A/1', 'A/2', 'A/3', 'A/4', 'B/1', 'B/2'].map((probe) => ({ id: `pan ${probe}`, probe })),
};

function replayed(name: string, entries: readonly unknown[]) {
  const file = own.write(name, `${[header, ...entries].map((one) => JSON.stringify(one)).join('\n')}\n`);
  const { status, stderr, lines } = panwarden('replay', file, '--json', '--every', '10');
  expect(status).toBe(0);
  const last = lines().filter(({ kind, t }) => kind === 'reading' && t === 30_000);
  return { stderr, at: Object.fromEntries(last.map((reading) => [reading['pan'], reading['temperature_c']])) };
}

const seconds = (line: (second: number) => unknown[]) => Array.from({ length: 31 }, (_, second) => line(second)).flat();

test('temperatures come out as the tables say', () => {
  const { stderr, at } = replayed(
    'raw.boil.jsonl',
    seconds((second) => [
      // NIST type K, 4.096 - 1.000 mV (memory); IEC 60751 (read); a thermistor maker's table at 0 °C (read); 212 °F.
      { t: second * 1000, port: 'A', line: 'V1=3.096 CJ=25.0C R2=138.51 R3=32650.9 F4=212' },
      // NIST type T, 4.279 - 0.992 mV (memory); the beta equation worked out apart.
      { t: second * 1000 + 100, port: 'B', line: `07:30:${String(second).padStart(2, '0')};25,0;3,287;1000` },
    ]),
  );
  expect(stderr).toBe('');
  expect(at).toEqual({
    'pan A/1': expect.closeTo(100, 1),
    'pan A/2': expect.closeTo(100, 1),
    'pan A/3': expect.closeTo(0, 2),
    'pan A/4': 100,
    'pan B/1': expect.closeTo(100, 1),
    'pan B/2': expect.closeTo(87.22, 2),
  });
});

test('what does not fit has no value, and each probe is named on standard error once', () => {
  const { stderr, at } = replayed(
    'misfits.boil.jsonl',
    seconds((second) => [
      { t: second * 1000, port: 'A', line: 'V1=3.096C CJ=25.0C R2=9999.9 R3=32650.9K F4=100C' },
      { t: second * 1000 + 100, port: 'B', line: 'x;nan;3,287;1000' },
    ]),
  );
  const said = stderr.trimEnd().split('\n');
  for (const probe of ['A/1', 'A/2', 'A/3', 'B/1'])
    expect(said.filter((line) => line.includes(`The probe ${probe} has no value: `))).toHaveLength(1);
  expect(said).toHaveLength(4);
  expect(at).toEqual({
    'pan A/1': null,
    'pan A/2': null,
    'pan A/3': null,
    'pan A/4': 100,
    'pan B/1': null,
    'pan B/2': expect.closeTo(87.22, 2),
  });
});
