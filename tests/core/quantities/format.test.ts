// Checks the words and digits a person reads.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import * as format from '../../../src/core/quantities/format.ts';

/** Breaking and unbreakable blanks look alike to a person. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

test('temperatures and rises in either unit, with a true minus sign and never minus zero', () => {
  expect(plain(format.formatTemperature(101.26, 'C'))).toBe('101.3 °C');
  expect(plain(format.formatTemperature(100, 'F'))).toBe('212.0 °F');
  expect(plain(format.formatTemperature(-4.2, 'C', 0))).toBe('−4 °C');
  expect(plain(format.formatTemperature(-0.02, 'C'))).toBe('0.0 °C');
  expect(plain(format.formatRise(3.94, 'F'))).toBe('7.1 °F');
  expect(plain(format.formatRise(-0.2, 'C'))).toBe('−0.2 °C');
});

test('volumes and lengths with at most three figures', () => {
  expect(plain(format.formatVolume(0.853, 'litre'))).toBe('0.85 L');
  expect(plain(format.formatVolume(0.997, 'litre'))).toBe('1.0 L');
  expect(plain(format.formatVolume(12.44, 'litre'))).toBe('12.4 L');
  expect(plain(format.formatVolume(99.97, 'litre'))).toBe('100 L');
  expect(plain(format.formatVolume(140.3, 'us-gallon'))).toBe('37.1 US gal');
  expect(plain(format.formatVolume(4.54609, 'imperial-gallon'))).toBe('1.0 imp gal');
  expect(plain(format.formatVolume(12.44, 'litre', 0))).toBe('12 L');
  expect(plain(format.formatLength(62.4, 'mm'))).toBe('62 mm');
  expect(plain(format.formatLength(62, 'inch'))).toBe('2.4 in');
});

test('strength shows only the digits that its range allows', () => {
  expect(plain(format.formatStrength(66.34, 65.6, 67.1))).toBe('66.3 °Bx');
  expect(plain(format.formatStrength(52.3, 50, 55))).toBe('52 °Bx');
  expect(plain(format.formatStrength(9.2, 3.6, 15.1))).toBe('4–15 °Bx');
  expect(plain(format.formatStrength(4.2, 0, 11.7))).toBe('below 12 °Bx');
  expect(plain(format.formatStrength(52.3, null, null))).toBe('52 °Bx');
});

test('strength in °Baumé and specific gravity with digits of the same worth: 66.9 °Bx is 36.1 °Bé and 1.332 (60/60 °F)', () => {
  expect(plain(format.formatStrength(66.9, 66.2, 67.6, 'baume'))).toBe('36.1 °Bé');
  expect(plain(format.formatStrength(66.9, 66.2, 67.6, 'sg'))).toBe('1.332 SG');
  expect(plain(format.formatStrength(66.9, 63, 70, 'baume'))).toBe('36 °Bé');
  expect(plain(format.formatStrength(66.9, 63, 70, 'sg'))).toBe('1.33 SG');
  expect(plain(format.formatStrength(9.2, 3.6, 15.1, 'sg'))).toBe('1.01–1.06 SG');
  expect(plain(format.formatStrength(4.2, 0, 11.7, 'baume'))).toBe('below 7 °Bé');
  expect(format.formatStrength(90, 89, 91, 'sg')).toBe('not known');
});

test('pressures, masses and powers in either unit', () => {
  expect(plain(format.formatPressure(998.2, 'hpa'))).toBe('998 hPa');
  expect(plain(format.formatPressure(998.2, 'inhg'))).toBe('29.48 inHg');
  expect(plain(format.formatMass(12.44, 'kg'))).toBe('12.4 kg');
  expect(plain(format.formatMass(12.44, 'pound'))).toBe('27.4 lb');
  expect(plain(format.formatPower(8012, 'watt'))).toBe('8.01 kW');
  expect(plain(format.formatPower(12_000, 'watt'))).toBe('12 kW');
  expect(plain(format.formatPower(200, 'watt'))).toBe('0.2 kW');
  expect(plain(format.formatPower(8000, 'btu-per-hour'))).toBe('27300 Btu/h');
});

test('a value with its uncertainty has no digit that it does not know', () => {
  for (const [value, sigma, text] of [
    [98.712, 0.13, '98.7 °C ±0.1'],
    [98.712, 0.096, '98.7 °C ±0.1'],
    [98.712, 0.04, '98.71 °C ±0.04'],
    [98.712, 0.97, '99 °C ±1'],
    [1243.7, 32, '1240 °C ±30'],
    [1243.7, 96, '1200 °C ±100'],
    [-0.02, 0.3, '0.0 °C ±0.3'],
    [99.974, 0, '99.974 °C'],
  ] as const) {
    expect(plain(format.formatMeasured({ value, sigma }, '°C'))).toBe(text);
  }
});

test('the last printed digit is about the size of the uncertainty, whatever the value', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.double({ min: 1e-6, max: 1e5, noNaN: true }),
      (value, sigma) => {
        const [shown, spread] = plain(format.formatMeasured({ value, sigma }, 'x'))
          .replace('\u2212', '-')
          .split(' x ±');
        // Rounded to one figure a spread is at most half as much again or a third less, and the value to half of it.
        expect(Number(spread) / sigma).toBeGreaterThan(0.66);
        expect(Number(spread) / sigma).toBeLessThan(1.34);
        expect(Math.abs(Number(shown) - value)).toBeLessThanOrEqual(0.5 * Number(spread) * 1.0001 + 1e-9);
      },
    ),
  );
});

test('ranges of numbers', () => {
  expect(plain(format.formatRange(65, 66.52, 1, '°Bx'))).toBe('65.0–66.5 °Bx');
  expect(plain(format.formatRange(66.01, 66.04, 1, '°Bx'))).toBe('66.0 °Bx');
  expect(plain(format.formatRange(-2, 3, 0, '°C'))).toBe('−2 to 3 °C');
});

test('what is not known is said so', () => {
  for (const text of [
    format.formatNumber(null, 1),
    format.formatTemperature(null, 'C'),
    format.formatRise(null, 'F'),
    format.formatVolume(null, 'litre'),
    format.formatLength(null, 'inch'),
    format.formatStrength(null, null, null),
    format.formatPressure(null, 'hpa'),
    format.formatMass(null, 'pound'),
    format.formatPower(null, 'watt'),
    format.formatMeasured(null, '°C'),
    format.formatMeasured({ value: NaN, sigma: 1 }, '°C'),
    format.formatRange(null, 3, 0, '°C'),
    format.formatTemperature(NaN, 'C'),
  ]) {
    expect(text).toBe('not known');
  }
});

test('no hyphen stands for a minus sign', () => {
  fc.assert(
    fc.property(fc.double({ min: -500, max: 500, noNaN: true }), (value) => {
      for (const text of [format.formatTemperature(value, 'C'), format.formatRange(value, value + 2, 1, '°C')]) {
        expect(text).not.toContain('-');
        expect(text).not.toContain('−0.0\u00a0');
      }
    }),
  );
});

test('syrup has a second digit where it is little: nobody finds 1.3 L where 1.25 L were typed', () => {
  expect([1.25, 0.4, 9.994, 12.34].map((litres) => plain(format.formatSyrup(litres, 'litre')))).toEqual([
    '1.25 L',
    '0.40 L',
    '9.99 L',
    '12.3 L',
  ]);
  expect(plain(format.formatSyrup(3.785411784, 'us-gallon'))).toBe('1.00 US gal');
});

test.each([
  // σ is the width / 2.5632: 14.6, 0.10, 3.7, 0.17, 270, 0.02 and 0.4.
  [56.4, 40.7, 78, '56 kg', '41 kg', '78 kg'],
  [0.4, 0.29, 0.55, '0.4 kg', '0.3 kg', '0.6 kg'],
  [24, 19.7, 29.2, '24 kg', '20 kg', '29 kg'],
  [1.42, 1.22, 1.66, '1.4 kg', '1.2 kg', '1.7 kg'],
  [1234, 900, 1592, '1200 kg', '900 kg', '1600 kg'],
  [0.04, 0.02, 0.08, '0.04 kg', '0.02 kg', '0.08 kg'],
  [0.04, -0.5, 0.6, '0.0 kg', '−0.5 kg', '0.6 kg'],
  [12.34, 12.33, 12.35, '12.3 kg', '12.3 kg', '12.3 kg'],
])('%d kg between %d and %d have the digits that the range allows', (value, low, high, ...words) => {
  const { value: said, low: least, high: most } = format.formatMassRange({ value, low, high }, 'kg');
  expect([said, least, most].map((each) => plain(each ?? ''))).toEqual(words);
});

test('a range that is not known has no ends, and one in another unit its own digits', () => {
  const { value, ...ends } = format.formatSyrupRange({ value: 1.417, low: null, high: null }, 'litre');
  expect([plain(value), ends]).toEqual(['1.42 L', { low: null, high: null }]);
  expect(plain(format.formatSyrupRange({ value: 1.42, low: 1.22, high: 1.65 }, 'us-gallon').value)).toBe('0.38 US gal');
  expect(plain(format.formatVolumeRange({ value: 140, low: 139.9, high: 140.1 }, 'litre').value)).toBe('140 L');
});
