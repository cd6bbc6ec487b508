// The list of boils tells fuel as it is bought, by its weight, as long as all boils burned what is weighed.
import { expect, test } from 'vitest';
import type { BoilFigures } from '../../../src/protocol/season-messages.ts';
import { listColumns } from '../../../src/screen/notebook/list-columns.ts';

const figure = (value: number | null) => (value === null ? null : { value, low: null, high: null, from: 'worked-out' });
const burned = (kg: number | null, heat: number | null) => ({
  figures: { fuel_kg_per_l: figure(kg), fuel_mj_per_l: figure(heat) } as unknown as BoilFigures,
});

test('boils on one fuel tell its weight; wood or electricity beside it makes it heat', () => {
  // Propane holds 46 MJ in a kilogram, seasoned wood about 15.
  const propane = burned(2, 92);
  expect(listColumns([propane, burned(3, 138), burned(null, null), { figures: null }]).at(-1)).toBe('fuel_kg_per_l');
  expect(listColumns([propane, burned(null, 92)]).at(-1)).toBe('fuel_mj_per_l');
  expect(listColumns([propane, burned(6, 92)]).at(-1)).toBe('fuel_mj_per_l');
});
