// How high a vessel can be filled is what was told of its wall, and not known where nothing was.
import { expect, test } from 'vitest';
import { rimMm } from '../../../src/core/quantities/rim.ts';

test('the rim is where the wall ends, by whatever says so', () => {
  expect(rimMm({ shape: 'round', diameter_mm: 240, height_mm: 140 })).toBe(140);
  expect(rimMm({ shape: 'rectangular', length_mm: 500, width_mm: 400, height_mm: 65 })).toBe(65);
  expect(rimMm({ shape: 'rectangular', length_mm: 500, width_mm: 400 })).toBeNull();
  expect(rimMm({ shape: 'round-sloped', bottom_diameter_mm: 300, top_diameter_mm: 400, height_mm: 250 })).toBe(250);
  const fill = [20, 60].map((mm) => ({ mm, litres: mm / 10 }));
  expect(rimMm({ shape: 'measured', fill })).toBe(60);
});
