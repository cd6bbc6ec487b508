// Checks what a hot surface loses to still air against two published tables, and that it is never less than nothing.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type AirOver, openSurfaceLoss, surfaceEvaporationKgPerM2S } from '../../../src/core/physics/open-surface.ts';
import { celsiusFromFahrenheit } from '../../../src/core/quantities/units.ts';
import { readTable } from './published-table.ts';

/** One Btu/(ft² h) in W/m². */
const wattsPerBtu = 3.15459;

/** Half moist air, which those estimates leave open. */
const sixtyFahrenheit: AirOver = {
  celsius: celsiusFromFahrenheit(60),
  vapourHpa: 8.9,
  windMetresPerSecond: 0,
  pressureHpa: 1013.25,
};
const dry65: AirOver = { ...sixtyFahrenheit, celsius: celsiusFromFahrenheit(65), vapourHpa: 0 };

const shares = (column: string, air: AirOver, part: 'evaporationWatts' | 'others'): number[] =>
  readTable('open_tank_heat_loss').flatMap((row) => {
    const table = row.value(column);
    const loss = openSurfaceLoss(celsiusFromFahrenheit(row.number('F')), 0, air);
    if (table === null || loss === null) return [];
    const watts = part === 'evaporationWatts' ? loss[part] : loss.convectionWatts + loss.radiationWatts;
    return [watts / (table * wattsPerBtu)];
  });

test('evaporation: Engineering ToolBox table for open tanks, 110 to 210 °F, between 0 and 20 % under it', () => {
  const found = shares('evaporation_60F', sixtyFahrenheit, 'evaporationWatts');
  expect(found).toHaveLength(11);
  expect(Math.min(...found)).toBeGreaterThan(0.8);
  expect(Math.max(...found)).toBeLessThan(1.01);
});

test('evaporation: Steam Tip Sheet 19 for dry air, 110 to 190 °F, between 3 % over and 40 % under it', () => {
  const found = shares('evaporation_dry_65F', dry65, 'evaporationWatts');
  expect(found).toHaveLength(5);
  expect(Math.min(...found)).toBeGreaterThan(0.6);
  expect(Math.max(...found)).toBeLessThan(1.03);
});

test('convection and radiation together: the same table, within 20 %, and within 8 % from 180 °F', () => {
  const found = shares('radiation_60F', sixtyFahrenheit, 'others');
  for (const share of found) expect(Math.abs(share - 1)).toBeLessThan(0.2);
  for (const share of found.slice(7)) expect(Math.abs(share - 1)).toBeLessThan(0.08);
});

test('wind and dry air take more, a rise keeps vapour back, and moist air gives none', () => {
  const evaporation = (celsius: number, riseC: number, air: AirOver): number =>
    surfaceEvaporationKgPerM2S(celsius, riseC, air) ?? NaN;
  const still = evaporation(90, 0, dry65);
  expect(evaporation(90, 0, { ...dry65, windMetresPerSecond: 1 })).toBeCloseTo((still * (0.089 + 0.0782)) / 0.089, 12);
  expect(evaporation(90, 4, dry65)).toBeLessThan(0.87 * still);
  expect(evaporation(5, 0, sixtyFahrenheit)).toBe(0);
});

test('whatever comes in, losses are 0 or more or not known', () => {
  fc.assert(
    fc.property(fc.double(), fc.double({ min: 0, max: 12, noNaN: true }), (celsius, riseC) => {
      const loss = openSurfaceLoss(celsius, riseC, sixtyFahrenheit);
      for (const part of loss === null ? [] : Object.values(loss)) expect(part).toBeGreaterThanOrEqual(0);
    }),
  );
  expect(openSurfaceLoss(121, 0, dry65)).toBeNull();
  expect(openSurfaceLoss(5, 0, dry65)).toBeNull(); // colder than the air
});
