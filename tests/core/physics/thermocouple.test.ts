// Checks thermocouples K, J and T against the NIST tables, that both directions undo each other, and the cold junction.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  thermocoupleCelsius,
  thermocoupleMillivolts,
  type ThermocoupleType,
  tipCelsius,
} from '../../../src/core/physics/thermocouple.ts';
import { readTable } from './published-table.ts';

const ranges: [ThermocoupleType, number, number][] = [
  ['K', -200, 1372],
  ['J', -210, 760],
  ['T', -200, 400],
];
const anyType = fc.constantFrom(...ranges.map(([type]) => type));

test('every printed millivolt: NIST ITS-90 reference tables (below 0 °C read, the others from memory)', () => {
  for (const row of readTable('thermocouple_checks')) {
    const millivolts = thermocoupleMillivolts(row.text('type') as ThermocoupleType, row.number('t_C'));
    expect(millivolts?.toFixed(3).replace(/^-(0\.000)$/, '$1')).toBe(row.text('table_mV'));
  }
});

test('°C from the printed millivolts, as near as their last digit lets them be', () => {
  for (const row of readTable('thermocouple_checks')) {
    const type = row.text('type') as ThermocoupleType;
    const [celsius, printed] = [row.number('t_C'), row.number('table_mV')];
    const perMillivolt = Math.abs(
      1 / (thermocoupleMillivolts(type, celsius + 0.5)! - thermocoupleMillivolts(type, celsius + 0.4)!) / 10,
    );
    // At the cold end the printed voltage may lie just outside of the curve.
    const back = thermocoupleCelsius(type, printed) ?? celsius;
    expect(Math.abs(back - celsius), `${type} ${celsius} °C`).toBeLessThan(0.00055 * perMillivolt);
  }
});

test.each(ranges)('type %s: back from its own millivolts within 1e-6 °C from %i to %i °C', (type, lowest, highest) => {
  fc.assert(
    fc.property(fc.double({ min: lowest, max: highest, noNaN: true }), (celsius) => {
      const back = thermocoupleCelsius(type, thermocoupleMillivolts(type, celsius) ?? NaN) ?? NaN;
      expect(Math.abs(back - celsius)).toBeLessThan(1e-6);
    }),
    { numRuns: 2000 },
  );
  expect(thermocoupleMillivolts(type, lowest - 0.001)).toBeNull();
  expect(thermocoupleMillivolts(type, highest + 0.001)).toBeNull();
  expect(thermocoupleCelsius(type, thermocoupleMillivolts(type, highest)! + 0.001)).toBeNull();
  expect(thermocoupleCelsius(type, thermocoupleMillivolts(type, lowest)! - 0.001)).toBeNull();
});

test.each(ranges)('type %s rises without a step, at 0 °C and all along', (type, lowest, highest) => {
  for (let celsius = lowest; celsius < highest; celsius += 0.5) {
    const step = thermocoupleMillivolts(type, celsius + 0.5)! - thermocoupleMillivolts(type, celsius)!;
    expect(step).toBeGreaterThan(0.007);
    expect(step).toBeLessThan(0.035);
  }
});

test('the tip is warmer than the cold junction by voltages, not by degrees', () => {
  // NIST tables, type K: 4.096 mV at 100 °C less 1.000 mV at 25 °C (from memory).
  expect(Math.abs(tipCelsius('K', 4.096 - 1.0, 25)! - 100)).toBeLessThan(0.02);
  // Tip and terminals alike give no voltage.
  expect(tipCelsius('J', 0, 31.25)).toBeCloseTo(31.25, 8);
  expect(tipCelsius('T', 1, 401)).toBeNull();
});

test('the tip comes back from any tip and cold junction', () => {
  const here = fc.double({ min: -30, max: 60, noNaN: true });
  const there = fc.double({ min: -60, max: 400, noNaN: true });
  fc.assert(
    fc.property(anyType, there, here, (type, tip, cold) => {
      const millivolts = thermocoupleMillivolts(type, tip)! - thermocoupleMillivolts(type, cold)!;
      expect(Math.abs((tipCelsius(type, millivolts, cold) ?? NaN) - tip)).toBeLessThan(1e-6);
    }),
  );
});

test('no number gives NaN', () => {
  fc.assert(
    fc.property(anyType, fc.double(), fc.double(), (type, one, other) => {
      for (const found of [
        thermocoupleMillivolts(type, one),
        thermocoupleCelsius(type, one),
        tipCelsius(type, one, other),
      ])
        expect(found === null || Number.isFinite(found)).toBe(true);
    }),
    { numRuns: 2000 },
  );
});
