// A set-up goes through the form and comes out as it was, in any units.
import { expect, test } from 'vitest';
import { headerSchema, setupSchema } from '../../../src/protocol/header-schema.ts';
import { anotherPan, boilDraft, problemInDraft, setupOf } from '../../../src/screen/boil/boil-draft.ts';
import type { Setup } from '../../../src/screen/client/types.ts';
import { american, metric } from '../moment.ts';

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
  expect(problemInDraft(boilDraft(setup, metric), metric)).toBeNull();
  expect(setupOf(boilDraft(setup, metric), metric)).toEqual(setup);
});

test('in other units it comes out within what can be typed', () => {
  const [back, flat] = setupOf(boilDraft(setup, american), american).pans ?? [];
  expect(back?.vessel).toMatchObject({ shape: 'round' });
  expect(back?.vessel?.shape === 'round' ? back.vessel.diameter_mm : 0).toBeCloseTo(400, 0);
  expect(back?.finish?.ceiling_c).toBeCloseTo(94, 1);
  expect(flat?.finish).toMatchObject({ rise_c: expect.closeTo(4, 2) as number });
});

test('the protocol takes it, as a setup and as a change of a header', () => {
  const out = setupOf(boilDraft(setup, metric), metric);
  expect(setupSchema.safeParse(out).success).toBe(true);
  expect(
    headerSchema.safeParse({ recording: 'panwarden', version: 1, started: '2027-04-18T07:30:00-07:00', ...out })
      .success,
  ).toBe(true);
});

test('an emptied field leaves the pan', () => {
  const draft = boilDraft(setup, metric);
  const [first, ...rest] = draft.pans;
  if (first === undefined) throw new Error('no pan');
  const emptied = {
    ...first,
    shape: '' as const,
    heat: '' as const,
    finish: 'usual' as const,
    ceiling: '',
    leastDepth: '',
    probe: '',
  };
  expect(setupOf({ ...draft, pans: [emptied, ...rest] }, metric).pans?.[0]).toEqual({
    id: 'p1',
    name: 'Back pot',
    sap: 'birch',
  });
});

test('a pan that joins has a name of its own in the recording', () => {
  const draft = boilDraft(setup, metric);
  const joined = anotherPan([...draft.pans.slice(1)], metric);
  expect(joined.before.id).not.toBe('p2');
  expect(anotherPan(draft.pans, metric).before.id).toBe('p3');
});

test('what is wrong is said with the pan and the field', () => {
  const draft = boilDraft(setup, metric);
  const pans = draft.pans.map((pan, i) => (i === 0 ? { ...pan, diameter: 'wide' } : pan));
  expect(problemInDraft({ ...draft, pans }, metric)).toBe('Back pot, width across: “wide” is no plain number.');
  expect(problemInDraft({ ...draft, pans: [] }, metric)).toContain('at least one pan');
});
