// The name of a boil is short, readable, its own, and harmless wherever it is written.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { freeBoilId } from '../../src/notebook/boil-id.ts';
import { tarnHollow } from './tarn-hollow.ts';

const idOf = (name: string | undefined, taken: string[] = []) =>
  freeBoilId({ ...tarnHollow, name }, (id) => taken.includes(id));

test.each([
  ["Sunday's run", '2027-04-18-sundays-run'],
  ['  Été — 2ᵉ pan!  ', '2027-04-18-ete-2e-pan'],
  ['Берёза', '2027-04-18-береза'],
  ['../../etc/passwd', '2027-04-18-etc-passwd'],
  ['<script>', '2027-04-18-script'],
  ['☃', '2027-04-18-boil'],
  [undefined, '2027-04-18-boil'],
])('%j becomes %s', (name, id) => {
  expect(idOf(name)).toBe(id);
});

test('the date is the one on the clock where the boil began', () => {
  expect(freeBoilId({ ...tarnHollow, started: '2027-04-18T23:30:00-07:00' }, () => false)).toMatch(/^2027-04-18/u);
});

test('a taken one gets a number', () => {
  expect(idOf('A', ['2027-04-18-a', '2027-04-18-a-2'])).toBe('2027-04-18-a-3');
});

test('whatever the name, the id is short and has no sign that a path or a page could act on', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (name) => {
      const id = idOf(name);
      expect(id).toMatch(/^2027-04-18-[\p{L}\p{N}]+(-[\p{L}\p{N}]+)*$/u);
      expect([...id].length).toBeLessThanOrEqual(80);
      expect(id.isWellFormed()).toBe(true);
    }),
  );
});
