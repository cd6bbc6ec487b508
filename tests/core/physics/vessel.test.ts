// Checks litres, depth and surface of every shape of vessel against geometry done apart, and their inverses.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Vessel } from '../../../src/core/boil/entries.ts';
import { depthAtLitres, litresAtDepth, surfaceM2 } from '../../../src/core/physics/vessel.ts';

/** Wide at the top as a preserving pan is; invented. */
const sloped: Vessel = { shape: 'round-sloped', bottom_diameter_mm: 300, top_diameter_mm: 400, height_mm: 100 };
const tent: Vessel = { shape: 'round-sloped', bottom_diameter_mm: 300, top_diameter_mm: 150, height_mm: 100 };
const measured: Vessel = {
  shape: 'measured',
  fill: [
    { mm: 20, litres: 1 },
    { mm: 50, litres: 4 },
    { mm: 100, litres: 14 },
  ],
};

test('upright walls: area times depth', () => {
  const pot: Vessel = { shape: 'round', diameter_mm: 400 };
  const pan: Vessel = { shape: 'rectangular', length_mm: 900, width_mm: 600 };
  expect(litresAtDepth(pot, 100)).toBeCloseTo(Math.PI * 2 * 2, 9); // decimetres: π r² h
  expect(litresAtDepth(pan, 50)).toBeCloseTo(27, 9);
  expect(depthAtLitres(pan, 27)).toBeCloseTo(50, 9);
  expect(surfaceM2(pan, 50)).toBeCloseTo(0.54, 9);
});

test('a sloped wall: a frustum of 3 and 4 dm across and 1 dm high holds π (9 + 12 + 16)/12 L', () => {
  expect(litresAtDepth(sloped, 100)).toBeCloseTo((Math.PI * 37) / 12, 9);
  expect(surfaceM2(sloped, 100)).toBeCloseTo((Math.PI / 4) * 0.16, 9);
  expect(depthAtLitres(sloped, (Math.PI * 37) / 12)).toBeCloseTo(100, 9);
  expect(litresAtDepth(tent, 100)).toBeCloseTo((Math.PI * (9 + 4.5 + 2.25)) / 12, 9);
});

test('over the rim the wall goes on, and one that closed holds no more', () => {
  expect(litresAtDepth(sloped, 110)).toBeGreaterThan(litresAtDepth(sloped, 100) ?? NaN);
  expect(litresAtDepth(tent, 199)).toBeCloseTo((Math.PI * 2 * 9) / 12, 4); // the whole cone: π d² h / 12
  expect(litresAtDepth(tent, 201)).toBeNull();
  expect(depthAtLitres(tent, 5)).toBeNull();
});

test('a fill table is straight between its rows, to nothing at the bottom, and on from its last two rows', () => {
  expect(litresAtDepth(measured, 10)).toBeCloseTo(0.5, 12);
  expect(litresAtDepth(measured, 50)).toBeCloseTo(4, 12);
  expect(litresAtDepth(measured, 75)).toBeCloseTo(9, 12);
  expect(litresAtDepth(measured, 110)).toBeCloseTo(16, 12);
  expect(depthAtLitres(measured, 16)).toBeCloseTo(110, 12);
  expect(depthAtLitres(measured, 0)).toBe(0);
  expect(surfaceM2(measured, 10)).toBeCloseTo(0.05, 12);
  expect(surfaceM2(measured, 75)).toBeCloseTo(0.2, 12);
  expect(surfaceM2(measured, 500)).toBeCloseTo(0.2, 12);
});

test('a hollow bottom holds litres at depth 0, and a gauge may start above the bottom', () => {
  const fillOf = (...fill: { mm: number; litres: number }[]): Vessel => ({ shape: 'measured', fill });
  const hollow = fillOf({ mm: 0, litres: 0.4 }, { mm: 40, litres: 4.4 });
  expect(litresAtDepth(hollow, 0)).toBeCloseTo(0.4, 12);
  expect(depthAtLitres(hollow, 0.2)).toBe(0);
  expect(depthAtLitres(hollow, 2.4)).toBeCloseTo(20, 12);
  const raised = fillOf({ mm: 10, litres: 0 }, { mm: 40, litres: 3 });
  expect(litresAtDepth(raised, 5)).toBe(0);
  expect(depthAtLitres(raised, 0)).toBe(0);
  expect(depthAtLitres(raised, 1)).toBeCloseTo(20, 12);
});

const size = fc.double({ min: 10, max: 20_000, noNaN: true });
const anyVessel: fc.Arbitrary<Vessel> = fc.oneof(
  fc.record({ shape: fc.constant('round' as const), diameter_mm: size }),
  fc.record({ shape: fc.constant('rectangular' as const), length_mm: size, width_mm: size }),
  fc.record({
    shape: fc.constant('round-sloped' as const),
    bottom_diameter_mm: size,
    top_diameter_mm: size,
    height_mm: size,
  }),
  fc.record({
    shape: fc.constant('measured' as const),
    fill: fc
      .array(fc.tuple(fc.double({ min: 1, max: 50, noNaN: true }), fc.double({ min: 0.01, max: 50, noNaN: true })), {
        minLength: 2,
        maxLength: 20,
      })
      .map((steps) => {
        let [mm, litres] = [0, 0];
        return steps.map((step) => ({ mm: (mm += step[0]), litres: (litres += step[1]) }));
      }),
  }),
);

test('depth from litres undoes litres from depth, to a millionth, in every vessel', () => {
  fc.assert(
    fc.property(anyVessel, fc.double({ min: 0.01, max: 1000, noNaN: true }), (vessel, mm) => {
      const litres = litresAtDepth(vessel, mm);
      if (litres === null) return;
      // Near the point of a tent a hair of volume is much depth: the litres are then the fair thing to compare.
      const back = litresAtDepth(vessel, depthAtLitres(vessel, litres) ?? NaN) ?? NaN;
      expect(Math.abs(back - litres)).toBeLessThanOrEqual(1e-6 * litres);
    }),
  );
});

test('deeper is more, and the surface is how fast', () => {
  fc.assert(
    fc.property(anyVessel, fc.double({ min: 0.5, max: 1000, noNaN: true }), (vessel, mm) => {
      const [below, above] = [litresAtDepth(vessel, mm), litresAtDepth(vessel, mm + 1e-3)];
      if (below === null || above === null) return;
      expect(above).toBeGreaterThan(below);
      const widest = Math.max(surfaceM2(vessel, mm), surfaceM2(vessel, mm + 1e-3));
      expect((above - below) / 1e-3).toBeLessThanOrEqual(widest * 1.0001 + 1e-9 * above + 1e-6);
    }),
  );
});

test('whatever comes in, litres and depth are 0 or more or not known, never NaN', () => {
  fc.assert(
    fc.property(anyVessel, fc.double(), (vessel, value) => {
      for (const found of [litresAtDepth(vessel, value), depthAtLitres(vessel, value)]) {
        expect(found === null || found >= 0).toBe(true);
      }
    }),
  );
  expect(litresAtDepth(sloped, -1)).toBeNull();
  expect(depthAtLitres(measured, NaN)).toBeNull();
});
