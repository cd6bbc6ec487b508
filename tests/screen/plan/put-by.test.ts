// A plan that was put by comes back as it was typed, without a setting that is no unit of it, and what no form could show is no plan. Tarn Hollow, invented.
import { expect, test } from 'vitest';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import { planDraft } from '../../../src/screen/plan/plan-draft.ts';
import { sheetOf, typedOf } from '../../../src/screen/plan/put-by.ts';
import { american, metric } from '../moment.ts';

const pans = [{ id: 'p1', name: 'Back pot', vessel: { shape: 'round' as const, diameter_mm: 400 } }, { id: 'p2' }];
const draft = { ...planDraft({ pans }, american, sapKinds, '2027-04-18'), litres: '37', until: '2027-04-18T13:00' };
const put = JSON.parse(JSON.stringify(sheetOf({ draft, units: american }))) as ReturnType<typeof sheetOf>;

test('what was put by is the same form in the same units, whatever else was set since', () => {
  expect(put.units).not.toHaveProperty('second_channel');
  const back = typedOf(put, metric, sapKinds)!;
  expect(back.draft).toEqual(draft);
  expect(back.units).toEqual({ ...metric, ...put.units });
  expect(back.units.volume).toBe(american.volume);
});

test('a form of another version of the program, or none, is no plan', () => {
  const { litres: _, ...without } = put.draft;
  expect(typedOf({ ...put, draft: without }, metric, sapKinds)).toBeNull();
  const boil = { ...draft.boil, pans: [{ ...draft.boil.pans[0], vessel: 'round' }] };
  expect(typedOf({ ...put, draft: { ...put.draft, boil } }, metric, sapKinds)).toBeNull();
  expect(typedOf({ ...put, draft: { ...put.draft, boil: { ...draft.boil, pans: [] } } }, metric, sapKinds)).toBeNull();
  expect(typedOf(null, metric, sapKinds)).toBeNull();
});
