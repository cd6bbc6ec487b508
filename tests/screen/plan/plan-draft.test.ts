// A plan as it is typed: other units keep its amounts, refusals name the unit, and the store fills it in. Tarn Hollow, invented.
import { expect, test } from 'vitest';
import { planBoil } from '../../../src/core/plan/plan.ts';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import type { CollectionsView } from '../../../src/protocol/season-messages.ts';
import { planInput } from '../../../src/protocol/plan-schema.ts';
import type { PlanRequest } from '../../../src/protocol/plan-schema.ts';
import type { Settings } from '../../../src/screen/client/types.ts';
import { inStoreOf } from '../../../src/screen/plan/in-store.ts';
import {
  planDraft,
  planDraftIn,
  problemInPlan,
  requestIn,
  requestOf,
  unsizedWords,
  withFireLit,
  withStore,
} from '../../../src/screen/plan/plan-draft.ts';
import type { PlanDraft } from '../../../src/screen/plan/plan-draft.ts';
import { differenceWords } from '../../../src/screen/words/plan-words.ts';
import type { Plan } from '../../../src/screen/words/plan-words.ts';
import { american, metric } from '../moment.ts';

const begun = planDraft(
  {
    site: { altitude_m: 640 },
    pans: [
      {
        id: 'p1',
        name: 'Back pot',
        sap: 'birch',
        vessel: { shape: 'round', diameter_mm: 400 },
        heat: { kind: 'propane', power_w: 16_000 },
        min_depth_mm: 20,
        finish: { brix: 62, ceiling_c: 106 },
      },
      {
        id: 'p2',
        vessel: {
          shape: 'measured',
          fill: [
            { mm: 50, litres: 4.5 },
            { mm: 100, litres: 10 },
          ],
        },
        finish: { rise_c: 4 },
      },
    ],
  },
  metric,
  sapKinds,
  '2027-04-18',
);
const typed: PlanDraft = { ...begun, litres: '140', strength: '0.9', celsius: '5', pressure: '1016' };

// NIST SP 811: 1 US gal = 3.785 412 L, 1 ft = 0.3048 m, 1 in = 25.4 mm, 1 inHg = 33.863 89 hPa, 1 Btu(IT)/h = 0.293 071 1 W.
test('other units keep the amounts that were typed', () => {
  const shown = planDraftIn(typed, metric, american);
  expect(shown).toMatchObject({ litres: '36.98', celsius: '41', pressure: '30' });
  expect(shown.boil).toMatchObject({ altitude: '2100' });
  expect(shown.boil.pans[0]).toMatchObject({ vessel: { diameter: '15.75' }, power: '54594', leastDepth: '0.79' });
  expect(shown.boil.pans[1]).toMatchObject({
    finishAt: '7.2',
    vessel: { fill: [{ depth: '1.97', volume: '1.189' }, {}] },
  });
  expect(problemInPlan(shown, american)).toBeNull();
  const [asked, was] = [requestOf(shown, american, sapKinds), requestOf(typed, metric, sapKinds)];
  expect(asked.litres).toBeCloseTo(was.litres, 1);
  expect(asked.brix).toBeCloseTo(was.brix!, 1);
  expect(asked.pressure!.hpa).toBeCloseTo(was.pressure!.hpa, 0);
  expect(asked.site!.altitude_m).toBeCloseTo(640, 0);
});

test.each<[string, Partial<Settings>]>([
  ['US units', american],
  ['imperial gallons', { volume: 'imperial-gallon' }],
  ['°Baumé', { strength: 'baume' }],
  ['specific gravity', { strength: 'sg' }],
])('there and back by %s it stands as it was typed', (_, other) => {
  const there = { ...metric, ...other };
  expect(planDraftIn(planDraftIn(typed, metric, there), there, metric)).toEqual(typed);
});

test('what is no number, and what the units leave alone, stays as it was typed', () => {
  const odd = { ...typed, litres: 'much', strength: '0,90' };
  expect(planDraftIn(odd, metric, american)).toMatchObject({ litres: 'much' });
  expect(planDraftIn(odd, metric, { ...metric, temperature: 'F' })).toMatchObject({ litres: 'much', strength: '0,90' });
});

test.each([
  [
    { pressure: '200' },
    metric,
    'Pressure: 200 is no air pressure. Type 300 to 1200 hPa, 36 to 120 kPa or 9 to 35 inHg.',
  ],
  [{ celsius: '5' }, american, 'The sap’s temperature: 5 is outside of 32 to 212 °F.'],
  [{ boil: { ...typed.boil, altitude: '99640' } }, metric, 'Height over the sea: 99640 is outside of −500 to 9000 m.'],
])('what is outside of what can be is refused with its unit: %o', (change, settings, sentence) => {
  const draft = { ...planDraftIn(typed, metric, settings), ...change };
  expect(problemInPlan(draft, settings)?.sentence.replaceAll('\u00a0', ' ')).toBe(sentence);
});

test('what is still to be typed is no error, and what is wrong is said before it', () => {
  const [round] = begun.boil.pans;
  const pans = [{ ...round!, vessel: { ...round!.vessel, diameter: '' } }];
  const unfinished = { ...typed, boil: { ...typed.boil, pans } };
  expect(problemInPlan({ ...typed, litres: '' }, metric)).toMatchObject({ isMissing: true });
  expect(problemInPlan({ ...typed, until: '2027-04-18T13:00', start: '' }, metric)).toMatchObject({ isMissing: true });
  expect(problemInPlan(unfinished, metric)).toBeNull();
  expect(problemInPlan({ ...unfinished, strength: '90' }, metric)).toMatchObject({ isMissing: false });
  expect(problemInPlan({ ...typed, litres: 'much' }, metric)).toMatchObject({ isMissing: false });
});

type Stored = CollectionsView['collections'];
const kept = { id: 'c', day: '2027-04-17', age_days: 1, keeping: { state: 'fresh', keeps_days: 3 } as const };
const stored: Stored = [
  { ...kept, litres: 60, brix: 0.8, sap: 'birch' },
  { ...kept, litres: 30, brix: 1.1, sap: 'birch' },
  { ...kept, litres: 50, brix: 2, sap: 'maple' },
  { ...kept, litres: 99, brix: 2, sap: 'birch', keeping: null },
];

test('what is in store of a sap is its litres, and its strength by them; of other saps and what is gone nothing', () => {
  // 60 L of 0.8 and 30 L of 1.1: (48 + 33) / 90 = 0.9.
  const birch = inStoreOf(stored, 'birch', sapKinds)!;
  expect(birch.litres).toBe(90);
  expect(birch.brix).toBeCloseTo(0.9, 9);
  expect(inStoreOf(stored, 'maple-late', sapKinds)).toMatchObject({ litres: 50 });
  expect(inStoreOf(stored, 'walnut', sapKinds)).toBeNull();
  const unmeasured: Stored = [...stored, { ...kept, litres: 10, sap: 'birch' }];
  expect(inStoreOf(unmeasured, 'birch', sapKinds)).toMatchObject({
    litres: 100,
    brix: null,
    pastLitres: 0,
    isPast: false,
  });
  const old: Stored = [...stored, { ...kept, litres: 25, sap: 'birch', keeping: { state: 'past', keeps_days: 3 } }];
  expect(inStoreOf(old, 'birch', sapKinds)).toMatchObject({ litres: 90, pastLitres: 25 });
  // All of it too old: it is there all the same, and is said to be old.
  expect(inStoreOf(old.slice(-1), 'birch', sapKinds)).toMatchObject({ litres: 25, pastLitres: 0, isPast: true });
  expect(withStore(typed, birch, american)).toMatchObject({ litres: '23.78', strength: '0.9' });
  expect(withStore(typed, { litres: 100, brix: null }, metric)).toMatchObject({
    litres: '100',
    strength: '0.9',
  });
});

test('a fire that nobody set a time for is never lit in the past, and one that somebody set stays', () => {
  expect(withFireLit(begun, '2027-04-18T07:59')).toBe(begun);
  expect(withFireLit(begun, '2027-04-18T08:07').start).toBe('2027-04-18T08:07');
  const said = { ...begun, isStartTyped: true };
  expect(withFireLit(said, '2027-04-18T08:07')).toBe(said);
});

test('a pan of which a size is missing is planned by its fire, and named', () => {
  const [back, other] = typed.boil.pans as [PlanDraft['boil']['pans'][0], PlanDraft['boil']['pans'][0]];
  const pans = [{ ...back, vessel: { ...back.vessel, diameter: '' } }, other];
  const half = { ...typed, boil: { ...typed.boil, pans } };
  expect(problemInPlan(half, metric)).toBeNull();
  expect(unsizedWords(half, 3)).toMatch(/^Back pot still wants its sizes: .* planned by the fire alone\.$/);
  // Where the fire tells nothing either, nothing is planned by it.
  expect(unsizedWords(half, null)).toMatch(/^Back pot still wants its sizes, or .* the time is not known\.$/);
  expect(unsizedWords(typed, 3)).toBeNull();
  const [asked, next] = requestOf(half, metric, sapKinds).pans;
  expect(asked).toMatchObject({ name: 'Back pot', heat: { power_w: 16_000 } });
  expect([asked?.vessel, next?.vessel?.shape]).toEqual([undefined, 'measured']);
});

test('a plan beside the same one, kept in other units, has no difference: what is rounded to them is rounded in both', () => {
  const made = (request: PlanRequest): Plan => planBoil(planInput(request))!;
  // Invented: sap by the gallon in a flat pan of 24 by 33 in. Of so many amounts one or another falls across a step of five minutes.
  const amounts = Array.from({ length: 60 }, (_, index) => String(40 + index));
  const first = planDraft(
    {
      pans: [
        {
          id: 'p1',
          sap: 'maple',
          vessel: { shape: 'rectangular', length_mm: 838.2, width_mm: 609.6 },
          heat: { kind: 'propane', power_w: 17_584 },
        },
      ],
    },
    american,
    sapKinds,
    '2027-03-18',
  );
  const changed = amounts.flatMap((litres) => {
    const draft: PlanDraft = { ...first, litres, strength: '2' };
    const shown = requestOf(planDraftIn(draft, american, metric), metric, sapKinds);
    return differenceWords(made(shown), made(requestIn(draft, american, metric, sapKinds)), metric);
  });
  expect(changed).toEqual([]);
});
