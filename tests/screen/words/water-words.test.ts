// Today's water point in one line, with a ± that is a difference in the chosen degrees.
import { expect, test } from 'vitest';
import type { Now } from '../../../src/screen/client/types.ts';
import { noWater, waterWords } from '../../../src/screen/words/water-words.ts';
import { american, metric, moment } from '../moment.ts';

const check = { kind: 'boiling-check' as const, at: moment.t - 40 * 60_000 };
const said = (water: Now['water'], settings = metric): string | undefined =>
  waterWords({ ...moment, water }, settings)?.replaceAll('\u00a0', ' ');

test('it has its spread, its source and its age', () => {
  const water = { celsius: 98.7, plusMinus: 0.11, from: check };
  expect(said(water)).toBe('98.7 °C here, ±0.1 °C, from the boiling check 40 min ago');
  expect(said(water, american)).toBe('209.7 °F here, ±0.2 °F, from the boiling check 40 min ago');
});

test('an altitude is in metres or feet, and a spread that would print as nothing is left out', () => {
  const header = { ...(moment.header as NonNullable<Now['header']>), site: { altitude_m: 640 } };
  const water = { celsius: 97.9, plusMinus: 0.03, from: { kind: 'altitude' as const, at: null } };
  const words = (settings: typeof metric) =>
    waterWords({ ...moment, header, water }, settings)?.replaceAll('\u00a0', ' ');
  expect(words(metric)).toBe('97.9 °C here, from the altitude alone, 640 m');
  expect(words(american)).toBe('208.2 °F here, from the altitude alone, 2100 ft');
});

test('what is not known is not said', () => {
  expect(said({ celsius: null, plusMinus: null, from: null })).toBeUndefined();
});

test('where it is not known, only what works with the probes that there are is offered', () => {
  expect(noWater(moment)).toContain('hold a probe in boiling water');
  const byHand = noWater({ header: { ...moment.header!, probes: [] } });
  expect(byHand).toContain('air pressure');
  expect(byHand).not.toContain('probe');
});
