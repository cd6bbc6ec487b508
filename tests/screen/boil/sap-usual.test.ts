// What is usual for a sap fills in a new pan, gives way to what the pan says itself, and changes with the sap.
import { expect, test } from 'vitest';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import { setupSchema } from '../../../src/protocol/header-schema.ts';
import { settingsSchema } from '../../../src/protocol/messages.ts';
import { boilDraft, problemInDraft, setupOf } from '../../../src/screen/boil/boil-draft.ts';
import { chooseSap } from '../../../src/screen/boil/sap-draft.ts';
import { withSap, withUsual } from '../../../src/screen/boil/sap-usual.ts';
import type { Pan, Settings } from '../../../src/screen/client/types.ts';
import { metric } from '../moment.ts';

const usual: Settings = {
  ...metric,
  per_sap: {
    maple: { finish: { brix: 66 }, near_finish_lead_s: 900 },
    birch: { finish: { rise_c: 6 }, scorch_lead_s: 360 },
  },
};

function filled(pan: Pan): { pan: Pan | undefined; problem: string | null } {
  const draft = boilDraft({ pans: [pan] }, usual, sapKinds);
  const pans = draft.pans.map((each) => withUsual(each, usual));
  const setup = setupOf({ ...draft, pans }, usual, sapKinds);
  expect(setupSchema.safeParse(setup).success).toBe(true);
  return { pan: setup.pans?.[0], problem: problemInDraft({ ...draft, pans }, usual) };
}

test('a pan that says nothing gets what is usual for its sap, early and late maple that of maple', () => {
  expect(filled({ id: 'p1' })).toEqual({
    pan: { id: 'p1', finish: { brix: 66 }, settings: { near_finish_lead_s: 900 } },
    problem: null,
  });
  const late = sapKinds.find(({ key }) => key === 'maple-late')?.shares ?? undefined;
  expect(filled({ id: 'p1', sap: late }).pan?.finish).toEqual({ brix: 66 });
  expect(filled({ id: 'p1', sap: 'birch' }).pan).toMatchObject({
    finish: { rise_c: 6 },
    settings: { scorch_lead_s: 360 },
  });
});

test('what the pan says itself stays, and so does what the form does not know', () => {
  const own: Pan = { id: 'p1', sap: 'maple', finish: { brix: 67.5 }, settings: { near_finish_lead_s: 300 } };
  expect(filled(own).pan).toEqual(own);
  const later = { ...own, settings: { near_finish_lead_s: 300, of_a_later_build: 1 } } as Pan;
  expect(filled(later).pan?.settings).toEqual({ near_finish_lead_s: 300, of_a_later_build: 1 });
});

test('another sap takes back what was filled in for the one before, and leaves what was typed', () => {
  const birch = chooseSap(boilDraft(null, usual, sapKinds).pans[0]!.sap, 'birch', sapKinds);
  const draft = withUsual(boilDraft({ pans: [{ id: 'p1' }] }, usual, sapKinds).pans[0]!, usual);
  expect(withSap(draft, birch, usual)).toMatchObject({
    finish: 'rise',
    finishAt: '6',
    leads: { near_finish_lead_s: null, scorch_lead_s: 360, low_level_lead_s: null },
  });
  const typed = { ...draft, finishAt: '68' };
  expect(withSap(typed, birch, usual)).toMatchObject({ finish: 'strength', finishAt: '68' });
});

test('a settings file of before has none, and one that cannot be meant is refused', () => {
  expect(settingsSchema.parse({}).per_sap).toEqual({});
  expect(settingsSchema.safeParse({ per_sap: { birch: { finish: { brix: 99 } } } }).success).toBe(false);
});
