// Checks the count of sugar and water in a pan: litres both ways, and what a trusted strength corrects.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addTo,
  brixOf,
  type Contents,
  contentsOfLitres,
  correctByStrength,
  litresOf,
  unknownContents,
} from '../../../src/core/pan/contents.ts';

const litres = fc.double({ min: 0.05, max: 500, noNaN: true });
const brix = fc.double({ min: 0.1, max: 79, noNaN: true });

const holding = (ofLitres: number, ofBrix: number): Contents => ({
  ...unknownContents(),
  ...contentsOfLitres(ofLitres, ofBrix)!,
});

test('litres of a strength weigh what they hold, and come back as the same litres and strength', () => {
  fc.assert(
    fc.property(litres, brix, (l, b) => {
      const contents = holding(l, b);
      expect(litresOf(contents)! / l).toBeCloseTo(1, 9);
      expect(brixOf(contents)!).toBeCloseTo(b, 9);
    }),
  );
});

test('a litre of 66 °Bx at 20 °C holds 0.873 kg of sugar: density 1322.66 kg/m3 (physics.md section 5.1)', () => {
  expect(contentsOfLitres(1, 66)!.sugarKg).toBeCloseTo(0.66 * 1.32266, 4);
  expect(contentsOfLitres(1, 66)!.waterKg).toBeCloseTo(0.34 * 1.32266, 4);
});

test('what is not known stays so, and an empty pan has litres but no strength', () => {
  const contents = unknownContents();
  addTo(contents, 1, 1);
  expect(litresOf(contents)).toBeNull();
  expect(brixOf(contents)).toBeNull();
  const empty = { ...unknownContents(), sugarKg: 0, waterKg: 0 };
  expect(litresOf(empty)).toBe(0);
  expect(brixOf(empty)).toBeNull();
});

test('a trusted strength corrects the water where the sugar was counted', () => {
  const contents = { ...holding(10, 5), nominalKg: 8 };
  const { sugarKg } = contents;
  correctByStrength(contents, 20, 0.5);
  expect(contents.sugarKg).toBe(sugarKg);
  expect(brixOf(contents)).toBeCloseTo(20, 9);
});

test('a strength that is less sure than the count leaves it alone', () => {
  const contents = holding(10, 5);
  const before = { ...contents };
  correctByStrength(contents, 20, 8);
  expect(contents).toEqual(before);
});

test('a trusted strength corrects the sugar where only the volume was counted', () => {
  const contents = { ...holding(10, 2), sugarGuessed: true };
  const mass = contents.sugarKg! + contents.waterKg!;
  correctByStrength(contents, 20, 0.5);
  expect(contents.sugarKg! + contents.waterKg!).toBeCloseTo(mass, 9);
  expect(brixOf(contents)).toBeCloseTo(20, 9);
  expect(contents.sugarGuessed).toBe(false);
});

test('guessed sugar in a volume that rests on nominal power is given up', () => {
  const contents = { ...holding(10, 2), sugarGuessed: true, nominalKg: 6 };
  correctByStrength(contents, 20, 0.5);
  expect(litresOf(contents)).toBeNull();
});
