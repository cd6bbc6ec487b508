// Checks what a number in a line is in °C under every kind of sensor, and that nothing else passes for a temperature.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Sensor } from '../../../src/core/boil/entries.ts';
import type { LineReading, LineUnit } from '../../../src/core/boil/line-reading.ts';
import { probeCelsius } from '../../../src/core/boil/probe-value.ts';

const said = (value: number | null, unit: LineUnit | null = null): LineReading => ({ channel: 'T1', value, unit });
const at = (celsius: number) => () => celsius;
const celsius = (sensor: Sensor | undefined, reading: LineReading, cold = 20) =>
  probeCelsius(sensor, reading, at(cold));

const K: Sensor = { kind: 'thermocouple', type: 'K', cold_junction: 'CJ' };
const pt100: Sensor = { kind: 'rtd', r0_ohm: 100 };
const byHart: Sensor = { kind: 'ntc', steinhart_hart: [0.001129148, 0.000234125, 0.0000000876741] };
const byBeta: Sensor = { kind: 'ntc', r25_ohm: 10_000, beta_k: 3950 };

test('degrees: a unit in the line wins over the setup, and none at all means Celsius', () => {
  expect(celsius(undefined, said(101.25))).toBe(101.25);
  expect(celsius(undefined, said(212, 'F'))).toBe(100);
  expect(celsius(undefined, said(214.3, 'F'))).toBeCloseTo(101.2778, 4);
  expect(celsius({ kind: 'temperature' }, said(300, 'K'))).toBeCloseTo(26.85, 9);
  expect(celsius({ kind: 'temperature', unit: 'F' }, said(212))).toBe(100);
  expect(celsius({ kind: 'temperature', unit: 'F' }, said(99.5, 'C'))).toBe(99.5);
  expect(celsius({ kind: 'temperature', unit: 'K' }, said(373.15))).toBeCloseTo(100, 9);
});

test.each<[number, LineUnit | null]>([
  [850, null],
  [-127, null],
  [-60.01, 'C'],
  [0, 'K'],
  [850, 'F'],
  [-0, null],
  [-0, 'C'],
])('%d with the unit %s is no temperature that a probe over a fire can have meant', (value, unit) => {
  expect(celsius(undefined, said(value, unit))).toBe('implausible');
});

test('the values of the published tables (read or from memory as fixtures/tables says)', () => {
  const tables: [Sensor, number, number, number, number][] = [
    [K, 4.096 - 0.798, 20, 100, 0.02], // NIST type K: 0.798 mV at 20 °C (memory)
    [K, -0.798, 20, 0, 0.02],
    [{ ...K, type: 'J' }, 5.269 - 1.019, 20, 100, 0.02], // 1.019 mV at 20 °C (memory)
    [{ ...K, type: 'T' }, 4.279 - 0.79, 20, 100, 0.02], // 0.790 mV at 20 °C (memory)
    [pt100, 138.51, 20, 100, 0.02],
    [{ kind: 'rtd', r0_ohm: 1000 }, 921.6, 20, -20, 0.02],
    [byHart, 10_000, 20, 25, 0.001],
    [byBeta, 1000, 20, 87.72, 0.001],
  ];
  for (const [sensor, number, cold, expected, within] of tables) {
    const found = celsius(sensor, said(number), cold);
    expect(Math.abs((found as number) - expected), JSON.stringify(sensor)).toBeLessThan(within);
  }
});

test('a tip as warm as its plug gives no millivolts, with either sign', () => {
  expect(celsius(K, said(0))).toBeCloseTo(20, 8);
  expect(celsius(K, said(-0))).toBeCloseTo(20, 8);
});

test.each([K, pt100, byHart, byBeta])('a unit does not fit %o, whatever the number; broken is broken', (sensor) => {
  for (const unit of ['C', 'F', 'K'] as const) expect(celsius(sensor, said(100, unit))).toBe('has-unit');
  expect(celsius(sensor, said(null))).toBeNull();
});

test('numbers that are no temperature of the sensor, or one that no pan has, are off its scale', () => {
  for (const ohms of [-5, 0, 17, 300, 1e7]) expect(celsius(pt100, said(ohms))).toBe('off-scale');
  for (const ohms of [-5, 0, -0, 1, 1e9]) expect(celsius(byHart, said(ohms))).toBe('off-scale');
  for (const ohms of [-5, 0, 1e9]) expect(celsius(byBeta, said(ohms))).toBe('off-scale');
  for (const millivolts of [-9, 25, 1000]) expect(celsius(K, said(millivolts))).toBe('off-scale');
});

test('a thermocouple has no value without its cold junction, and says why', () => {
  for (const why of ['awaited', 'cold-junction-silent', 'cold-junction-broken'] as const)
    expect(probeCelsius(K, said(4.1), () => why)).toBe(why);
});

test('whatever comes, it is a temperature from -60 to 450 °C or a reason, never NaN', () => {
  const anySensor = fc.constantFrom<Sensor | undefined>(undefined, K, pt100, byHart, byBeta, {
    kind: 'temperature',
    unit: 'K',
  });
  const anyUnit = fc.constantFrom<LineUnit | null>(null, null, 'C', 'F', 'K');
  const anyNumber = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.double({ min: -100, max: 500, noNaN: true }),
    fc.double({ min: 0, max: 1e6, noNaN: true }),
  );
  fc.assert(
    fc.property(anySensor, anyNumber, anyUnit, fc.double({ min: -60, max: 450 }), (sensor, value, unit, cold) => {
      const found = celsius(sensor, said(value, unit), cold);
      expect(typeof found === 'string' || (found! >= -60 && found! <= 450)).toBe(true);
    }),
    { numRuns: 5000 },
  );
});
