// A sap is called by its kind, and by no kind that it is not.
import { afterEach, expect, test } from 'vitest';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import { language } from '../../../src/screen/language/language.ts';
import { sapCalled, sapKeyOf, sapKindName } from '../../../src/screen/words/sap-words.ts';

afterEach(() => void (language.value = 'en'));

test('each kind is found by its shares, and another mix by none', () => {
  for (const { key, shares } of sapKinds) if (shares !== null) expect(sapKeyOf(shares, sapKinds)).toBe(key);
  expect(sapKeyOf({ sucrose: 0.6, glucose: 0.2, fructose: 0.2 }, sapKinds)).toBe('other');
  expect(sapKeyOf({ sucrose: 0.9, glucose: 0.05, fructose: 0.05, others: 0.05 }, sapKinds)).toBe('other');
});

test('a pan that says nothing has maple', () => {
  expect(sapCalled(undefined, sapKinds)).toBe('maple');
  expect(sapCalled('birch', [])).toBe('birch');
  expect(sapCalled({ sucrose: 1 }, sapKinds)).toBe('this sap');
});

test('the kinds to choose from are named in the language of the screen', () => {
  const names = (): string[] => sapKinds.map(({ key }) => sapKindName(key));
  expect(names()).toEqual(sapKinds.map(({ name }) => name));
  language.value = 'fr';
  expect(names()).toEqual([
    'Érable',
    'Érable, début de saison',
    'Érable, fin de saison',
    'Bouleau',
    'Noyer',
    'Une autre sève',
  ]);
});
