// Checks that every kind of sap can be boiled by the model, is found again from its mix, and says plainly how well it is known.
import { expect, test } from 'vitest';
import { type SapKind, sapKindOf, sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';

const kind = (key: SapKind['key']): SapKind => sapKinds.find((one) => one.key === key)!;
const riseAt66 = (key: SapKind['key']): number => riseFromStrength(66, kind(key).shares!, 1013.25) ?? NaN;

test('the rises at 66 °Bx that the sentences name: maple early 4.02, usual 4.05, late 4.24, birch 6.03 °C (computed apart)', () => {
  expect(riseAt66('maple-early')).toBeCloseTo(4.023, 3);
  expect(riseAt66('maple')).toBeCloseTo(4.047, 3);
  expect(riseAt66('maple-late')).toBeCloseTo(4.236, 3);
  expect(riseAt66('birch')).toBeCloseTo(6.025, 3);
});

test('the words of a header mean the mixes that the recording format gives them', () => {
  expect(kind('maple').shares).toEqual({ sucrose: 0.98, glucose: 0.01, fructose: 0.01 });
  expect(kind('birch').shares).toEqual({ sucrose: 0.12, glucose: 0.43, fructose: 0.45 });
  expect(sapKindOf('maple').key).toBe('maple');
  expect(sapKindOf('birch').key).toBe('birch');
});

test('a kind is found again from its shares, and any other mix is another sap of unknown strength', () => {
  for (const one of sapKinds.filter(({ shares }) => shares !== null)) expect(sapKindOf(one.shares!)).toBe(one);
  for (const sap of [{ sucrose: 1 }, { ...sugarShares('birch'), others: 0.05 }]) {
    expect(sapKindOf(sap).key).toBe('other');
    expect(sapKindOf(sap).typicalBrix).toBeNull();
  }
});

test('maple sap is about 2 °Bx and birch sap about 1: extension services', () => {
  expect([kind('maple').typicalBrix, kind('birch').typicalBrix]).toEqual([2, 1]);
});

test('a sap whose rise nobody published asks for one density reading and says that it is not published', () => {
  for (const key of ['birch', 'walnut', 'other'] as const) expect(kind(key).sentence).toMatch(/one density reading/u);
  expect(kind('birch').sentence).toMatch(/^No rise of birch syrup was ever published/u);
  expect(kind('walnut').source).toMatch(/^From memory and common practice/u);
});

test('what is left out of a mix is 0', () => {
  expect(sugarShares({ sucrose: 1, glucose: undefined })).toEqual({ sucrose: 1, glucose: 0, fructose: 0 });
  expect(sugarShares({ glucose: 1, others: 0.1 })).toEqual({ sucrose: 0, glucose: 1, fructose: 0, others: 0.1 });
});
