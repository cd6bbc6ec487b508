// Checks the conversions against their definitions and that each undoes itself.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import * as units from '../../../src/core/quantities/units.ts';

test('temperatures: water freezes at 32 °F and 100 °C is 212 °F; a rise of 4 °C is 7.2 °F', () => {
  expect(units.fahrenheitFromCelsius(0)).toBe(32);
  expect(units.fahrenheitFromCelsius(100)).toBe(212);
  expect(units.celsiusFromFahrenheit(-40)).toBe(-40);
  expect(units.temperatureFromCelsius(100, 'F')).toBe(212);
  expect(units.temperatureFromCelsius(100, 'C')).toBe(100);
  expect(units.differenceFromCelsius(4, 'F')).toBeCloseTo(7.2, 12);
});

test('factors of NIST SP 811: inch of mercury 33.86389 hPa, US gallon 3.785412 L, imperial gallon 4.54609 L, inch 25.4 mm, pound 0.4535924 kg, Btu/h 0.2930711 W', () => {
  expect(units.hpaFromPressure(29.921, 'inhg')).toBeCloseTo(1013.24, 2);
  expect(units.litresFromVolume(1, 'us-gallon')).toBeCloseTo(3.785412, 6);
  expect(units.litresFromVolume(1, 'imperial-gallon')).toBe(4.54609);
  expect(units.litresFromVolume(1, 'litre')).toBe(1);
  expect(units.mmFromLength(2, 'inch')).toBe(50.8);
  expect(units.kgFromMass(1, 'pound')).toBeCloseTo(0.4535924, 7);
  expect(units.wattsFromPower(1, 'btu-per-hour')).toBeCloseTo(0.2930711, 7);
  expect(units.kelvinFromCelsius(25)).toBe(298.15);
});

test('there and back is the same, for every unit', () => {
  const there: [(x: number) => number, (x: number) => number][] = [
    [units.fahrenheitFromCelsius, units.celsiusFromFahrenheit],
    [units.kelvinFromCelsius, units.celsiusFromKelvin],
    ...(['hpa', 'inhg'] as const).map((unit): [(x: number) => number, (x: number) => number] => [
      (x) => units.pressureFromHpa(x, unit),
      (x) => units.hpaFromPressure(x, unit),
    ]),
    ...(['kg', 'pound'] as const).map((unit): [(x: number) => number, (x: number) => number] => [
      (x) => units.massFromKg(x, unit),
      (x) => units.kgFromMass(x, unit),
    ]),
    ...(['watt', 'btu-per-hour'] as const).map((unit): [(x: number) => number, (x: number) => number] => [
      (x) => units.powerFromWatts(x, unit),
      (x) => units.wattsFromPower(x, unit),
    ]),
    ...(['C', 'F'] as const).flatMap((unit): [(x: number) => number, (x: number) => number][] => [
      [(x) => units.temperatureFromCelsius(x, unit), (x) => units.celsiusFromTemperature(x, unit)],
      [(x) => units.differenceFromCelsius(x, unit), (x) => units.celsiusFromDifference(x, unit)],
    ]),
    ...(['litre', 'us-gallon', 'imperial-gallon'] as const).map(
      (unit): [(x: number) => number, (x: number) => number] => [
        (x) => units.volumeFromLitres(x, unit),
        (x) => units.litresFromVolume(x, unit),
      ],
    ),
    ...(['mm', 'inch'] as const).map((unit): [(x: number) => number, (x: number) => number] => [
      (x) => units.lengthFromMm(x, unit),
      (x) => units.mmFromLength(x, unit),
    ]),
  ];
  fc.assert(
    fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (x) => {
      for (const [to, from] of there) expect(Math.abs(from(to(x)) - x)).toBeLessThan(1e-8);
    }),
  );
});
