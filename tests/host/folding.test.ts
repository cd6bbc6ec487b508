// The order in which a boil is told: what fell due before an entry, then the entry, then what it brought about.
import { expect, test } from 'vitest';
import { startBoil } from '../../src/core/boil/fold.ts';
import type { Entry } from '../../src/core/boil/entries.ts';
import { foldTools } from '../../src/host/fold-tools.ts';
import { Folding } from '../../src/host/folding.ts';
import { TARN_HEADER } from './tarn-boil.ts';

function told(entries: readonly Entry[], everyMs: number | null = null): string[] {
  const said: string[] = [];
  const folding = new Folding(
    startBoil(TARN_HEADER),
    foldTools,
    {
      alarm: ({ t, alarm, event }) => said.push(`${t < 60_000 ? 'early' : 'late'} ${alarm} ${event}`),
      readings: (t, [reading]) => said.push(`reading ${t} ${reading?.temperature_c === null ? 'not known' : 'known'}`),
      took: (entry) => said.push(`took ${entry.t}`),
    },
    everyMs,
  );
  for (const entry of entries) folding.take(entry, '');
  return said;
}

const lines = (from: number, to: number): Entry[] =>
  Array.from({ length: to - from }, (_, index) => ({
    t: (from + index) * 1000,
    port: 'A',
    line: `T1=97.${index % 3}`,
  }));

test('what fell due before an entry is told before it, without any interval of readings', () => {
  const said = told([...lines(0, 20), { t: 60_000, port: 'A', line: 'T1=97' }]);
  expect(said.slice(-2)).toEqual(['early probe-lost raised', 'took 60000']);
});

test('what an entry brings about is told after it', () => {
  const said = told([
    ...lines(0, 3),
    { t: 3000, port: 'A', state: 'lost', why: 'invented' },
    { t: 4000, mark: { kind: 'note', text: 'invented' } },
    { t: 4001, answer: { acknowledge: { pan: null, port: 'A', alarm: 'port-lost' } } },
  ]);
  expect(said.slice(-2)).toEqual(['took 4001', 'early port-lost acknowledged']);
});

test('in a gap the readings are not known, and no alarm falls due', () => {
  const said = told([...lines(0, 3), { t: 300_000, run: 'gap', seconds: 297 }], 60_000);
  expect(said).toEqual([
    ...['took 0', 'reading 0 known', 'took 1000', 'took 2000'],
    ...[60, 120, 180, 240].map((seconds) => `reading ${seconds * 1000} not known`),
    'took 300000',
  ]);
});
