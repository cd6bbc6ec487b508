// The reasons for putting an alarm aside are those that can be true in this boil.
import { expect, test } from 'vitest';
import { reasonsFor } from '../../../src/screen/alarms/aside-reasons.ts';

test('nobody is offered to be changing a probe where the boil has none', () => {
  expect(reasonsFor('near-finish', true)).toContain('The probe is being changed');
  expect(reasonsFor('near-finish', false)).not.toContain('The probe is being changed');
});
