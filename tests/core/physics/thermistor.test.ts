// Checks thermistors against a maker's table and worked values, that both directions undo each other, and strange figures.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ThermistorCurve, thermistorCelsius, thermistorOhms } from '../../../src/core/physics/thermistor.ts';
import { readTable } from './published-table.ts';

/** Figures printed in the manual that the table comes from (read). */
const station: ThermistorCurve = { steinhart_hart: [1.129241e-3, 2.341077e-4, 8.775468e-8] };
/** Figures printed for a 10 kohm module (read). */
const module: ThermistorCurve = { steinhart_hart: [0.001129148, 0.000234125, 0.0000000876741] };
const beta: ThermistorCurve = { r25_ohm: 10_000, beta_k: 3950 };

test("a maker's table and its own Steinhart-Hart figures, -40 to 1 °C (both read)", () => {
  for (const row of readTable('thermistor_10k')) {
    expect(Math.abs(thermistorCelsius(station, row.number('R_ohm'))! - row.number('t_C'))).toBeLessThan(0.01);
    expect(Math.abs(thermistorOhms(station, row.number('t_C'))! / row.number('R_ohm') - 1)).toBeLessThan(0.0005);
  }
});

test('the figures of a module (read) at the standard 10 kohm curve: 25 °C, and 32650 ohm at 0 °C (memory)', () => {
  expect(thermistorCelsius(module, 10_000)).toBeCloseTo(25, 2);
  expect(thermistorCelsius(module, 32_650)).toBeCloseTo(0, 2);
  // Another maker's table of the same curve: 0.0678 of the 25 °C value at 100 °C (read).
  expect(Math.abs(thermistorCelsius(module, 678.1)! - 100)).toBeLessThan(0.03);
});

test('the beta equation: 1000 ohm at 87.720 °C, 697.5 ohm at 100 °C and 33621 at 0 °C (worked out apart)', () => {
  expect(thermistorCelsius(beta, 10_000)).toBeCloseTo(25, 9);
  expect(thermistorCelsius(beta, 1000)).toBeCloseTo(87.72, 3);
  expect(thermistorOhms(beta, 100)).toBeCloseTo(697.5, 1);
  expect(thermistorOhms(beta, 0)).toBeCloseTo(33_621, 0);
});

const anyPart: fc.Arbitrary<ThermistorCurve> = fc.oneof(
  fc.record({
    r25_ohm: fc.double({ min: 100, max: 1e6, noNaN: true }),
    beta_k: fc.double({ min: 2500, max: 5000, noNaN: true }),
  }),
  fc.record({
    steinhart_hart: fc.tuple(
      fc.double({ min: 5e-4, max: 2e-3, noNaN: true }),
      fc.double({ min: 1e-4, max: 4e-4, noNaN: true }),
      fc.double({ min: 0, max: 5e-7, noNaN: true }),
    ),
  }),
);

test('back from its own ohms within 1e-6 °C', () => {
  fc.assert(
    fc.property(anyPart, fc.double({ min: -60, max: 450, noNaN: true }), (part, celsius) => {
      const ohms = thermistorOhms(part, celsius)!;
      expect(Math.abs((thermistorCelsius(part, ohms) ?? NaN) - celsius)).toBeLessThan(1e-6);
    }),
    { numRuns: 2000 },
  );
});

test('the hotter the fewer ohms', () => {
  fc.assert(
    fc.property(anyPart, fc.double({ min: -60, max: 440, noNaN: true }), (part, celsius) => {
      expect(thermistorOhms(part, celsius)!).toBeGreaterThan(thermistorOhms(part, celsius + 1)!);
    }),
  );
});

test('no ohms, and figures that are none of a thermistor, are not known; nothing gives NaN', () => {
  expect(thermistorCelsius(module, 0)).toBeNull();
  expect(thermistorCelsius({ steinhart_hart: [1e-3, -2e-4, 1e-7] }, 10_000)).toBeNull();
  expect(thermistorCelsius({ steinhart_hart: [0, 0, 0] }, 10_000)).toBeNull();
  const figures = fc.tuple(fc.double(), fc.double(), fc.double());
  const anything = fc.oneof(
    anyPart,
    fc.record({ steinhart_hart: figures }),
    fc.record({ r25_ohm: fc.double(), beta_k: fc.double() }),
  );
  fc.assert(
    fc.property(anything, fc.double(), (curve, value) => {
      for (const found of [thermistorCelsius(curve, value), thermistorOhms(curve, value)])
        expect(found === null || Number.isFinite(found)).toBe(true);
    }),
    { numRuns: 3000 },
  );
});
