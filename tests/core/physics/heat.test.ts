// Checks latent and specific heat against IF97, another published equation and a whole day's energy.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { densityKgPerM3 } from '../../../src/core/physics/density.ts';
import {
  boiledOffKgPerS,
  boilingDownHeatKj,
  heatingUpSeconds,
  latentHeatKjPerKg,
  specificHeatKjPerKgK,
  warmingHeatKj,
} from '../../../src/core/physics/heat.ts';
import { readTable } from './published-table.ts';

const latent = (celsius: number): number => latentHeatKjPerKg(celsius) ?? NaN;
const specific = (brix: number, celsius: number): number => specificHeatKjPerKgK(brix, celsius) ?? NaN;

test('latent heat: IAPWS-IF97 regions 1, 2 and 4 from 80 to 110 °C, within 0.02 kJ/kg', () => {
  for (const row of readTable('latent_heat_if97')) {
    expect(Math.abs(latent(row.number('t_C')) - row.number('h_fg'))).toBeLessThan(0.02);
  }
});

test('latent heat beyond the fit: steam table values at 40, 60 and 120 °C (from memory), within 0.15 %', () => {
  for (const [celsius, table] of [
    [40, 2406.0],
    [60, 2357.7],
    [120, 2202.1],
  ] as const) {
    expect(Math.abs(latent(celsius) / table - 1)).toBeLessThan(0.0015);
  }
});

test('specific heat: equation of Bubnik as given by Llano, as computed apart', () => {
  for (const [brix, cold, hot] of [
    [2, 4.14, 4.152],
    [10, 3.951, 4.011],
    [30, 3.479, 3.659],
    [50, 3.007, 3.307],
    [66, 2.629, 3.025],
  ] as const) {
    expect(specific(brix, 20)).toBeCloseTo(cold, 3);
    expect(specific(brix, 100)).toBeCloseTo(hot, 3);
  }
});

test('specific heat: equation of Smith 2000 (UCT), within 10 %', () => {
  for (const [brix, cold, hot] of [
    [2, 4.106, 4.177],
    [10, 3.892, 4.006],
    [30, 3.358, 3.579],
    [50, 2.824, 3.153],
    [66, 2.397, 2.811],
  ] as const) {
    expect(Math.abs(specific(brix, 20) / cold - 1)).toBeLessThan(0.1);
    expect(Math.abs(specific(brix, 100) / hot - 1)).toBeLessThan(0.08);
  }
});

/** International table British thermal unit, kJ. */
const kjPerBtu = 1.05505585;

test('a US gallon of 66.0 °Bx from 2 % sap at 5 °C: 404,000 Btu by the balance worked out apart, 400,000 by Ohio State extension', () => {
  const syrupKg = ((densityKgPerM3(66, 20) ?? NaN) * 3.785411784) / 1000;
  const heat = boilingDownHeatKj({ kg: (syrupKg * 66) / 2, brix: 2, fromCelsius: 5 }, 66) ?? NaN;
  expect(Math.abs(heat / kjPerBtu / 404_000 - 1)).toBeLessThan(0.002);
  expect(Math.abs(heat / kjPerBtu / 400_000 - 1)).toBeLessThan(0.015);
});

test('a flat pan that loses 1 US gal a square foot and hour takes 25.5 kW/m² into steam (trade; worked out apart)', () => {
  const kgPerS = (3.785411784 * 0.9982) / 3600 / 0.3048 ** 2;
  expect(boiledOffKgPerS(25_500, 100)).toBeCloseTo(kgPerS, 4);
});

test('heating up: 10 kg of water from 20 to 100 °C take 3,350 kJ (IF97 enthalpies 83.9 and 419.1 kJ/kg, the first from memory)', () => {
  const water = { kg: 10, brix: 0, fromCelsius: 20, toCelsius: 100 };
  expect(Math.abs((warmingHeatKj(water) ?? NaN) / 3352 - 1)).toBeLessThan(0.002);
  expect(heatingUpSeconds(water, 2000)).toBeCloseTo((warmingHeatKj(water) ?? NaN) / 2, 9);
});

test('what is warm enough takes nothing, and no heat or no mass gives no time', () => {
  const warm = { kg: 10, brix: 2, fromCelsius: 100, toCelsius: 90 };
  expect(warmingHeatKj(warm)).toBe(0);
  expect(heatingUpSeconds(warm, 0)).toBeNull();
  expect(warmingHeatKj({ ...warm, kg: NaN })).toBeNull();
  expect(boiledOffKgPerS(-1, 100)).toBeNull();
  expect(boiledOffKgPerS(1000, 20)).toBeNull();
  expect(boilingDownHeatKj({ kg: 1, brix: 0, fromCelsius: 5 }, 66)).toBeNull();
  expect(boilingDownHeatKj({ kg: 1, brix: 67, fromCelsius: 5 }, 66)).toBeNull();
});

test('whatever comes in, the answer is a number in range or not known, never NaN', () => {
  fc.assert(
    fc.property(fc.double(), fc.double(), (first, second) => {
      const evaporation = latentHeatKjPerKg(first);
      expect(evaporation === null || (evaporation > 2190 && evaporation < 2420)).toBe(true);
      const warming = specificHeatKjPerKgK(first, second);
      expect(warming === null || (warming > 2 && warming < 4.3)).toBe(true);
    }),
  );
});

test('outside the declared range nothing is known', () => {
  for (const celsius of [39, 121, NaN]) expect(latentHeatKjPerKg(celsius)).toBeNull();
  for (const [brix, celsius] of [
    [-1, 20],
    [81, 20],
    [66, -1],
    [66, 121],
  ] as const) {
    expect(specificHeatKjPerKgK(brix, celsius)).toBeNull();
  }
});
