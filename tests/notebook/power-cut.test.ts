// After a power cut the notebook holds together, with every entry that was told of, and the entries are the first of those kept.
import { expect, test } from 'vitest';
import { cutPower, whyNoPowerCuts } from './power-cut.ts';

const why = whyNoPowerCuts();

test.skipIf(why !== null).each([
  ['a disk that keeps its word', 0],
  ['a disk on which every ninth sync fails', 9],
])(`%s${why === null ? '' : ` (left out: ${why})`}`, { timeout: 120_000 }, (_, failEvery) => {
  const results = cutPower(10, 11 + failEvery, 2600, failEvery);
  expect(results.flatMap(({ faults }) => faults)).toEqual([]);
  expect(results.some(({ told }) => told > 500)).toBe(true);
});
