// A depth read in a pot of any shape counts as its litres, and litres stand as deep as they do in that shape.
import { expect, test } from 'vitest';
import type { Mark, Vessel } from '../../../src/core/boil/entries.ts';
import { foldAll, inOrder, lines, mark, onePot, readingAt, waterCelsius } from './tarn-hollow.ts';

const now = 120_000;
/** Hot liquid takes so much more room than at 20 °C (ICUMSA density: 1.041 for water). */
const hot = 1.041;

const sloped: Vessel = { shape: 'round-sloped', bottom_diameter_mm: 300, top_diameter_mm: 400, height_mm: 200 };
const measured: Vessel = {
  shape: 'measured',
  fill: [
    { mm: 50, litres: 3 },
    { mm: 100, litres: 8 },
  ],
};

/** A pot of invented thin sap two minutes into its boil, with something noted at the start or now. */
function boiledIn(vessel: Vessel, noted: Mark, at: number) {
  const header = onePot();
  const pans = header.pans!.map((pan) => ({ ...pan, vessel, heat: { kind: 'propane' as const, power_w: 8000 } }));
  const boiling = lines(0, now, { T1: () => waterCelsius(1013.25) + 0.1 });
  return readingAt(foldAll({ ...header, pans }, inOrder([mark(at, noted)], boiling), now).state, 'p1', now);
}

test('a depth of 100 mm in a sloped pot is a frustum of litres, and in a measured one its row', () => {
  const depth = { kind: 'depth', pan: 'p1', mm: 100 } as const;
  const frustum = (Math.PI * (9 + 10.5 + 12.25)) / 12; // dm: 3 and 3.5 across, 1 deep
  expect(Math.abs((boiledIn(sloped, depth, now).litres ?? NaN) - frustum / hot)).toBeLessThan(0.02);
  expect(Math.abs((boiledIn(measured, depth, now).litres ?? NaN) - 8 / hot)).toBeLessThan(0.02);
});

test('litres poured in stand as deep as in that shape, and the time to the least depth goes by its litres', () => {
  const poured = { kind: 'top-up', pan: 'p1', litres: 8, brix: 2 } as const;
  const { depth_mm: mm, litres, top_up_in_s: left, evaporation_l_per_h: flow } = boiledIn(measured, poured, 0);
  expect(Math.abs((litres ?? NaN) - 8)).toBeLessThan(0.2); // two minutes of a bare ring
  expect(Math.abs((mm ?? NaN) - (100 + ((litres ?? NaN) * hot - 8) / 0.1))).toBeLessThan(0.5);
  const seconds = (((litres ?? NaN) - 0.9 / hot) / (flow ?? NaN)) * 3600; // 15 mm hold 0.9 L
  expect(Math.abs((left ?? NaN) / seconds - 1)).toBeLessThan(0.01);
});
