// Checks what a float's reading means against density standards, trade charts and its own inverse.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { densityKgPerM3 } from '../../../src/core/physics/density.ts';
import {
  baumeFromBrix,
  brixFromBaume,
  brixFromSpecificGravity,
  hydrometerReading,
  SIXTY_FAHRENHEIT_CELSIUS,
  specificGravityFromBrix,
  trueBrixFromHydrometer,
} from '../../../src/core/physics/hydrometer.ts';
import { celsiusFromFahrenheit, kgFromMass, litresFromVolume } from '../../../src/core/quantities/units.ts';
import { readTable } from './published-table.ts';

test('Baumé: Vermont rule, 36 °Bé is 66.9 °Bx and 37 °Bé is 68.9 °Bx at 60 °F (a rule in whole degrees, within 0.3 °Bx)', () => {
  expect(Math.abs((brixFromBaume(36) ?? NaN) - 66.9)).toBeLessThan(0.3);
  expect(Math.abs((brixFromBaume(37) ?? NaN) - 68.9)).toBeLessThan(0.3);
});

test('one window, three standards: USDA (21 CFR 168.140) and CFIA 66.0 to 68.9 °Bx, Vermont from 66.9 °Bx, in °Bé at 60 °F', () => {
  for (const [brix, baume] of [
    [66.0, 35.67],
    [66.9, 36.12],
    [68.9, 37.13],
  ] as const) {
    expect(Math.abs((baumeFromBrix(brix) ?? NaN) - baume)).toBeLessThan(0.006); // worked out apart, ICUMSA
  }
});

test('specific gravity at 60/60 °F: ICUMSA densities as worked out apart', () => {
  for (const [brix, sg] of [
    [66.0, 1.3262],
    [66.9, 1.3317],
    [68.9, 1.3442],
  ] as const) {
    expect(specificGravityFromBrix(brix)).toBeCloseTo(sg, 4);
  }
});

test('a US gallon at 20 °C weighs 11.038 lb at 66.0 °Bx and 11.084 lb at 66.9 °Bx: ICUMSA as worked out apart', () => {
  for (const [brix, pounds] of [
    [66.0, 11.038],
    [66.9, 11.084],
  ] as const) {
    const kg = ((densityKgPerM3(brix, 20) ?? NaN) * litresFromVolume(1, 'us-gallon')) / 1000;
    expect(Math.abs(kg - kgFromMass(pounds, 'pound'))).toBeLessThan(0.0003);
  }
});

const referenceCelsius = SIXTY_FAHRENHEIT_CELSIUS;

test('hot hydrometer: Vermont-calibrated chart for 66.9 °Bx syrup, its 14 points of the sheet within 0.35 °Bx and above 185 °F within 0.15; chart for 66.0 °Bx within 0.35', () => {
  let points = 0;
  for (const row of readTable('hydrometer_hot_readings')) {
    const fahrenheit = row.number('F');
    for (const truth of [66.9, 66.0]) {
      const reading = row.value(`chart_${truth.toFixed(1)}`);
      if (reading === null) continue;
      points += 1;
      const sampleCelsius = celsiusFromFahrenheit(fahrenheit);
      const found = trueBrixFromHydrometer({ reading, scale: 'brix', sampleCelsius, referenceCelsius });
      const limit = truth === 66.9 && fahrenheit > 185 ? 0.15 : 0.35;
      expect(Math.abs((found ?? NaN) - truth), `${fahrenheit} °F, ${truth} °Bx`).toBeLessThan(limit);
    }
  }
  expect(points).toBe(28);
});

test('hot hydrometer: the same equations as worked out apart, to 219 °F', () => {
  for (const row of readTable('hydrometer_hot_readings')) {
    for (const truth of [66.9, 66.0]) {
      const sampleCelsius = celsiusFromFahrenheit(row.number('F'));
      const reading = row.number(`model_${truth.toFixed(1)}`);
      const found = trueBrixFromHydrometer({ reading, scale: 'brix', sampleCelsius, referenceCelsius });
      expect(Math.abs((found ?? NaN) - truth)).toBeLessThan(0.01);
    }
  }
});

test('hot mark in °Baumé: 32.1 °Bé at 211 °F is 66.9 °Bx syrup (Vermont-calibrated sheet), as its own 59.1 °Bx is', () => {
  const sampleCelsius = celsiusFromFahrenheit(211);
  const byBaume = trueBrixFromHydrometer({ reading: 32.1, scale: 'baume', sampleCelsius, referenceCelsius });
  const byBrix = trueBrixFromHydrometer({ reading: 59.1, scale: 'brix', sampleCelsius, referenceCelsius });
  expect(Math.abs((byBaume ?? NaN) - 66.9)).toBeLessThan(0.15);
  expect(Math.abs((byBaume ?? NaN) - (byBrix ?? NaN))).toBeLessThan(0.1); // 32.1 and 59.1 are rounded
});

test('the same reading at another reference temperature is another strength: 20 °C stems by water at 20 °C', () => {
  const read = (referenceCelsius: number) =>
    trueBrixFromHydrometer({ reading: 1.3317, scale: 'sg', sampleCelsius: referenceCelsius, referenceCelsius }) ?? NaN;
  const density = (densityKgPerM3(read(20), 20) ?? NaN) / (densityKgPerM3(0, 20) ?? NaN);
  expect(density).toBeCloseTo(1.3317, 9);
  expect(read(20) - read(15.56)).toBeGreaterThan(0.1);
});

const scale = fc.constantFrom('brix' as const, 'baume' as const, 'sg' as const);
const stem = fc.constantFrom(15.56, 20);
const celsius = fc.double({ min: 0, max: 105, noNaN: true });

test('what it would show undoes what it means, hot or cold, on every scale', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 84, noNaN: true }), scale, celsius, stem, (brix, scale, hot, reference) => {
      const reading = hydrometerReading(brix, scale, hot, reference);
      if (reading === null) return; // thin and hot: it sinks below its scale
      const back = trueBrixFromHydrometer({ reading, scale, sampleCelsius: hot, referenceCelsius: reference }) ?? NaN;
      // Just below water a °Brix stem ends: half a degree is still called 0.
      expect(Math.abs(back - brix)).toBeLessThan(scale === 'brix' && reading < 1e-6 ? 0.6 : 1e-6);
    }),
  );
});

test('a stem at its own reference temperature is right as it reads', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 85, noNaN: true }), stem, (reading, own) => {
      const found = trueBrixFromHydrometer({ reading, scale: 'brix', sampleCelsius: own, referenceCelsius: own });
      expect(Math.abs((found ?? NaN) - reading)).toBeLessThan(1e-6);
    }),
  );
});

test('Baumé and specific gravity come back from strength to 1e-6 °Bx', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 85, noNaN: true }), (brix) => {
      const bySg = brixFromSpecificGravity(specificGravityFromBrix(brix) ?? NaN) ?? NaN;
      expect(Math.abs(bySg - brix)).toBeLessThan(1e-6);
      expect(Math.abs((brixFromBaume(baumeFromBrix(brix) ?? NaN) ?? NaN) - brix)).toBeLessThan(1e-6);
    }),
  );
});

test('whatever comes in, the answer is a number in range or not known, never NaN', () => {
  fc.assert(
    fc.property(fc.double(), scale, fc.double(), fc.double(), (reading, scale, sampleCelsius, reference) => {
      for (const answer of [
        brixFromBaume(reading),
        brixFromSpecificGravity(reading),
        trueBrixFromHydrometer({ reading, scale, sampleCelsius, referenceCelsius: reference }),
        trueBrixFromHydrometer({ reading: 60, scale: 'brix', sampleCelsius, referenceCelsius: 20 }),
      ]) {
        expect(answer === null || (answer >= 0 && answer <= 85)).toBe(true);
      }
      const shown = hydrometerReading(reading, scale, sampleCelsius, 20);
      expect(shown === null || Number.isFinite(shown)).toBe(true);
    }),
  );
});
