// Checks platinum thermometers against tables after IEC 60751, that both directions undo each other, and the classes.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { platinumCelsius, platinumOhms, platinumSigmaC } from '../../../src/core/physics/platinum.ts';
import { readTable } from './published-table.ts';

test("every printed ohm from -200 to 600 °C: a sensor maker's table after IEC 60751 (read)", () => {
  for (const row of readTable('pt100_iec60751')) {
    expect(platinumOhms(100, row.number('t_C'))?.toFixed(2)).toBe(row.text('R_ohm'));
  }
});

test('°C from the printed ohms, as near as their last digit lets them be', () => {
  for (const row of readTable('pt100_iec60751')) {
    // At the cold end the printed ohms may lie just outside of the curve.
    const celsius = platinumCelsius(100, row.number('R_ohm')) ?? -200;
    expect(Math.abs(celsius - row.number('t_C')), row.text('t_C')).toBeLessThan(0.0165);
  }
});

test('138.5055 ohm at 100 °C: IEC 60751 (read), and ten times as much for a Pt1000', () => {
  expect(platinumOhms(100, 100)).toBeCloseTo(138.5055, 10);
  expect(platinumCelsius(1000, 1385.055)).toBeCloseTo(100, 8);
});

test('back from its own ohms within 1e-6 °C from -200 to 850 °C', () => {
  const anyProbe = fc.constantFrom(100, 500, 1000);
  fc.assert(
    fc.property(anyProbe, fc.double({ min: -200, max: 850, noNaN: true }), (r0, celsius) => {
      const back = platinumCelsius(r0, platinumOhms(r0, celsius) ?? NaN) ?? NaN;
      expect(Math.abs(back - celsius)).toBeLessThan(1e-6);
    }),
    { numRuns: 2000 },
  );
  expect(platinumOhms(100, -200.001)).toBeNull();
  expect(platinumOhms(100, 850.001)).toBeNull();
  expect(platinumCelsius(100, 18)).toBeNull();
  expect(platinumCelsius(100, 391)).toBeNull();
});

test('0.35 and 0.8 °C of tolerance at 100 °C: IEC 60751 classes A and B (read), over √3', () => {
  expect(platinumSigmaC('A', 100) * Math.sqrt(3)).toBeCloseTo(0.35, 12);
  expect(platinumSigmaC('B', 100) * Math.sqrt(3)).toBeCloseTo(0.8, 12);
  expect(platinumSigmaC('B', -20) * Math.sqrt(3)).toBeCloseTo(0.4, 12);
});

test('no number gives NaN', () => {
  fc.assert(
    fc.property(fc.double(), fc.double(), (r0, value) => {
      for (const found of [platinumOhms(r0, value), platinumCelsius(r0, value), platinumCelsius(100, value)])
        expect(found === null || Number.isFinite(found)).toBe(true);
    }),
    { numRuns: 2000 },
  );
});
