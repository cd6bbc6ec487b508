// An amount that no such vessel holds is asked about; what can be is not.
import { expect, test } from 'vitest';
import type { Mark, Now } from '../../../src/screen/client/types.ts';
import { doubtAbout } from '../../../src/screen/marks/doubt.ts';
import { metric, moment, reading } from '../moment.ts';

const header = {
  ...(moment.header as NonNullable<Now['header']>),
  pans: [{ id: 'p1', name: 'Front pot', vessel: { shape: 'round' as const, diameter_mm: 400 } }, { id: 'p2' }],
};
const place = {
  now: { ...moment, header, readings: [{ ...reading, depth_mm: 100 }] },
  header,
  pan: 'p1',
  settings: metric,
};
const topUp = (pan: string, litres: number): Mark => ({ kind: 'top-up', pan, litres });

test('300 L into a pot of 40 cm is questioned, without a depth that nothing has', () => {
  expect(doubtAbout(topUp('p1', 300), place)).toMatch(
    /^Front pot: Filling 300\sL: that is more than such a pan holds\./,
  );
});

test('what is in the pot already counts', () => {
  expect(doubtAbout(topUp('p1', 60), place)).toBeNull();
  expect(doubtAbout(topUp('p1', 65), place)).not.toBeNull();
});

test('without a vessel nobody can tell, and a flame is never too deep', () => {
  expect(doubtAbout(topUp('p2', 300), place)).toBeNull();
  expect(doubtAbout(topUp('p2', 2000), place)).toMatch(/2000\sL: that is more than such a pan holds/u);
  expect(doubtAbout({ kind: 'flame', pan: 'p1', level: 1 }, place)).toBeNull();
  expect(doubtAbout({ kind: 'depth', pan: 'p2', mm: 900 }, place)).not.toBeNull();
});
