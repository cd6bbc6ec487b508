// Checks density against the CRC table and the ICUMSA polynomial as computed apart, and its inverse.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { brixFromDensity, densityKgPerM3 } from '../../../src/core/physics/density.ts';
import { celsiusFromFahrenheit } from '../../../src/core/quantities/units.ts';
import { readTable } from './published-table.ts';

const density = (brix: number, celsius: number): number => densityKgPerM3(brix, celsius) ?? NaN;

test('density at 20 °C: CRC Handbook sucrose table, within 0.13 kg/m³ to 46 °Bx, 0.3 to 72 and 0.85 to 84', () => {
  for (const row of readTable('density_crc_20C')) {
    const brix = row.number('brix');
    const limit = brix <= 46 ? 0.13 : brix <= 72 ? 0.3 : 0.85;
    expect(Math.abs(density(brix, 20) - row.number('rho20_crc_kgm3')), `${brix} °Bx`).toBeLessThan(limit);
  }
});

/** Columns whose name is a rounded Fahrenheit degree. */
const roundedFahrenheit: Record<string, number> = {
  '15.56': celsiusFromFahrenheit(60),
  '99.44': celsiusFromFahrenheit(211),
};

test('density from 0 to 100 °C: ICUMSA polynomial as computed apart, to its last printed digit', () => {
  for (const row of readTable('density_icumsa_computed')) {
    for (const column of ['0', '4', '15.56', '20', '25', '40', '60', '80', '90', '99.44', '100']) {
      const celsius = roundedFahrenheit[column] ?? Number(column);
      const difference = density(row.number('brix'), celsius) - row.number(`t${column}`);
      expect(Math.abs(difference), `${row.number('brix')} °Bx, ${celsius} °C`).toBeLessThan(0.0051);
    }
  }
});

test('hot water: saturated liquid of IAPWS-IF97 from 80 to 105 °C, within 0.02 kg/m³', () => {
  for (const row of readTable('latent_heat_if97').filter((row) => row.number('t_C') <= 105)) {
    expect(Math.abs(density(0, row.number('t_C')) - row.number('rho_liq'))).toBeLessThan(0.02);
  }
});

const anyBrix = fc.double({ min: 0, max: 85, noNaN: true });
const anyCelsius = fc.double({ min: 0, max: 105, noNaN: true });

test('strength from density undoes density from strength to 1e-6 °Bx', () => {
  fc.assert(
    fc.property(anyBrix, anyCelsius, (brix, celsius) => {
      const back = brixFromDensity(density(brix, celsius), celsius) ?? NaN;
      expect(Math.abs(back - brix)).toBeLessThan(1e-6);
    }),
  );
});

test('stronger is heavier at any temperature', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 84.9, noNaN: true }), anyCelsius, (brix, celsius) => {
      expect(density(brix + 0.1, celsius)).toBeGreaterThan(density(brix, celsius));
    }),
  );
});

test('whatever comes in, the answer is a number in range or not known, never NaN', () => {
  fc.assert(
    fc.property(fc.double(), fc.double(), (value, celsius) => {
      const found = densityKgPerM3(value, celsius);
      expect(found === null || (found > 950 && found < 1500)).toBe(true);
      const brix = brixFromDensity(value, celsius);
      expect(brix === null || (brix >= 0 && brix <= 85)).toBe(true);
    }),
  );
});

test('outside the declared range nothing is known', () => {
  expect(densityKgPerM3(-0.1, 20)).toBeNull();
  expect(densityKgPerM3(85.1, 20)).toBeNull();
  expect(densityKgPerM3(66, -0.1)).toBeNull();
  expect(densityKgPerM3(66, 105.1)).toBeNull();
  expect(brixFromDensity(1500, 20)).toBeNull();
  expect(brixFromDensity(990, 20)).toBeNull();
});
