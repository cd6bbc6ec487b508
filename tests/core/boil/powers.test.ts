// A burner power that is changed during a boil is remembered, for the list of what was noted.
import { expect, test } from 'vitest';
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import { foldAll } from './tarn-hollow.ts';

const heat = { kind: 'propane' as const, power_w: 8000 };
const pan = { id: 'p1', name: 'Back pot', heat };
const header: Header = { recording: 'panwarden', version: 1, started: '2027-04-18T07:30:00-07:00', pans: [pan] };
const set = (t: number, part: object): Entry => ({ t, set: { pans: [{ ...pan, ...part }] } });

test('a new power stands with its time, another change does not', () => {
  const entries = [
    set(60_000, { heat: { ...heat, power_w: 12_000 } }),
    set(120_000, { name: 'Front pot', heat: { ...heat, power_w: 12_000 } }),
    set(180_000, { heat: { kind: 'propane' } }),
  ];
  expect(foldAll(header, entries, 200_000).state.powers).toEqual([
    { t: 60_000, pan: 'p1', watts: 12_000 },
    { t: 180_000, pan: 'p1', watts: null },
  ]);
});
