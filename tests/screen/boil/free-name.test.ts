// No two boils begin with the same name.
import { expect, test } from 'vitest';
import { freeName } from '../../../src/screen/boil/free-name.ts';

test.each([
  ['Birch', [], 'Birch'],
  ['Birch', ['Maple'], 'Birch'],
  ['Birch', ['Birch'], 'Birch 2'],
  ['Birch', ['Birch', 'Birch 2'], 'Birch 3'],
  ['Birch 2', ['Birch', 'Birch 2', 'Birch 3'], 'Birch 4'],
  // A year is no number of a row.
  ['Run 2027', ['Run 2027'], 'Run 2027 2'],
  ['', ['', 'Birch'], ''],
])('%j among %j is %j', (name, taken, free) => {
  expect(freeName(name, taken)).toBe(free);
});
