// Checks the saturation line against the IAPWS release and that its two directions undo each other.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { saturationPressureHpa, saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import { readTable } from './published-table.ts';

const hpaPerMpa = 10_000;

test('saturation pressure and temperature: IAPWS R7-97(2012) Tables 35 and 36 (500 K and 10 MPa read, the others from memory)', () => {
  for (const row of readTable('if97_region4_checks')) {
    const [, kind, at] = /^(ps|Ts)_\w+\((\d+\.?\d*)/.exec(row.text('quantity')) ?? [];
    const computed =
      kind === 'ps'
        ? (saturationPressureHpa(Number(at) - 273.15) ?? NaN) / hpaPerMpa
        : (saturationTemperatureCelsius(Number(at) * hpaPerMpa) ?? NaN) + 273.15;
    // The release prints nine digits; taking 273.15 off and on again costs none of them.
    expect(Math.abs(computed / row.number('release_value') - 1), row.text('quantity')).toBeLessThan(2e-9);
  }
});

test('water points from 650 to 1050 hPa: our own table by IF97 equation 31, and its slope', () => {
  for (const row of readTable('water_boiling_vs_pressure')) {
    const pressure = row.number('p_hPa');
    const celsius = saturationTemperatureCelsius(pressure) ?? NaN;
    expect(celsius).toBeCloseTo(row.number('Tb_degC'), 4);
    const slope =
      (saturationTemperatureCelsius(pressure + 0.5) ?? NaN) - (saturationTemperatureCelsius(pressure - 0.5) ?? NaN);
    expect(slope).toBeCloseTo(row.number('dTb_dp_C_per_hPa'), 4);
  }
});

test('inverse of inverse is the same', () => {
  // At the very ends of the line rounding may put one of the two outside.
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 373.9, noNaN: true }), (celsius) => {
      const back = saturationTemperatureCelsius(saturationPressureHpa(celsius) ?? NaN) ?? NaN;
      expect(Math.abs(back - celsius)).toBeLessThan(1e-9);
    }),
  );
});

test('more pressure boils hotter', () => {
  const pressure = fc.double({ min: 6.2, max: 220_000, noNaN: true });
  fc.assert(
    fc.property(pressure, fc.double({ min: 1.0001, max: 1.5, noNaN: true }), (low, factor) => {
      fc.pre(low * factor < 220_640);
      expect(saturationTemperatureCelsius(low * factor)).toBeGreaterThan(saturationTemperatureCelsius(low) ?? NaN);
    }),
  );
});

test('outside the saturation line nothing is known', () => {
  for (const pressure of [-1, 0, 6.11, 220_641, Infinity, NaN])
    expect(saturationTemperatureCelsius(pressure)).toBeNull();
  for (const celsius of [-0.01, 374, -Infinity, Infinity, NaN]) expect(saturationPressureHpa(celsius)).toBeNull();
});
