// A pan that no thermometer shows and that may have boiled dry by count: it is called to be looked at, until somebody pours or measures.
import { expect, test } from 'vitest';
import type { Entry, Vessel } from '../../../src/core/boil/entries.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { foldAll, inOrder, mark, tarnHollow } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const flat: Vessel = { shape: 'rectangular', length_mm: 600, width_mm: 400 };
const setUp = (vessel?: Vessel, power_w?: number) =>
  tarnHollow({
    ports: [],
    probes: [],
    pans: [
      { id: 'p1', name: 'Back pan', ...(vessel && { vessel }), heat: { kind: 'propane', ...(power_w && { power_w }) } },
    ],
  });
const filled = mark(0, { kind: 'top-up', pan: 'p1', litres: 17, brix: 2 });

const lowCalls = (header: ReturnType<typeof setUp>, more: Entry[], minutes: number) =>
  foldAll(header, inOrder([filled], more), minutes * MINUTE_MS).transitions.filter(
    ({ alarm }) => alarm === 'low-level',
  );

test.each([
  ['a flat pan', setUp(flat, 9000)],
  ['a flat pan over a burner that nobody described', setUp(flat)],
  ['a vessel that nobody described', setUp(undefined, 9000)],
])('%s is called, medium and as unsure as it is', (_, header) => {
  const calls = lowCalls(header, [], 480);
  expect(calls).toHaveLength(1);
  expect(calls[0]).toMatchObject({
    event: 'raised',
    priority: 'medium',
    why: expect.stringMatching(/^may be low, by/u),
  });
});

test('it says that nobody knows, and what to do', () => {
  const t = 140 * MINUTE_MS;
  const { alarms } = boilView(foldAll(setUp(flat, 9000), [filled], t).state, t);
  const call = alarms.find(({ alarm }) => alarm === 'low-level');
  expect(call).toMatchObject({ title: 'May be low', todo: expect.stringMatching(/^Look how deep it is/u) });
});

test.each([
  ['a pour', { kind: 'top-up', pan: 'p1', litres: 12, brix: 2 }],
  ['a depth', { kind: 'depth', pan: 'p1', mm: 60 }],
  ['that it is off the fire', { kind: 'flame', pan: 'p1', level: 0 }],
] as const)('%s that is noted ends it', (_, noted) => {
  const calls = lowCalls(setUp(flat, 9000), [mark(135 * MINUTE_MS, noted)], 140);
  expect(calls.map(({ event }) => event)).toEqual(['raised', 'cleared']);
});

test('a pan of which nobody told an amount is not called', () => {
  const { transitions } = foldAll(setUp(flat, 9000), [], 480 * MINUTE_MS);
  expect(transitions).toEqual([]);
});
