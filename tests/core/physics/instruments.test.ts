// Checks instrument readings against trade charts, the Vermont rule and the OIV correction table.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { densityKgPerM3 } from '../../../src/core/physics/density.ts';
import {
  baumeFromBrix,
  brixFromBaume,
  brixFromSpecificGravity,
  specificGravityFromBrix,
  trueBrixFromHydrometer,
  trueBrixFromRefractometer,
} from '../../../src/core/physics/instruments.ts';
import { celsiusFromFahrenheit } from '../../../src/core/quantities/units.ts';
import { readTable } from './published-table.ts';

const referenceCelsius = celsiusFromFahrenheit(60);

test('Baumé: Vermont rule, 36 °Bé is 66.9 °Bx and 37 °Bé is 68.9 °Bx at 60 °F (a rule in whole degrees, within 0.3 °Bx)', () => {
  expect(Math.abs((brixFromBaume(36) ?? NaN) - 66.9)).toBeLessThan(0.3);
  expect(Math.abs((brixFromBaume(37) ?? NaN) - 68.9)).toBeLessThan(0.3);
});

test('Baumé and specific gravity at 60/60 °F: ICUMSA densities as computed apart', () => {
  for (const [brix, sg, baume] of [
    [66.0, 1.3262, 35.67],
    [66.9, 1.3317, 36.12],
    [68.9, 1.3442, 37.13],
  ] as const) {
    expect(specificGravityFromBrix(brix)).toBeCloseTo(sg, 4);
    expect(baumeFromBrix(brix)).toBeCloseTo(baume, 1);
  }
});

test('hot hydrometer: chart for Vermont syrup of 66.9 °Bx and density chart for 66.0 °Bx, within 0.35 °Bx, and 0.15 °Bx above 185 °F for the first', () => {
  let points = 0;
  for (const row of readTable('hydrometer_hot_readings')) {
    const fahrenheit = row.number('F');
    for (const truth of [66.9, 66.0]) {
      const readingBrix = row.value(`chart_${truth.toFixed(1)}`);
      if (readingBrix === null) continue;
      points += 1;
      const found = trueBrixFromHydrometer({
        readingBrix,
        sampleCelsius: celsiusFromFahrenheit(fahrenheit),
        referenceCelsius,
      });
      const limit = truth === 66.9 && fahrenheit > 185 ? 0.15 : 0.35;
      expect(Math.abs((found ?? NaN) - truth), `${fahrenheit} °F, ${truth} °Bx`).toBeLessThan(limit);
    }
  }
  expect(points).toBe(28);
});

test('hot hydrometer: the same equations as computed apart; not known where the sample is over 100 °C', () => {
  for (const row of readTable('hydrometer_hot_readings')) {
    for (const truth of [66.9, 66.0]) {
      const readingBrix = row.number(`model_${truth.toFixed(1)}`);
      const sampleCelsius = celsiusFromFahrenheit(row.number('F'));
      const found = trueBrixFromHydrometer({ readingBrix, sampleCelsius, referenceCelsius });
      if (sampleCelsius > 100) expect(found).toBeNull();
      else expect(Math.abs((found ?? NaN) - truth)).toBeLessThan(0.01);
    }
  }
});

test('a hydrometer at its own reference temperature is right as it reads', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 85, noNaN: true }), fc.constantFrom(15.56, 20), (readingBrix, celsius) => {
      const found = trueBrixFromHydrometer({ readingBrix, sampleCelsius: celsius, referenceCelsius: celsius });
      expect(Math.abs((found ?? NaN) - readingBrix)).toBeLessThan(1e-6);
    }),
  );
});

test('refractometer: OIV-MA-AS2-02 Table I, 10 to 16 °C and 10 to 75 °Bx, within 0.0065 °Bx (printed to 0.01)', () => {
  for (const row of readTable('refractometer_temp_correction_oiv')) {
    for (let readingBrix = 10; readingBrix <= 75; readingBrix += 5) {
      const found = trueBrixFromRefractometer({ readingBrix, sampleCelsius: row.number('T_C'), compensated: false });
      expect(Math.abs((found ?? NaN) - readingBrix - row.number(`B${readingBrix}`))).toBeLessThan(0.0065);
    }
  }
});

test('refractometer at 30 °C: +0.76 to +0.81 °Bx in the international table (from memory)', () => {
  for (const readingBrix of [10, 30, 50, 66]) {
    const found = trueBrixFromRefractometer({ readingBrix, sampleCelsius: 30, compensated: false }) ?? NaN;
    expect(found - readingBrix).toBeGreaterThan(0.75);
    expect(found - readingBrix).toBeLessThan(0.83);
  }
});

test('a compensated refractometer is taken at its word, and hot syrup is not known to either', () => {
  expect(trueBrixFromRefractometer({ readingBrix: 66, sampleCelsius: 27, compensated: true })).toBe(66);
  expect(trueBrixFromRefractometer({ readingBrix: 66, sampleCelsius: null, compensated: true })).toBe(66);
  expect(trueBrixFromRefractometer({ readingBrix: 66, sampleCelsius: null, compensated: false })).toBeNull();
  for (const compensated of [true, false]) {
    expect(trueBrixFromRefractometer({ readingBrix: 66, sampleCelsius: 80, compensated })).toBeNull();
  }
});

test('Baumé and specific gravity come back from strength to 1e-6 °Bx', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 85, noNaN: true }), (brix) => {
      expect(Math.abs((brixFromSpecificGravity(specificGravityFromBrix(brix) ?? NaN) ?? NaN) - brix)).toBeLessThan(
        1e-6,
      );
      expect(Math.abs((brixFromBaume(baumeFromBrix(brix) ?? NaN) ?? NaN) - brix)).toBeLessThan(1e-6);
    }),
  );
});

test('whatever comes in, the answer is a number in range or not known, never NaN', () => {
  fc.assert(
    fc.property(
      fc.double(),
      fc.double(),
      fc.double(),
      fc.boolean(),
      (reading, sampleCelsius, reference, compensated) => {
        for (const answer of [
          brixFromBaume(reading),
          brixFromSpecificGravity(reading),
          trueBrixFromHydrometer({ readingBrix: reading, sampleCelsius, referenceCelsius: reference }),
          trueBrixFromHydrometer({ readingBrix: 60, sampleCelsius, referenceCelsius: 20 }),
          trueBrixFromRefractometer({ readingBrix: reading, sampleCelsius, compensated }),
        ]) {
          expect(answer === null || (answer >= 0 && answer <= 85)).toBe(true);
        }
      },
    ),
  );
});

test('a refractometer stays near its reading over the declared range', () => {
  const reading = fc.double({ min: 0, max: 80, noNaN: true });
  fc.assert(
    fc.property(reading, fc.double({ min: 10, max: 30, noNaN: true }), (readingBrix, sampleCelsius) => {
      const found = trueBrixFromRefractometer({ readingBrix, sampleCelsius, compensated: false }) ?? NaN;
      expect(Math.abs(found - readingBrix)).toBeLessThan(0.9);
    }),
  );
});

test('a US gallon of 66.0 °Bx at 20 °C weighs 11.04 lb, computed from ICUMSA density', () => {
  const kg = ((densityKgPerM3(66, 20) ?? NaN) * 3.785411784) / 1000;
  expect(kg / 0.45359237).toBeCloseTo(11.038, 3);
});
