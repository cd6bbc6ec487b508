// What is said beside the figures of a boil and of a plan: what fills no jar, and what a unit of heat is.
import { expect, test } from 'vitest';
import { settings } from '../../../src/screen/client/store.ts';
import {
  balanceWords,
  boiledBeforeWords,
  cellWords,
  figureWords,
  heatUnitWords,
  leftOverWords,
  practiceGave,
  rangeWords,
  ratioOfWords,
  unseenWords,
} from '../../../src/screen/words/figure-words.ts';
import { jarsFigure } from '../../../src/screen/words/plan-words.ts';

const syrup = (value: number, from: 'page' | 'pans' | 'jars') => ({ value, low: null, high: null, from });
const four = [{ litres: 0.25, count: 4 }];
const left = (...[jars, figure]: [Parameters<typeof leftOverWords>[0], Parameters<typeof leftOverWords>[1]]) =>
  leftOverWords(jars, figure, settings.value);

test('a ratio says what it was made of, how much sap it counts, and why it is not known', () => {
  const [ratio, litres] = [syrup(3.7, 'page'), syrup(8.6, 'page')];
  // 34 L over 8.6 L are 4.0 by hand.
  const words = (sap: number): string =>
    ratioOfWords(
      { ratio, syrup_litres: litres, sap_litres: syrup(sap, 'page'), ...sugars },
      { kinds: 1 },
      settings.value,
    );
  const sugars = {
    sap_sugar_kg: syrup(1, 'page'),
    syrup_sugar_kg: syrup(0.6, 'page'),
    left_sugar_kg: null,
    lost_sugar_kg: null,
  };
  expect(words(34)).toBe(
    'counts the 31.8\u00a0L of sap that became syrup, not what was drawn off thin or is still thin in the pans',
  );
  expect(words(3.7 * 8.6)).toBe('31.8\u00a0L of sap over 8.6\u00a0L of syrup');
  const over = { ...sugars, left_sugar_kg: syrup(0.9, 'pans') };
  const unknown = { ratio: null, syrup_litres: litres, sap_litres: syrup(34, 'page') };
  expect(ratioOfWords({ ...unknown, ...over }, { kinds: 1 }, settings.value)).toContain('hold more sugar than went in');
  const lost = { ...sugars, lost_sugar_kg: syrup(0.5, 'page') };
  expect(ratioOfWords({ ...unknown, ...lost }, { kinds: 1 }, settings.value)).toContain('hold more sugar than went in');
  expect(ratioOfWords({ ...unknown, ...sugars, sap_sugar_kg: null }, { kinds: 1 }, settings.value)).toBe('');
  const anyStrength = { ...unknown, ...sugars, syrup_sugar_kg: null };
  expect(ratioOfWords(anyStrength, { kinds: 1 }, settings.value)).toContain('hold more sugar than went in');
  expect(ratioOfWords({ ...unknown, ...sugars }, { kinds: 2 }, settings.value)).toContain('more than one kind of sap');
  const thick = { kinds: 1, boiledBefore: true };
  expect(ratioOfWords({ ...unknown, ...sugars }, thick, settings.value)).toContain('no sap any more');
});

test('syrup that was measured and fills no jar is told, what is reckoned or counted in the jars is not', () => {
  expect(left(four, syrup(1.15, 'page'))).toBe('and 0.15\u00a0L left over');
  expect(left(four, syrup(1.01, 'page'))).toBe('');
  expect(left(four, syrup(0.9, 'page'))).toBe('');
  expect(left(four, syrup(1.15, 'pans'))).toBe('');
  expect(left(four, syrup(1, 'jars'))).toBe('');
  expect([left([], syrup(1.15, 'page')), left(undefined, syrup(1.15, 'page')), left(four, null)]).toEqual(['', '', '']);
});

test.each([
  // Of 0.65 L, 0.5 to 0.8: jars of 0.25 L 2 to 3, of 0.1 L 6, 5 to 8, of 0.5 and 0.54 L 1; of 16 US fl oz (0.473 L) one, of 8 fl oz 2 to 3; of 0.568 L 0 to 1.
  [
    'litre',
    'About 2 × 250 mL',
    'likely 2 to 3 full jars; or 6 × 100 mL (5 to 8 jars); 1 × 500 mL (1 jar); 1 × 540 mL (0 to 1 jar)',
  ],
  ['us-gallon', 'About 1 × 1 pt', 'likely 1 full jar; or 2 × 8 fl oz (2 to 3 jars)'],
  ['imperial-gallon', 'About 1 × 1 pt', 'likely 0 to 1 full jar; or 2 × 10 fl oz (1 to 2 jars)'],
] as const)(
  'a plan says what its syrup fills of the sizes that go with a %s, as roughly as the syrup is known',
  (volume, main, range) => {
    const plan = { syrup_litres: 0.65, syrup_low_litres: 0.5, syrup_high_litres: 0.8 };
    const said = jarsFigure(plan as Parameters<typeof jarsFigure>[0], { ...settings.value, volume });
    expect(said.main.replaceAll('\u00a0', ' ')).toBe(main);
    expect(said.range.replaceAll('\u00a0', ' ')).toBe(`${range}. Filled hot, with a little room`);
  },
);

test('a plan of less syrup than the usual jar holds says the smaller one, and of less than that none', () => {
  const figure = (litres: number) =>
    jarsFigure(
      { syrup_litres: litres, syrup_low_litres: litres, syrup_high_litres: litres } as Parameters<typeof jarsFigure>[0],
      settings.value,
    );
  expect([figure(0.1).main, figure(0.09).main]).toEqual(['About 1\u00a0×\u00a0100\u00a0mL', 'Less than one small jar']);
  expect(figure(0.7).range).toContain('7\u00a0×\u00a0100\u00a0mL');
});

test('heat is told by what it does to water', () => {
  expect(heatUnitWords(settings.value)).toContain('about 3\u00a0L of water from 20\u00a0°C to a boil');
});

test('heat goes by thousands of Btu where fires go by Btu an hour', () => {
  const us = { ...settings.value, power: 'btu-per-hour', volume: 'us-gallon' } as const;
  const heat = { value: 100, low: null, high: null, from: 'pans' } as const;
  // 100 MJ are 94.8 thousand Btu; 3.785 L to the gallon.
  expect(figureWords('fuel_mj', heat, us)).toBe('95\u00a0kBtu');
  expect(figureWords('fuel_mj_per_l', heat, us)).toBe('359\u00a0kBtu/US gal');
  expect(heatUnitWords(us)).toContain('kBtu, 1000 Btu, is a measure');
});

test.each([
  ['fuel_kg', { value: 56.4, low: 40.7, high: 78 }, '56\u00a0kg', '41\u00a0kg to 78\u00a0kg'],
  ['fuel_kg', { value: 0.4, low: 0.29, high: 0.55 }, '0.4\u00a0kg', '0.3\u00a0kg to 0.6\u00a0kg'],
  ['syrup_litres', { value: 1.42, low: 1.22, high: 1.66 }, '1.4\u00a0L', '1.2\u00a0L to 1.7\u00a0L'],
  ['sap_brix', { value: 1.93, low: 0.9, high: 3.1 }, '2\u00a0°Bx', '1\u00a0°Bx to 3\u00a0°Bx'],
  ['sap_brix', { value: 9.93, low: 4, high: 16 }, '10\u00a0°Bx', '4\u00a0°Bx to 16\u00a0°Bx'],
  ['fuel_kg_per_l', { value: 17.24, low: 12, high: 22 }, '17\u00a0kg/L', '12\u00a0kg/L to 22\u00a0kg/L'],
  ['syrup_brix', { value: 66.9, low: null, high: null }, '66.9\u00a0°Bx', ''],
] as const)('%s of %j has no digit that its range does not know', (name, range, words, ends) => {
  const figure = { ...range, from: 'pans' as const };
  expect([figureWords(name, figure, settings.value), rangeWords(name, figure, settings.value)]).toEqual([words, ends]);
});

test('a practice boil says what it gave, and nothing where nothing was finished', () => {
  const brix = { value: 66.9, low: 66.4, high: 67.4, from: 'pans' } as const;
  const gave = (syrup_litres: ReturnType<typeof syrup> | null, syrup_brix: typeof brix | null) =>
    practiceGave({ syrup_litres, syrup_brix }, settings.value);
  expect(gave(syrup(1.42, 'pans'), brix)).toEqual({ amount: '1.42\u00a0L', strength: '66.9\u00a0°Bx' });
  expect([gave(syrup(0, 'pans'), brix), gave(null, null), gave(syrup(1, 'pans'), null)]).toEqual([null, null, null]);
});

test('of sugar it is said that more came out than went in, and what is missing to tell', () => {
  const kg = (value: number) => ({ value, low: value - 0.05, high: value + 0.05, from: 'worked-out' as const });
  const figures = {
    ...{ gap_sugar_kg: null, left_sugar_kg: null, syrup_litres: syrup(1.4, 'page') },
    ...{ sap_sugar_kg: kg(0.69), syrup_sugar_kg: kg(1.24) },
  };
  expect(balanceWords('too-much', figures, settings.value)).toMatch(
    /^0\.55\u00a0kg more sugar came out than went in\./u,
  );
  expect(balanceWords(null, figures, settings.value)).toMatch(/what is left in the pans/);
  const none = { ...figures, syrup_litres: syrup(0, 'page'), left_sugar_kg: kg(0.69) };
  expect(balanceWords(null, none, settings.value)).toMatch(/still in the pans/);
  expect(balanceWords('too-much', { ...figures, syrup_sugar_kg: null }, settings.value)).toMatch(/however thin/);
  expect(balanceWords(null, { ...figures, sap_sugar_kg: null }, settings.value)).toMatch(/the sap that went in/);
});

test('of a practice the list says that what went in was not all sap', () => {
  const went = syrup(29, 'page');
  expect(cellWords('sap_litres', went, true, settings.value)).toMatch(/^29.*\sL, part of it boiled down before$/u);
  expect(cellWords('sap_litres', went, false, settings.value)).not.toContain('before');
  expect(cellWords('syrup_litres', went, true, settings.value)).not.toContain('before');
});

test('why nobody knows how long it boiled is said, and no reason where water itself is not known', () => {
  const known = { value: 5, low: 5, high: 5, from: 'seen' } as const;
  const figures = { boiling_hours: null, water_off_litres: known };
  expect(unseenWords('boiling_hours', figures, true)).toContain('no pan was watched');
  expect(unseenWords('water_off_l_per_h', figures, true)).toContain('no pan was watched');
  expect(unseenWords('boiling_hours', figures, false)).toContain('no pan was seen to boil');
  expect(unseenWords('hours', figures, true)).toBe('');
  expect(unseenWords('water_off_l_per_h', { ...figures, water_off_litres: null }, true)).toBe('');
  expect(unseenWords('water_off_l_per_h', { ...figures, boiling_hours: known }, true)).toBe('');
  const none = { value: 0, low: 0, high: 0, from: 'seen' } as const;
  expect(figureWords('boiling_hours', none, settings.value)).toBe('none');
});

test('of sap in it is said how much had been boiled before, and nothing where none had', () => {
  const pour = { at: 0, pan: 'p1', litres: 8, sigma: 1, brix: 40, from: 'marked' as const };
  const sap = { ...pour, litres: 20, brix: 2 };
  expect(boiledBeforeWords([{ ...pour, boiledBefore: true }, sap], settings.value)).toMatch(
    /^8\.0\u00a0L of it had been boiled before/u,
  );
  expect(boiledBeforeWords([sap], settings.value)).toBe('');
  expect(boiledBeforeWords(null, settings.value)).toBe('');
});

test('jars are counted with their word, for a bare 6 beside litres says nothing', () => {
  const jars = (value: number) => figureWords('jars', { value, low: null, high: null, from: 'page' }, settings.value);
  expect([jars(6), jars(1)]).toEqual(['6 jars', '1 jar']);
});
