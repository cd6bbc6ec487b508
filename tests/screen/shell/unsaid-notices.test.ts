// A sentence of the host stands on the page once: not beside the call or the line that says the same.
import { expect, test } from 'vitest';
import { unsaidNotices } from '../../../src/screen/shell/unsaid-notices.ts';
import { alarm } from '../moment.ts';

const gone =
  'Port A (/dev/invented-0) went away: check the cable and the board’s power. It is tried again until it opens.';
const other = 'The same was noted twice within two minutes and counts once.';
const lost = { ...alarm, alarm: 'port-lost' as const, pan: null, port: 'A', why: gone };

test('what the call of a lost board says is no notice as long as it calls', () => {
  expect(unsaidNotices({ notices: [gone, other], alarms: [] })).toEqual([gone, other]);
  expect(unsaidNotices({ notices: [gone, other], alarms: [lost] })).toEqual([other]);
  expect(unsaidNotices({ notices: [gone], alarms: [{ ...lost, condition: 'over' }] })).toEqual([gone]);
});

test('what the line of the last deed says is not said below it', () => {
  expect(unsaidNotices({ notices: [gone, other], alarms: [] }, other)).toEqual([gone]);
});
