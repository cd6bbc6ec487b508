// Checks whole lines of millivolts and ohms against the published tables, and that faults of the wires are named in words.
import { expect, test } from 'vitest';
import type { Sensor } from '../../../src/core/boil/entries.ts';
import { misfitSentence } from '../../../src/core/boil/misfit.ts';
import { probeCelsius } from '../../../src/core/boil/probe-value.ts';
import { thermocoupleMillivolts, type ThermocoupleType } from '../../../src/core/physics/thermocouple.ts';
import { readPairs } from '../../../src/ingest/formats/pairs.ts';
import { readTable } from '../physics/published-table.ts';

const ofPan = (celsius: number): boolean => celsius >= -20 && celsius <= 400;

function read(sensor: Sensor, line: string): ReturnType<typeof probeCelsius> {
  const { readings } = readPairs(line);
  const cold = readings.find(({ channel }) => channel === 'CJ')?.value ?? 0;
  return probeCelsius(
    sensor,
    readings.find(({ channel }) => channel === 'T1')!,
    () => cold,
  );
}

test.each([0, 25])('NIST ITS-90, types K, J and T from -20 to 400 °C with the cold junction at %d °C', (cold) => {
  // Below 0 °C read, the others from memory, as the table says. The cold junction's voltage is the direct function's, whose
  // own test stands beside it: a second printed value would add its rounding of 0.013 °C.
  const rows = readTable('thermocouple_checks').filter((row) => ofPan(row.number('t_C')));
  expect(rows.length).toBeGreaterThan(25);
  for (const row of rows) {
    const type = row.text('type') as ThermocoupleType;
    const millivolts = row.number('table_mV') - thermocoupleMillivolts(type, cold)!;
    const sensor: Sensor = { kind: 'thermocouple', type, cold_junction: 'CJ' };
    const celsius = read(sensor, `T1=${millivolts.toFixed(5)} CJ=${cold}`);
    expect(Math.abs(Number(celsius) - row.number('t_C')), `${type} ${row.number('t_C')}`).toBeLessThan(0.02);
  }
});

test('IEC 60751 from -20 to 400 °C', () => {
  const rows = readTable('pt100_iec60751').filter((row) => ofPan(row.number('t_C')));
  expect(rows.length).toBeGreaterThan(30);
  for (const row of rows) {
    const celsius = read({ kind: 'rtd', r0_ohm: 100 }, `T1=${row.text('R_ohm')}`);
    expect(Math.abs(Number(celsius) - row.number('t_C'))).toBeLessThan(0.02);
  }
});

const pt100: Sensor = { kind: 'rtd', r0_ohm: 100 };
const ntc: Sensor = { kind: 'ntc', r25_ohm: 10_000, beta_k: 3950 };
const couple: Sensor = { kind: 'thermocouple', type: 'K', cold_junction: 'CJ' };

test.each<[string, Sensor, string, RegExp]>([
  ['a broken lead of platinum', pt100, 'T1=4095', /a wire is likely broken/],
  ['a shorted lead of platinum', pt100, 'T1=0.4', /shorted/],
  ['a broken lead of a thermistor', ntc, 'T1=9999999', /a wire is likely broken/],
  ['a shorted thermistor', ntc, 'T1=0.2', /shorted/],
  ['an open thermocouple', couple, 'T1=78.1 CJ=25', /a wire is likely broken/],
  // Type K at 100 °C with terminals at 25 °C gives 3.096 mV (NIST, from memory): with the wires exchanged its opposite.
  ['a thermocouple whose wires are exchanged', couple, 'T1=-3.096 CJ=25', /wires .*exchanged/],
  ['one that is exchanged over a fire', couple, 'T1=-7.5 CJ=25', /wires .*exchanged/],
])('%s gives no value and is named', (_, sensor, line, words) => {
  const why = read(sensor, line);
  if (why !== 'off-scale' && why !== 'reversed') throw new Error(`it gave ${why}`);
  const probe = { id: 'A/1', port: 'A', channel: 'T1', sensor };
  expect(misfitSentence(probe, why, readPairs(line).readings[0]!)).toMatch(words);
});

test('a tip in cold sap under a warm plug is no exchanged one', () => {
  expect(read(couple, 'T1=-0.95 CJ=25')).toBeCloseTo(1.3, 0);
});
