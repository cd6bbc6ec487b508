// Checks that what a person typed into the form of a boil lies over what the host tells anew, and nothing else does. Tarn Hollow, invented.
import { expect, test } from 'vitest';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import { anotherPan, boilDraft } from '../../../src/screen/boil/boil-draft.ts';
import { giveChosen, withoutUnused } from '../../../src/screen/boil/give-probes.ts';
import { laidOver, withChoice, withTyped } from '../../../src/screen/boil/typed-boil.ts';
import { american, metric } from '../moment.ts';

const setup = (name: string, board: string) => ({
  site: { altitude_m: 640 },
  ports: [{ id: board, path: `/dev/${board}` }],
  probes: [{ id: `${board}/T1`, port: board, channel: 'T1' }],
  pans: [
    { id: 'p1', name, probe: `${board}/T1` },
    { id: 'p2', name: 'Side pot' },
  ],
});
const before = boilDraft(setup('Back pot', 'old'), metric, sapKinds);
const fresh = boilDraft(setup('Kettle', 'new'), metric, sapKinds);
const [back, side] = before.pans as [(typeof before.pans)[0], (typeof before.pans)[0]];
const view = { id: '/dev/new T2', port: '/dev/new', channel: 'T2', celsius: 98 } as Parameters<typeof giveChosen>[1][0];

test('typed fields stay; names, ports and probes that nobody touched are as the host has them now', () => {
  const next = { ...before, name: 'First run', pans: [{ ...back, power: '16' }, side] };
  const laid = laidOver(fresh, withTyped(null, before, next, metric), metric);
  expect(laid).toMatchObject({ name: 'First run', altitude: '640', ports: fresh.ports, probes: fresh.probes });
  expect(laid.pans[0]).toMatchObject({ name: 'Kettle', power: '16', probe: 'new/T1' });
});

test('what was typed in other units is the same amount, and what came later is typed too', () => {
  const once = { ...before, altitude: '700' };
  const typed = withTyped(withTyped(null, before, once, metric), once, { ...once, name: 'Late' }, metric);
  expect(laidOver(fresh, typed, american)).toMatchObject({ altitude: '2297', name: 'Late' });
});

test('pans that were added and removed stay so', () => {
  const pans = [side, anotherPan(before.pans, metric, sapKinds)];
  const typed = withTyped(null, before, { ...before, pans }, metric);
  expect(laidOver(fresh, typed, metric).pans.map((pan) => pan.before.id)).toEqual(['p2', 'p3']);
});

test('a probe that was chosen is given again while it is known, and else the pan is named and stands as it was told', () => {
  const chosen = { p1: { path: '/dev/old', channel: 'T1' }, p2: { path: '/dev/new', channel: 'T2' } };
  const { draft, known, lost } = giveChosen(fresh, [view], chosen);
  expect(lost).toEqual(['Kettle']);
  expect(known).toEqual({ p2: chosen.p2 });
  expect(draft.pans.map(({ probe }) => probe)).toEqual(['new/T1', 'new/T2']);
  expect(giveChosen(fresh, [view], { p1: null }).draft.pans[0]?.probe).toBe('');
  const away = { ...draft, pans: draft.pans.map((pan) => ({ ...pan, probe: '' })) };
  expect(withoutUnused(away, fresh)).toMatchObject({ ports: fresh.ports, probes: fresh.probes });
  expect(withoutUnused(draft, fresh)).toEqual(draft);
});

test('a choice is kept by its channel, and names no field as typed', () => {
  const typed = withChoice(null, before, metric, ['p1', { path: '/dev/new', channel: 'T2' }]);
  expect(typed.probes).toEqual({ p1: { path: '/dev/new', channel: 'T2' } });
  expect(laidOver(fresh, typed, metric)).toEqual(fresh);
});
