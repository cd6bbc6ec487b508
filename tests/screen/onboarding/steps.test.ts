// A step of setting probes up is ticked for what was done in it, and no two probes get one name.
import { afterEach, expect, test } from 'vitest';
import type { ProbeCheck } from '../../../src/screen/client/types.ts';
import { change, draft, isStepDone, nameTwice, STEPS } from '../../../src/screen/onboarding/setup-draft.ts';

const empty = draft.value;
afterEach(() => change(empty));

const boiling: ProbeCheck = {
  ...{ in: 'boiling', shown_c: 98, sigma_c: 0.1, true_c: 98, true_sigma_c: 0.3, at: '2027-04-18T14:30:00Z' },
};
const ticked = () => STEPS.filter((step) => isStepDone(step, draft.value));

test('a path that was typed is no board until its lines are read, and ice water that was left out is not ticked', () => {
  change({ path: '/dev/ttyTH9', step: 'lines' });
  expect(ticked()).toEqual([]);
  change({ format: { kind: 'pairs' }, names: { T1: '' }, step: 'hand' });
  expect(ticked()).toEqual(['board', 'lines']);
  change({ names: { T1: 'Big pan' }, checks: { T1: { boiling } }, step: 'done' });
  expect(ticked()).toEqual(['board', 'lines', 'hand', 'boil']);
});

test('two probes of one name are told, whatever their case; two without a name are not', () => {
  expect(nameTwice({ T1: 'Big pan', T2: ' big pan' })).toBe('Big pan');
  expect(nameTwice({ T1: 'Big pan', T2: 'Soup pot' })).toBeNull();
  expect(nameTwice({ T1: '', T2: '' })).toBeNull();
});
