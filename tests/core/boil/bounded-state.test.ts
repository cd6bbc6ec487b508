// Checks that what is kept of a boil does not grow with its length, where nothing but time goes on.
import { expect, test } from 'vitest';
import { startBoil } from '../../../src/core/boil/fold.ts';
import { foldOn, mark, onePot } from './tarn-hollow.ts';

const HOUR_MS = 3_600_000;

/** A pot that somebody filled and in which no thermometer speaks. */
function unheardPot(hours: number) {
  const noted = [
    mark(0, { kind: 'top-up', pan: 'p1', litres: 40, brix: 2 }),
    mark(1000, { kind: 'pressure', hpa: 950 }),
  ];
  return foldOn(startBoil(onePot('maple')), noted, hours * HOUR_MS).state;
}

test('a pot without a thermometer keeps no more of its past after twelve hours than after two', () => {
  const kept = (hours: number): number => JSON.stringify(unheardPot(hours).pans['p1']!.past).length;
  const early = kept(2);
  expect(early).toBeGreaterThan(1000);
  expect(kept(12)).toBeLessThan(1.3 * early);
});
