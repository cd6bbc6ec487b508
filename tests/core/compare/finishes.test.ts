// When a pan was finished: one that was taken off short of its finish was not.
import { expect, test } from 'vitest';
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import { applyEntry, startBoil } from '../../../src/core/boil/fold.ts';
import { type FinishedBy, finishesOf } from '../../../src/core/compare/finishes.ts';
import { foldTools } from '../../../src/host/fold-tools.ts';

const header: Header = {
  recording: 'panwarden',
  version: 1,
  started: '2027-04-18T07:30:00-07:00',
  pans: [{ id: 'p1', name: 'Back pot', sap: 'maple', finish: { brix: 66.9 } }],
};

test.each([
  [66, 'taken-off'],
  [64, 'taken-off'],
  [57, 'unfinished'],
] as const)('a pot emptied at %d °Bx is %s', (brix, by: FinishedBy) => {
  const off: Entry = { t: 60_000, mark: { kind: 'draw-off', pan: 'p1', all: true } };
  const state = applyEntry(startBoil(header), off, foldTools);
  expect(finishesOf(state, [], [], () => brix)).toEqual([{ pan: 'p1', at: 60_000, by }]);
});

test('a pot emptied of sap ends no batch', () => {
  const off: Entry = { t: 60_000, mark: { kind: 'draw-off', pan: 'p1', all: true } };
  expect(finishesOf(applyEntry(startBoil(header), off, foldTools), [], [], () => 12)).toEqual([]);
});
