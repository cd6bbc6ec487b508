// Checks what fuels hold against published figures, and fuel for a heat against season ledgers.
import { expect, test } from 'vitest';
import {
  fuelFor,
  PROPANE_GROSS_MJ_PER_KG,
  PROPANE_KG_PER_LITRE,
  PROPANE_NET_MJ_PER_KG,
  usualEfficiency,
  woodNetMjPerKg,
} from '../../../src/core/physics/fuel.ts';
import { boilingDownHeatKj } from '../../../src/core/physics/heat.ts';
import { kgFromMass, litresFromVolume } from '../../../src/core/quantities/units.ts';

/** International table British thermal unit. */
const mjPerBtu = 1.05505585e-3;
const mjPerKgPerBtuLb = mjPerBtu / kgFromMass(1, 'pound');

test('propane: a table of commercial propane gives 91,502–91,547 Btu/US gal and 21,548–21,591 Btu/lb gross, within 1 %', () => {
  const perGallon = PROPANE_GROSS_MJ_PER_KG * PROPANE_KG_PER_LITRE * litresFromVolume(1, 'us-gallon');
  expect(Math.abs(perGallon / (91_525 * mjPerBtu) - 1)).toBeLessThan(0.01);
  expect(Math.abs(PROPANE_GROSS_MJ_PER_KG / (21_570 * mjPerKgPerBtuLb) - 1)).toBeLessThan(0.01);
});

test('propane gives 25.3 MJ/L gross (a public physics factbook), within 1 %; net 23.4 MJ/L', () => {
  expect(Math.abs((PROPANE_GROSS_MJ_PER_KG * PROPANE_KG_PER_LITRE) / 25.3 - 1)).toBeLessThan(0.01);
  expect(PROPANE_NET_MJ_PER_KG * PROPANE_KG_PER_LITRE).toBeCloseTo(23.4, 1);
});

test('propane: net and gross part by the steam of its own smoke, 4 H2O for C3H8 (44.1 g/mol), within 0.1 MJ/kg', () => {
  const steamKg = (4 * 18.015) / 44.096;
  expect(Math.abs(PROPANE_GROSS_MJ_PER_KG - PROPANE_NET_MJ_PER_KG - steamKg * 2.442)).toBeLessThan(0.1); // h_fg at 25 °C, from memory
});

test('wood: 8,050 Btu/lb net oven-dry (read), and 7,000 Btu/lb gross at 20 % moisture (Iowa State extension) with its steam, within 2 %', () => {
  expect(Math.abs((woodNetMjPerKg(0) ?? NaN) / (8050 * mjPerKgPerBtuLb) - 1)).toBeLessThan(0.005);
  const steamMj = 0.8 * (8600 - 8050) * mjPerKgPerBtuLb + 0.2 * 2.44; // of its hydrogen and of its water
  expect(Math.abs(((woodNetMjPerKg(0.2) ?? NaN) + steamMj) / (7000 * mjPerKgPerBtuLb) - 1)).toBeLessThan(0.02);
});

test('wood by moisture, worked out apart: 16.6, 14.5, 12.4, 10.3 and 8.1 MJ/kg at 10, 20, 30, 40 and 50 %', () => {
  for (const [moisture, net] of [
    [0.1, 16.6],
    [0.2, 14.5],
    [0.3, 12.4],
    [0.4, 10.3],
    [0.5, 8.1],
  ] as const) {
    expect(Math.abs((woodNetMjPerKg(moisture) ?? NaN) - net)).toBeLessThan(0.05);
  }
  expect(woodNetMjPerKg(0.61)).toBeNull();
  expect(woodNetMjPerKg(-0.1)).toBeNull();
});

test('season ledgers: 9.7 to 13.7 kg of water per kg of propane at 51 to 72 % (common practice): between preheated and ice-cold sap', () => {
  for (const [waterKg, efficiency] of [
    [9.7, 0.51],
    [13.7, 0.72],
  ] as const) {
    const sap = { kg: waterKg * (66 / 64), brix: 2 };
    const heat = (fromCelsius: number) => (boilingDownHeatKj({ ...sap, fromCelsius }, 66) ?? NaN) / 1000;
    expect(fuelFor(heat(95), { kind: 'propane' }, efficiency)).toBeLessThan(1);
    expect(fuelFor(heat(2), { kind: 'propane' }, efficiency)).toBeGreaterThan(1);
  }
});

test('22 US gal of syrup from a cord of dry wood at 40–60 % (Ohio State Extension): a cord of 15.3 million Btu', () => {
  const gallonKg = kgFromMass(11.038, 'pound'); // of 66.0 °Bx
  const sap = { kg: (22 * gallonKg * 66) / 2, brix: 2, fromCelsius: 5 };
  const usedMj = (boilingDownHeatKj(sap, 66) ?? NaN) / 1000;
  const cordMj = 15.3e6 * mjPerBtu;
  expect(usedMj / cordMj).toBeGreaterThan(0.4);
  expect(usedMj / cordMj).toBeLessThan(0.6);
});

test('fuel for a heat: electricity in kWh, twice the fuel at half the efficiency, and no fuel that is none', () => {
  expect(fuelFor(7.2, { kind: 'electric' }, 1)).toBeCloseTo(2, 12);
  expect(fuelFor(7.2, { kind: 'electric' }, 0.5)).toBeCloseTo(4, 12);
  expect(fuelFor(100, { kind: 'wood', moisture: 0.2 }, 0.5)).toBeCloseTo(200 / (0.8 * 18.72 - 0.2 * 2.44), 9);
  for (const [heat, efficiency] of [
    [-1, 0.5],
    [10, 0],
    [10, 1.1],
    [NaN, 0.5],
  ] as const) {
    expect(fuelFor(heat, { kind: 'propane' }, efficiency)).toBeNull();
  }
  expect(fuelFor(10, { kind: 'wood', moisture: 0.9 }, 0.5)).toBeNull();
});

test('usual efficiencies lie in what the trade quotes: pot on a ring 25–35 %, wood rigs 40–60 % (common practice; Ohio State Extension)', () => {
  expect(usualEfficiency('propane', false)).toBeGreaterThanOrEqual(0.25);
  expect(usualEfficiency('propane', false)).toBeLessThanOrEqual(0.35);
  expect(usualEfficiency('propane', true)).toBeGreaterThan(usualEfficiency('propane', false));
  expect(usualEfficiency('wood', true)).toBeGreaterThanOrEqual(0.4);
  expect(usualEfficiency('wood', true)).toBeLessThanOrEqual(0.6);
  // Those rigs are flat pans over the whole fire; under a pot open wood does no better than a gas ring.
  expect(usualEfficiency('wood', false)).toBeLessThanOrEqual(usualEfficiency('propane', false));
});
