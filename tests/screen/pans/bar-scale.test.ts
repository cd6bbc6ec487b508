// Water point, finish and scorch limit stand in the same places on every bar.
import { expect, test } from 'vitest';
import { panPlace, PLACE, placeOf } from '../../../src/screen/pans/bar-scale.ts';

const maple = { water: 98, finish: 102, scorch: 106 };
const birch = { water: 98, finish: 104, scorch: 108 };

test('landmarks are in their places whatever the sap', () => {
  for (const pan of [maple, birch]) {
    expect(placeOf(pan.water, pan)).toBeCloseTo(PLACE.water, 9);
    expect(placeOf(pan.finish, pan)).toBeCloseTo(PLACE.finish, 9);
    expect(placeOf(pan.scorch, pan)).toBeCloseTo(PLACE.scorch, 9);
  }
});

test('a hotter pan never stands further left, and none leaves the bar', () => {
  let before = 0;
  for (let celsius = 0; celsius < 200; celsius += 0.5) {
    const place = placeOf(celsius, maple) ?? Number.NaN;
    expect(place).toBeGreaterThanOrEqual(before);
    expect(place).toBeLessThanOrEqual(1);
    before = place;
  }
  expect(before).toBe(1);
});

test('halfway to the finish is halfway on the bar', () => {
  expect(placeOf(100, maple)).toBeCloseTo((PLACE.water + PLACE.finish) / 2, 9);
});

test('without a water point, or with nothing beyond it, there is no bar', () => {
  expect(placeOf(100, { ...maple, water: null })).toBeNull();
  expect(placeOf(100, { water: 98, finish: null, scorch: null })).toBeNull();
});

test('a finish or a scorch limit alone makes a bar', () => {
  expect(placeOf(102, { ...maple, scorch: null })).toBeCloseTo(PLACE.finish, 9);
  expect(placeOf(106, { ...maple, finish: null })).toBeCloseTo(PLACE.scorch, 9);
});

test('a pan that boils and is at its finish stands at the mark of the finish at the least, whatever its thermometer shows', () => {
  expect(panPlace(101, true, maple)).toBe(PLACE.finish);
  expect(panPlace(104, true, maple)).toBe(placeOf(104, maple));
  expect(panPlace(101, false, maple)).toBe(placeOf(101, maple));
  expect(panPlace(70, true, maple)).toBe(placeOf(70, maple));
  expect(panPlace(101, true, { ...maple, finish: null })).toBe(placeOf(101, { ...maple, finish: null }));
});
