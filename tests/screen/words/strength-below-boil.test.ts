// What a card says of the strength of a pan that does not boil yet. Invented, Tarn Hollow.
import { expect, test } from 'vitest';
import { notedStrength, plannedStrength } from '../../../src/protocol/planned-strength.ts';
import type { Now, Reading } from '../../../src/screen/client/types.ts';
import { notKnownYet } from '../../../src/screen/words/pan-words.ts';
import { strengthRestsOn } from '../../../src/screen/words/strength-below-boil.ts';
import { moment, reading } from '../moment.ts';

type Mark = Now['marks'][number]['mark'];
const noted = (...marks: Mark[]): Now => ({
  ...moment,
  header: { ...moment.header!, plan: { brix: 0.9, litres: 60, pans: [] } } as Now['header'],
  marks: marks.map((mark, at) => ({
    ...{ t: at, at, withdrawn: false, questioned: false, doubt: null, corrections: [], cameTo: null, takenC: null },
    mark,
  })),
});
const cold: Reading = { ...reading, temperature_c: 12, rise_c: -88, brix: null, litres: 60, stage: 'warming' };
const pour: Mark = { kind: 'top-up', pan: 'p1', litres: 60 };
const density: Mark = { kind: 'density', pan: 'p1', brix: 0.9 };

test('until it was measured, the sap is as strong as was planned, and nothing asks for it', () => {
  expect(plannedStrength(noted(pour), cold)).toBe(0.9);
  expect(notKnownYet(cold, null, true).map(({ what }) => what)).not.toContain('strength');
  expect(notKnownYet(cold, null, false).map(({ what }) => what)).toContain('strength');
});

test('the plan says nothing of what was poured in otherwise, of an untold pan, and of one that is known or may boil', () => {
  expect(plannedStrength(noted({ ...pour, brix: 1.4 }), cold)).toBeNull();
  expect(plannedStrength(noted({ kind: 'transfer', from: 'p2', to: 'p1' }), cold)).toBeNull();
  for (const change of [{ litres: null }, { brix: 1 }, { rise_c: 0.2 }, { stage: 'boiling' as const }])
    expect(plannedStrength(noted(pour), { ...cold, ...change })).toBeNull();
  expect(plannedStrength(moment, cold)).toBeNull();
});

test('cold sap of which each pour was typed is as strong as all of it', () => {
  expect(notedStrength(noted({ ...pour, brix: 2 }), cold)).toBeCloseTo(2);
  expect(notedStrength(noted({ ...pour, brix: 2 }, { ...pour, litres: 20, brix: 4 }), cold)).toBeCloseTo(2.5, 1);
  const emptied: Mark = { kind: 'draw-off', pan: 'p1', all: true };
  expect(notedStrength(noted({ ...pour, brix: 4 }, emptied, { ...pour, brix: 2 }), cold)).toBeCloseTo(2);
  expect(notedStrength(noted({ ...pour, brix: 2 }, pour), cold)).toBeNull();
  expect(notedStrength(noted({ ...pour, brix: 2 }, { kind: 'transfer', from: 'p2', to: 'p1' }), cold)).toBeNull();
  expect(notedStrength(noted({ ...pour, brix: 2 }), { ...cold, brix: 2 })).toBeNull();
});

test('what was filled in thick is as strong as it was noted until it can have boiled, however far over water that is', () => {
  const thick = noted({ ...pour, brix: 48 });
  // 48 °Bx of maple boil 2.2 °C over water.
  for (const rise_c of [0.4, 1.8]) expect(notedStrength(thick, { ...cold, stage: 'unknown', rise_c })).toBeCloseTo(48);
  expect(notedStrength(thick, { ...cold, stage: 'unknown', rise_c: 3 })).toBeNull();
  expect(notedStrength(noted({ ...pour, brix: 2 }), { ...cold, stage: 'unknown', rise_c: 0.4 })).toBeNull();
});

test('a strength below a boil says whether an instrument told it or what was poured in', () => {
  expect(strengthRestsOn(noted(pour, density), cold)).toBe('as measured');
  expect(strengthRestsOn(noted(density, pour), cold)).toBe('as poured');
  expect(strengthRestsOn(noted(pour, density), { ...cold, stage: 'boiling' })).toBeNull();
});
