// The first line names the pan, what to do and when.
import { expect, test } from 'vitest';
import type { Now } from '../../../src/screen/client/types.ts';
import { nextLine } from '../../../src/screen/words/next-line.ts';
import { alarm, moment } from '../moment.ts';

const minute = 60_000;

function line(next: Partial<Now['next']>, change: Partial<Now> = {}): string {
  const { who, what, range } = nextLine({ ...moment, ...change, next: { ...moment.next, ...change.next, ...next } });
  return `${who === null ? '' : `${who}: `}${what}${range === null ? '' : ` (${range})`}`;
}

test('a finish comes with its time of day and range', () => {
  const { t } = moment;
  expect(line({ what: 'finish', pan: 'p1', at: t + 10 * minute, low: t + 8 * minute, high: t + 13 * minute })).toBe(
    'Front pot: done about 08:10 (08:08–08:13)',
  );
  expect(line({ what: 'finish', pan: 'p1', at: t })).toBe('Front pot: done, take it off now');
});

test('a top-up has a time by which, or is due now', () => {
  expect(line({ what: 'top-up', pan: 'p2', at: moment.t + 20 * minute })).toBe('Pan 2: top up by 08:20');
  expect(line({ what: 'top-up', pan: 'p2', at: null })).toBe('Pan 2: top up now');
});

test('an alarm is called by its title, never by its name in the program', () => {
  const both = [alarm, { ...alarm, alarm: 'probe-lost' as const, title: 'Probe silent', since: 0 }];
  expect(line({ what: 'alarm', pan: 'p1', text: 'near-finish' }, { alarms: both })).toBe('Front pot: Nearly syrup');
  expect(line({ what: 'alarm', pan: 'p1', text: 'scorch-risk' }, { alarms: [] })).toBe(
    'Front pot: see the alarm below',
  );
});

test('a boil that is over says so', () => {
  expect(line({ what: 'watch' }, { ended: true })).toBe('This boil is over');
  expect(line({ what: 'watch' })).toBe('Nothing to do just now. Stay by the pans.');
});

test('foam comes with its cure', () => {
  expect(line({ what: 'foam', pan: 'p1' })).toBe(
    'Front pot: foam may rise soon; a drop or two of fat, or turn it down',
  );
});
