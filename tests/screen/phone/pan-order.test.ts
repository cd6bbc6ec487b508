// On a phone the pan that calls stands before the others, and they keep their order.
import { expect, test } from 'vitest';
import type { AlarmView } from '../../../src/screen/client/types.ts';
import { callingFirst } from '../../../src/screen/phone/pan-order.ts';
import { alarm as standing, reading } from '../moment.ts';

const readings = ['p1', 'p2', 'p3', 'p4'].map((pan) => ({ ...reading, pan }));
const order = (alarms: readonly AlarmView[]): string[] =>
  callingFirst({ readings, alarms: [...alarms] }).map(({ pan }) => pan);
const call = (pan: string, change: Partial<AlarmView> = {}): AlarmView => ({ ...standing, pan, ...change });

test('what calls comes first, the most urgent before the others', () => {
  expect(order([])).toEqual(['p1', 'p2', 'p3', 'p4']);
  expect(order([call('p2', { priority: 'medium' }), call('p4', { priority: 'high' })])).toEqual([
    'p4',
    'p2',
    'p1',
    'p3',
  ]);
});

test('what was seen still comes first while it stands; what is over or put aside does not', () => {
  expect(order([call('p3', { answered: true })])).toEqual(['p3', 'p1', 'p2', 'p4']);
  expect(order([call('p3', { condition: 'over' }), call('p4', { asideUntil: 9_999_999 })])).toEqual([
    'p1',
    'p2',
    'p3',
    'p4',
  ]);
});
