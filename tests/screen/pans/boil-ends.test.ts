// A form that is open over a practice, and the pan that is chosen in it, are not there in the boil that comes next.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { puttingAside } from '../../../src/screen/alarms/dock-state.ts';
import { live } from '../../../src/screen/client/store.ts';
import { asked } from '../../../src/screen/explain/asked.ts';
import { openForm, openFormFor } from '../../../src/screen/marks/open-form.ts';
import { endWithBoil } from '../../../src/screen/pans/boil-ends.ts';
import { selectedPan } from '../../../src/screen/pans/selected-pan.ts';
import { moment } from '../moment.ts';

const practice = { ...moment, mode: 'practice' as const, boil: 'practice' };
const last = moment.readings.at(-1)!.pan;

let stop: () => void;
beforeEach(() => {
  live.value = practice;
  stop = endWithBoil();
  openFormFor(last, 'draw-off');
  puttingAside.value = 'low-level p1';
});
afterEach(() => stop());

test('what is open stays while its boil goes on, and while the host is gone', () => {
  live.value = { ...practice, t: practice.t + 1000 };
  live.value = null;
  live.value = { ...practice, t: practice.t + 2000 };
  expect(openForm.value).toMatchObject({ kind: 'draw-off' });
  expect(selectedPan(practice)).toBe(last);
});

test('when its boil ends, a form stays with its pan until it is put away; the rest is closed', () => {
  live.value = { ...practice, ended: true };
  expect(openForm.value).toMatchObject({ kind: 'draw-off' });
  expect(selectedPan(practice)).toBe(last);
  expect(puttingAside.value).toBe(null);
  live.value = { ...practice, boil: null, mode: 'idle' };
  expect(openForm.value).toBe(null);
});

test('when another boil begins all is closed at once', () => {
  const now = { ...moment, boil: 'real' };
  live.value = now;
  expect([openForm.value, puttingAside.value, asked.value]).toEqual([null, null, null]);
  expect(selectedPan(now)).toBe(now.readings[0]!.pan);
});
