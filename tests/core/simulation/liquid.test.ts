// Pouring, parting and volumes against the trade's worked figures.
import { expect, test } from 'vitest';
import {
  depthMillimetres,
  litresAtTwenty,
  liquidOf,
  massKg,
  partOff,
  stirTogether,
  strengthBrix,
} from '../../../src/core/simulation/liquid.ts';

test('2 L at 5 °C into 10 L at 100 °C gives 84 °C (trade.md "Rates, heat, fuel" [calc])', () => {
  const mixed = stirTogether(liquidOf(10, 2, 100), liquidOf(2, 2, 5));
  expect(mixed.celsius).toBeGreaterThan(83.5);
  expect(mixed.celsius).toBeLessThan(84.5);
  expect(litresAtTwenty(mixed)).toBeCloseTo(12, 6);
});

test('66.0 °Bx at 20 °C has 1322.66 kg/m³ (physics.md 5.1), so a litre weighs 1.3227 kg', () => {
  const litre = liquidOf(1, 66, 20);
  expect(massKg(litre)).toBeCloseTo(1.32266, 4);
  expect(strengthBrix(litre)).toBeCloseTo(66, 9);
});

test('hot water stands deeper than cold: 958.4 against 998.2 kg/m³', () => {
  const cold = depthMillimetres(liquidOf(10, 0, 20), 0.1);
  expect(cold).toBeCloseTo(100, 6);
  expect(depthMillimetres(liquidOf(10, 0, 100), 0.1) / cold).toBeCloseTo(998.203 / 958.345, 4);
});

test('parting off keeps sugar, water and temperature, and never takes more than there is', () => {
  const whole = liquidOf(8, 30, 90);
  const { stays, taken } = partOff(whole, 3);
  expect(litresAtTwenty(taken)).toBeCloseTo(3, 9);
  expect(stays.sugarKg + taken.sugarKg).toBeCloseTo(whole.sugarKg, 12);
  expect(taken.celsius).toBe(90);
  expect(massKg(partOff(whole, 50).stays)).toBe(0);
});

test('an empty pan has strength 0, and what is poured in keeps its own temperature', () => {
  const empty = { sugarKg: 0, waterKg: 0, celsius: 5 };
  expect(strengthBrix(empty)).toBe(0);
  expect(stirTogether(empty, liquidOf(1, 2, 40)).celsius).toBeCloseTo(40, 9);
});
