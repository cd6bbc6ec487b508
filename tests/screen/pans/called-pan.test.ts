// Which pan is chosen no call changes; who presses a call's name chooses its pan, unless they are typing or look elsewhere.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { puttingAside } from '../../../src/screen/alarms/dock-state.ts';
import { openForm } from '../../../src/screen/marks/open-form.ts';
import { chooseCalled, showCalled } from '../../../src/screen/pans/called-pan.ts';
import { forgetPan, selectedPan, selectPan } from '../../../src/screen/pans/selected-pan.ts';
import { openLimits } from '../../../src/screen/settings/open-limits.ts';
import { route } from '../../../src/screen/shell/routes.ts';
import { moment, reading } from '../moment.ts';

const boil = { ...moment, readings: ['p1', 'p2', 'p3'].map((pan) => ({ ...reading, pan })) };
const chosen = (): string | null => selectedPan(boil);

beforeEach(() => {
  vi.stubGlobal('document', { querySelectorAll: () => [] });
  forgetPan();
});
afterEach(() => {
  openForm.value = openLimits.value = puttingAside.value = null;
  route.value = 'pans';
  vi.unstubAllGlobals();
});

test('to answer a call moves no choice: the next key goes to the pan that it would have gone to', () => {
  showCalled({ pan: 'p2' });
  expect(chosen()).toBe('p1');
  selectPan('p3');
  showCalled({ pan: 'p2' });
  expect(chosen()).toBe('p3');
});

test('who presses the name of a call chooses its pan; one of no pan chooses nothing', () => {
  chooseCalled({ pan: 'p2' });
  expect(chosen()).toBe('p2');
  chooseCalled({ pan: null });
  expect(chosen()).toBe('p2');
});

test.each([
  ['a note', () => (openForm.value = { kind: 'flame', pour: null })],
  ['the limits of a pan', () => (openLimits.value = 'p1')],
  ['putting a call aside', () => (puttingAside.value = 'near-finish p1')],
])('the form of %s keeps its pan, whatever name is pressed', (_, open) => {
  open();
  chooseCalled({ pan: 'p2' });
  expect(chosen()).toBe('p1');
});

test('in a replay the name of a call of the live boil chooses nothing', () => {
  route.value = 'replay';
  chooseCalled({ pan: 'p2' });
  expect(chosen()).toBe('p1');
});
