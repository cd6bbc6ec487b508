// The pan that calls is the one that notes go to, unless somebody is typing or has chosen another since.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { puttingAside } from '../../../src/screen/alarms/dock-state.ts';
import { live, replay } from '../../../src/screen/client/store.ts';
import type { AlarmView } from '../../../src/screen/client/types.ts';
import { openForm } from '../../../src/screen/marks/open-form.ts';
import { followCalls } from '../../../src/screen/pans/called-pan.ts';
import { forgetPan, selectedPan, selectPan } from '../../../src/screen/pans/selected-pan.ts';
import { openLimits } from '../../../src/screen/settings/open-limits.ts';
import { route } from '../../../src/screen/shell/routes.ts';
import { alarm, moment, reading } from '../moment.ts';

const boil = { ...moment, readings: ['p1', 'p2', 'p3'].map((pan) => ({ ...reading, pan })) };
const low = (pan: string, change: Partial<AlarmView> = {}): AlarmView => ({
  ...alarm,
  alarm: 'low-level',
  priority: 'low',
  pan,
  ...change,
});
const called = (...alarms: AlarmView[]): void => void (live.value = { ...boil, alarms });
const chosen = (): string | null => selectedPan(boil);

let stop: () => void;
beforeEach(() => {
  forgetPan();
  called();
  stop = followCalls();
});
afterEach(() => {
  stop();
  openForm.value = openLimits.value = puttingAside.value = replay.value = null;
  route.value = 'pans';
});

test('the pan of a call becomes the chosen one', () => {
  called(low('p2'));
  expect(chosen()).toBe('p2');
});

test('who chooses another pan afterwards keeps it while the call stands', () => {
  called(low('p2'));
  selectPan('p3');
  live.value = { ...live.value!, t: boil.t + 1000 };
  expect(chosen()).toBe('p3');
  called(low('p2', { since: 90_000 }));
  expect(chosen()).toBe('p2');
});

test('of several calls the one on top is followed; the next once that was seen', () => {
  called(low('p2'), low('p3', { priority: 'high' }));
  expect(chosen()).toBe('p3');
  called(low('p2'), low('p3', { priority: 'high', answered: true }));
  expect(chosen()).toBe('p2');
});

test('a call that was seen, is over or was put aside chooses nothing, nor does one of no pan', () => {
  called(
    low('p2', { answered: true }),
    low('p2', { condition: 'over' }),
    low('p3', { asideUntil: boil.t + 60_000 }),
    low('p3', { pan: null, port: 'A' }),
  );
  expect(chosen()).toBe('p1');
});

test.each([
  ['a note', () => (openForm.value = { kind: 'flame', pour: null })],
  ['the limits of a pan', () => (openLimits.value = 'p1')],
  ['putting a call aside', () => (puttingAside.value = 'near-finish p1')],
])('the form of %s keeps its pan, and so it stays once that is closed', (_, open) => {
  open();
  called(low('p2'));
  expect(chosen()).toBe('p1');
  openForm.value = openLimits.value = puttingAside.value = null;
  called(low('p2'));
  expect(chosen()).toBe('p1');
});

test('who looks at a replay is left there; the pan is chosen on the way back', () => {
  replay.value = { ...boil, view: 'replay' };
  route.value = 'replay';
  called(low('p2'));
  expect(chosen()).toBe('p1');
  route.value = 'pans';
  expect(chosen()).toBe('p2');
});
