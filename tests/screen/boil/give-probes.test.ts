// A probe that was named after a pan is given to it by itself, and a pan that nobody watches is told.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import { boilDraft, setupOf } from '../../../src/screen/boil/boil-draft.ts';
import type { BoilDraft } from '../../../src/screen/boil/boil-draft.ts';
import { giveByName, unwatched } from '../../../src/screen/boil/give-probes.ts';
import type { KeptProbe, ProbeView } from '../../../src/screen/client/types.ts';
import { kept } from '../../../src/screen/probes/kept.ts';
import { metric } from '../moment.ts';

const PATH = '/dev/ttyTH0';
const heard = (channel: string, celsius: number | null = 20): ProbeView => ({
  ...{ id: `${PATH} ${channel}`, port: PATH, channel, pan: null, celsius, correctionC: null },
  ...{ ageSeconds: 1, periodSeconds: 1, state: 'ok' as const },
});
const named = (channel: string, name: string, path = PATH): KeptProbe => ({
  ...{ path, device: null, channel, name, baud: 9600, checks: [], error: null },
});
const formOf = (...names: string[]): BoilDraft =>
  boilDraft({ pans: names.map((name, n) => ({ id: `p${n + 1}`, name })) }, metric, sapKinds);
const given = (draft: BoilDraft, views = [heard('T1'), heard('T2')], chosen = new Set<string>()) =>
  giveByName(draft, views, chosen).pans.map(({ probe }) => probe);

beforeEach(() => {
  kept.value = [named('T1', 'Big pan'), named('T2', 'Soup pot ')];
});
afterEach(() => {
  kept.value = [];
});

test('probes go to the pans of their names, and the boil has them', () => {
  const draft = giveByName(formOf('soup pot', 'Big pan'), [heard('T1'), heard('T2')], new Set());
  expect(setupOf(draft, metric, sapKinds)).toMatchObject({
    ports: [{ id: 'ttyTH0', path: PATH }],
    pans: [
      { name: 'soup pot', probe: 'ttyTH0/T2' },
      { name: 'Big pan', probe: 'ttyTH0/T1' },
    ],
  });
  expect(giveByName(draft, [heard('T1'), heard('T2')], new Set())).toBe(draft);
});

test('nothing is given that a person chose otherwise, that is not heard, that hangs elsewhere or could be two pans', () => {
  expect(given(formOf('Big pan', 'Soup pot'), undefined, new Set(['p1']))).toEqual(['', 'ttyTH0/T2']);
  expect(given(formOf('Big pan', 'Soup pot'), [heard('T1', null), heard('T2')])).toEqual(['', 'ttyTH0/T2']);
  expect(given(formOf('Big pan', 'big pan'))).toEqual(['', '']);
  const moved = giveByName(formOf('Big pan', 'Soup pot'), [heard('T1')], new Set());
  const other = { ...moved, pans: moved.pans.map((pan, n) => ({ ...pan, probe: n === 0 ? '' : 'ttyTH0/T1' })) };
  expect(given(other, [heard('T1')])).toEqual(['', 'ttyTH0/T1']);
  kept.value = [named('T1', 'Big pan', '/dev/ttyTH9')];
  expect(given(formOf('Big pan'))).toEqual(['']);
});

test('pans that no probe watches are told while probes are heard, with those that hang in none', () => {
  const draft = giveByName(formOf('Big pan', 'Kettle'), [heard('T1'), heard('T2')], new Set());
  const found = unwatched(draft, [heard('T1'), heard('T2')]);
  expect(found?.pans.map(({ name }) => name)).toEqual(['Kettle']);
  expect(found?.free.map(({ channel }) => channel)).toEqual(['T2']);
  expect(unwatched(draft, [])).toBeNull();
  expect(unwatched(giveByName(formOf('Big pan'), [heard('T1')], new Set()), [heard('T1')])).toBeNull();
});
