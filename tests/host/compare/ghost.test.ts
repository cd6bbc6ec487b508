// Which past pan stands behind tonight's: one of the same sap, though another pan of that boil was finished last.
import { expect, test } from 'vitest';
import type { BoilCourse, PanCourse } from '../../../src/core/compare/course.ts';
import { bestGhost } from '../../../src/host/compare/ghost.ts';
import type { BoilSummary } from '../../../src/notebook/contract.ts';

const MINUTES = Array.from({ length: 51 }, (_, minute) => minute);
const pan = (id: string, sap: string): PanCourse => ({
  ...{ id, name: id, sap },
  celsius: MINUTES.map((minute) => 99 + minute / 10),
  water: MINUTES.map(() => 98),
  brix: MINUTES.map((minute) => 20 + minute),
  evaporation: MINUTES.map(() => 5),
});
const course: BoilCourse = {
  pans: [pan('front', 'maple'), pan('back', 'birch')],
  finishes: [
    { pan: 'front', at: 40 * 60_000, by: 'called' },
    { pan: 'back', at: 50 * 60_000, by: 'called' },
  ],
};
const summary = { boil: 'tarn-hollow', name: 'Tarn Hollow, invented', started: '2027-04-18T07:30:00Z' } as BoilSummary;

test.each([
  ['maple', 'front'],
  ['birch', 'back'],
])('behind a pan of %s that is called otherwise stands the pan of that sap', (sap, id) => {
  const ghost = bestGhost([{ summary, course }], { pan: 'other', sap, t: 0, brix: null }, 100);
  expect(ghost?.pan.id).toBe(id);
});

test('what was tried out for minutes is no best boil, unless it came to its finish', () => {
  const tonight = { pan: 'front', sap: 'maple', t: 0, brix: null };
  const best = (finishes: BoilCourse['finishes'], pans = course.pans): string | null =>
    bestGhost([{ summary, course: { pans, finishes } }], tonight, 100)?.pan.id ?? null;
  expect(best([])).toBeNull();
  expect(best([{ pan: 'front', at: 50 * 60_000, by: 'unfinished' }])).toBeNull();
  expect(best([{ pan: 'front', at: 50 * 60_000, by: 'taken-off' }])).toBe('front');
  const long = { ...pan('front', 'maple'), evaporation: Array.from({ length: 60 }, () => 5) };
  expect(best([], [long])).toBe('front');
});
