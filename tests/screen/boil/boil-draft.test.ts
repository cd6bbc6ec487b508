// A set-up goes through the form and comes out as it was, in any units.
import { expect, test } from 'vitest';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import { headerSchema, setupSchema } from '../../../src/protocol/header-schema.ts';
import {
  anotherPan,
  boilDraft,
  doubtInDraft,
  problemInDraft,
  problemInPower,
  setupOf,
} from '../../../src/screen/boil/boil-draft.ts';
import { chooseSap, sapDraft } from '../../../src/screen/boil/sap-draft.ts';
import type { SapDraft } from '../../../src/screen/boil/sap-draft.ts';
import type { Pan, Settings, Setup } from '../../../src/screen/client/types.ts';
import { american, metric } from '../moment.ts';

type Vessel = NonNullable<Pan['vessel']>;

const setup: Setup = {
  name: "Sunday's run",
  site: { altitude_m: 640 },
  ports: [{ id: 'A', path: '/dev/ttyUSB0', baud: 115_200 }],
  probes: [{ id: 'A/T1', port: 'A', channel: 'T1', offset_c: -0.4 }],
  pans: [
    {
      id: 'p1',
      name: 'Back pot',
      sap: 'birch',
      probe: 'A/T1',
      vessel: { shape: 'round', diameter_mm: 400 },
      heat: { kind: 'propane', power_w: 16_000 },
      min_depth_mm: 20,
      finish: { brix: 65, ceiling_c: 94 },
    },
    {
      id: 'p2',
      sap: { sucrose: 0.5, glucose: 0.25, fructose: 0.25 },
      finish: { rise_c: 4 },
      vessel: { shape: 'rectangular', length_mm: 900, width_mm: 600 },
    },
  ],
};

test('what went in comes out', () => {
  expect(problemInDraft(boilDraft(setup, metric, sapKinds), metric)).toBeNull();
  expect(setupOf(boilDraft(setup, metric, sapKinds), metric, sapKinds)).toEqual(setup);
});

test('in other units it comes out within what can be typed', () => {
  const [back, flat] = setupOf(boilDraft(setup, american, sapKinds), american, sapKinds).pans ?? [];
  expect(back?.vessel).toMatchObject({ shape: 'round' });
  expect(back?.vessel?.shape === 'round' ? back.vessel.diameter_mm : 0).toBeCloseTo(400, 0);
  expect(back?.finish?.ceiling_c).toBeCloseTo(94, 1);
  expect(flat?.finish).toMatchObject({ rise_c: expect.closeTo(4, 2) as number });
});

test('every kind of sap goes through the form, and one that no kind has goes by its shares', () => {
  for (const { key, shares } of sapKinds) {
    const sap = key === 'maple' || key === 'birch' ? key : (shares ?? { sucrose: 0.6, glucose: 0.2, fructose: 0.2 });
    const draft = boilDraft({ pans: [{ id: 'p1', sap }] }, metric, sapKinds);
    expect(draft.pans[0]?.sap.kind).toBe(key);
    expect(setupOf(draft, metric, sapKinds).pans?.[0]?.sap).toEqual(sap);
  }
});

test('a kind that is chosen writes its shares, and shares that do not make 100 % are refused', () => {
  const draft = boilDraft({ pans: [{ id: 'p1', name: 'Back pot' }] }, metric, sapKinds);
  const withSap = (sap: SapDraft) => ({ ...draft, pans: draft.pans.map((pan) => ({ ...pan, sap })) });
  const late = chooseSap(sapDraft('maple', sapKinds), 'maple-late', sapKinds);
  expect(setupOf(withSap(late), metric, sapKinds).pans?.[0]?.sap).toEqual({
    sucrose: 0.9,
    glucose: 0.05,
    fructose: 0.05,
  });
  const own = chooseSap(late, 'other', sapKinds);
  expect(problemInDraft(withSap(own), metric)).toBeNull();
  const short = { ...own, shares: { ...own.shares, sucrose: '70' } };
  expect(problemInDraft(withSap(short), metric)).toBe(
    'Back pot, sucrose, glucose and fructose have to make 100\u00a0% together, not 80\u00a0%.',
  );
});

const cone: Vessel = { shape: 'round-sloped', bottom_diameter_mm: 300, top_diameter_mm: 400, height_mm: 250 };
const table: Vessel = {
  shape: 'measured',
  fill: [
    { mm: 20, litres: 1.5 },
    { mm: 60, litres: 5 },
  ],
};

const walled: Vessel = { shape: 'round', diameter_mm: 240, height_mm: 140 };
const tray: Vessel = { shape: 'rectangular', length_mm: 500, width_mm: 400, height_mm: 65 };

test('a straight wall whose height nobody knows is asked for no more, and a wrong one is refused', () => {
  const bare: Vessel = { shape: 'round', diameter_mm: 240 };
  const draft = boilDraft({ pans: [{ id: 'p1', name: 'Pot', vessel: bare }] }, metric, sapKinds);
  expect(setupOf(draft, metric, sapKinds).pans?.[0]?.vessel).toEqual(bare);
  const pans = draft.pans.map((pan) => ({ ...pan, vessel: { ...pan.vessel, height: '4' } }));
  expect(problemInDraft({ ...draft, pans }, metric)).toBe(
    'Pot, wall height, if known: 4 is outside of 10 to 5000\u00a0mm.',
  );
});

test.each([cone, table, walled, tray])('a $shape vessel goes through the form in any units', (vessel) => {
  for (const settings of [metric, american]) {
    const draft = boilDraft({ pans: [{ id: 'p1', vessel }] }, settings, sapKinds);
    expect(problemInDraft(draft, settings)).toBeNull();
    const out = setupOf(draft, settings, sapKinds).pans?.[0]?.vessel;
    const numbers = (value: unknown): number[] =>
      typeof value === 'number' ? [value] : Object.values(value as object).flatMap(numbers);
    const plain = ({ shape: _, ...sizes }: Vessel) => numbers(sizes);
    expect(plain(out as Vessel)).toHaveLength(plain(vessel).length);
    for (const [i, size] of plain(out as Vessel).entries()) expect(size).toBeCloseTo(plain(vessel)[i] ?? 0, 0);
  }
});

test('a fill table that does not rise is refused with its row', () => {
  const draft = boilDraft({ pans: [{ id: 'p1', name: 'Back pot', vessel: table }] }, metric, sapKinds);
  const flat = { depth: '60', volume: '5.5' };
  const pans = draft.pans.map((pan) => ({ ...pan, vessel: { ...pan.vessel, fill: [...pan.vessel.fill, flat] } }));
  expect(problemInDraft({ ...draft, pans }, metric)).toBe(
    'Back pot, fill table, row 3: both numbers have to be more than in the row above.',
  );
});

test('a finish and a power are typed on the scales that were chosen', () => {
  const other: Settings = { ...metric, strength: 'baume', power: 'btu-per-hour' };
  const draft = boilDraft(setup, other, sapKinds);
  const pans = draft.pans.map((pan, i) => (i === 0 ? { ...pan, finishAt: '35.6', power: '50000' } : pan));
  const [back] = setupOf({ ...draft, pans }, other, sapKinds).pans ?? [];
  // 66.0 °Bx is 35.6 °Bé by the trade's rule, and 50,000 Btu/h are 14.65 kW.
  expect(back?.finish).toMatchObject({ brix: expect.closeTo(66, 0) as number });
  expect(back?.heat?.power_w).toBeCloseTo(14_654, 0);
  expect(setupOf(draft, other, sapKinds).pans?.[0]?.finish).toEqual(setup.pans?.[0]?.finish);
});

test('the protocol takes it, as a setup and as a change of a header', () => {
  const out = setupOf(boilDraft(setup, metric, sapKinds), metric, sapKinds);
  expect(setupSchema.safeParse(out).success).toBe(true);
  expect(
    headerSchema.safeParse({ recording: 'panwarden', version: 1, started: '2027-04-18T07:30:00-07:00', ...out })
      .success,
  ).toBe(true);
});

test('an emptied field leaves the pan', () => {
  const draft = boilDraft(setup, metric, sapKinds);
  const [first, ...rest] = draft.pans;
  if (first === undefined) throw new Error('no pan');
  const emptied = {
    ...first,
    vessel: { ...first.vessel, shape: '' as const },
    heat: '' as const,
    finish: 'usual' as const,
    ceiling: '',
    leastDepth: '',
    probe: '',
  };
  expect(setupOf({ ...draft, pans: [emptied, ...rest] }, metric, sapKinds).pans?.[0]).toEqual({
    id: 'p1',
    name: 'Back pot',
    sap: 'birch',
  });
});

test('a pan that joins has a name of its own in the recording', () => {
  const draft = boilDraft(setup, metric, sapKinds);
  const joined = anotherPan([...draft.pans.slice(1)], metric, sapKinds);
  expect(joined.before.id).not.toBe('p2');
  const another = anotherPan(draft.pans, metric, sapKinds);
  expect(another.before.id).toBe('p3');
  // A power that nobody typed for it would count unseen.
  const fired = { ...draft.pans[0]!, heat: 'propane' as const, power: '16' };
  expect(anotherPan([fired], metric, sapKinds)).toMatchObject({ heat: 'propane', power: '' });
});

test('what is wrong is said with the pan and the field', () => {
  const draft = boilDraft(setup, metric, sapKinds);
  const pans = draft.pans.map((pan, i) => (i === 0 ? { ...pan, vessel: { ...pan.vessel, diameter: 'wide' } } : pan));
  expect(problemInDraft({ ...draft, pans }, metric)).toBe('Back pot, width across: “wide” is no plain number.');
  expect(problemInDraft({ ...draft, pans: [] }, metric)).toContain('at least one pan');
});

test('a power that no burner under a pan has is asked about, in the units chosen; where no burner is chosen it is none', () => {
  const withPower = (watts: number, kind: 'propane' | undefined = 'propane'): Setup => ({
    ...setup,
    pans: [{ id: 'p1', name: 'Back pot', ...(kind === undefined ? {} : { heat: { kind, power_w: watts } }) }],
  });
  const asked = (watts: number, settings: Settings): string | null =>
    doubtInDraft(boilDraft(withPower(watts), settings, sapKinds), settings);
  expect([500, 17_600, 60_000].map((watts) => asked(watts, metric))).toEqual([null, null, null]);
  expect(asked(61_000, metric)).toContain('Back pot: a burner of 61');
  expect(asked(17.6, american)).toContain('Back pot: a burner of 60\u00a0Btu/h');
  expect(doubtInDraft(boilDraft(setup, metric, sapKinds), metric)).toBeNull();
});

test('a power that boils no pan over is refused: 60 was typed for 60,000 Btu/h', () => {
  const [pan] = boilDraft(setup, american, sapKinds).pans;
  const problem = (power: string): string | null => problemInPower({ ...pan!, power }, american);
  expect(problem('60')).toMatch(/60 .*300/u);
  expect(problem('60000')).toBeNull();
});
