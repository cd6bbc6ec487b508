// Checks what is advised beside the reading: how much may be poured in, and whether a batch ends too shallow.
import { expect, test } from 'vitest';
import { settingOf } from '../../../src/core/boil/settings.ts';
import { lookAt } from '../../../src/core/pan/forecast.ts';
import { endsShallow, smallestBatch, topUpRoom } from '../../../src/core/pan/outlook.ts';
import { boilingAt, foldAll, inOrder, lines, mark, onePot } from '../boil/tarn-hollow.ts';

const MINUTE_MS = 60_000;
const UNTIL = 10 * MINUTE_MS;

function advised(litres: number, diameterMm: number) {
  const pan = {
    id: 'p1',
    name: 'Back pot',
    probe: 'A/1',
    vessel: { shape: 'round' as const, diameter_mm: diameterMm },
    heat: { kind: 'propane' as const, power_w: 12_000 },
  };
  const poured = mark(0, { kind: 'top-up', pan: 'p1', litres, brix: 20, celsius: 95 });
  const heard = lines(0, UNTIL, { T1: () => boilingAt(20, 'maple') });
  const { state } = foldAll({ ...onePot(), pans: [pan] }, inOrder([poured], heard), UNTIL);
  const look = lookAt(state.pans['p1']!, settingOf(state, 'p1'), UNTIL);
  return { endsShallow: endsShallow(look, 20), smallestBatch: smallestBatch(look, 20), room: topUpRoom(look) };
}

test('a wide pan with little in it ends too shallow, and says from which strength on it belongs in a smaller pot', () => {
  // 4 L of 20 °Bx hold 0.86 kg of sugar: about 1 L of syrup, 5 mm in a pan of 500 mm; the least is 15 mm.
  const { endsShallow } = advised(4, 500);
  expect(endsShallow!.depthMm).toBeGreaterThan(4);
  expect(endsShallow!.depthMm).toBeLessThan(6.5);
  expect(endsShallow!.brixToMove).toBeGreaterThan(22);
  expect(endsShallow!.brixToMove).toBeLessThan(40);
  expect(advised(20, 300).endsShallow).toBeNull();
});

test('the smallest batch stands at the least depth when it is done', () => {
  // 15 mm in 300 mm are 1.06 L hot; of 20 °Bx it takes 66.9 · 1.33 / (20 · 1.08) as much.
  const { smallestBatch } = advised(10, 300);
  expect(smallestBatch!.syrupLitres).toBeCloseTo(1.02, 1);
  expect(smallestBatch!.sapLitres / smallestBatch!.syrupLitres).toBeCloseTo(4.1, 1);
  expect(smallestBatch!.sapBrix).toBe(20);
});

test('so much cold sap may go in as the fire warms in a minute', () => {
  // About 4 kW that end as steam warm 0.6 L by 95 °C in a minute.
  const { room } = advised(10, 300);
  expect(room!.litres).toBeGreaterThan(0.35);
  expect(room!.litres).toBeLessThan(0.9);
});
