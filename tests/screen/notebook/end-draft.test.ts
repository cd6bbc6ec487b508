// The form at the end of a boil: likely values in the person's own units, and what is kept of what was typed.
import { afterEach, expect, test } from 'vitest';
import type { BoilPage, EndForm } from '../../../src/protocol/season-messages.ts';
import { settingsSchema } from '../../../src/protocol/messages.ts';
import { language } from '../../../src/screen/language/language.ts';
import {
  endDraft,
  endDraftInHand,
  endGuesses,
  endOver,
  endRemarks,
  endTyped,
} from '../../../src/screen/notebook/end-draft.ts';
import type { EndTyped } from '../../../src/screen/notebook/end-draft.ts';
import { jarsTyped, jarsWords } from '../../../src/screen/words/jar-words.ts';

const metric = settingsSchema.parse({});
const american = settingsSchema.parse({ volume: 'us-gallon', mass: 'pound', strength: 'baume' });

const form: EndForm = {
  syrup_litres: 3.0712,
  syrup_brix: 66.9,
  measured: { syrup: true, brix: true },
  broken_off: false,
  drawn_litres: null,
  most_syrup: { litres: 3.5, brix: 66.9 },
  asks_draw_off: false,
  jars: { litres: 0.25, count: 12 },
  fuel: { kind: 'propane', ask: 'after_kg', before_kg: 12, likely: 8 },
  asks_sap: true,
};

function pageOf(typed: EndTyped, page: BoilPage = {}): BoilPage {
  if (!typed.ok) throw new Error(typed.why);
  return typed.into(page);
}

test('each field holds what was measured, in the units that were chosen', () => {
  expect(endDraft(form, {}, metric)).toEqual({
    syrup: '3.07',
    strength: '66.9',
    jars: '',
    fuel: '8',
    sap: '',
    note: '',
  });
  expect(endDraft(form, {}, american)).toMatchObject({
    syrup: '0.81',
    fuel: '17.6',
    sap: '',
    jars: '',
  });
});

test('what nobody measured stands beside it as a guess, and is not kept until somebody types it', () => {
  const guessed = { ...form, measured: { syrup: false, brix: true } };
  const draft = endDraft(guessed, {}, metric);
  expect(draft).toMatchObject({ syrup: '', strength: '66.9', jars: '' });
  expect(endGuesses(guessed, {}, metric)).toMatchObject({ syrup: '3.07', strength: '', jars: '12 × 250 mL', fuel: '' });
  expect(endGuesses(guessed, {}, american)).toMatchObject({ syrup: '0.81' });
  const page = pageOf(endTyped(draft, guessed, {}, metric));
  expect(page.syrup).toEqual({ brix: 66.9 });
  expect(page).not.toHaveProperty('jars');
  expect(pageOf(endTyped({ ...draft, syrup: '3.07' }, guessed, {}, metric)).syrup).toEqual({
    litres: 3.07,
    brix: 66.9,
  });
  // Where no jar was filled before, the ones that this syrup fills are a guess too: never an example of so many others.
  const small = { ...guessed, syrup_litres: 1.083, jars: null };
  expect(endGuesses(small, {}, metric).jars).toBe('4 × 250 mL');
  expect(endGuesses(small, {}, american).jars).toBe('2 × 1 pt');
  expect(endGuesses({ ...small, syrup_litres: null }, {}, metric).jars).toBe('');
  // Who has answered once is not shown any guess.
  expect(Object.values(endGuesses(guessed, { syrup: { litres: 3 } }, metric)).join('')).toBe('');
});

afterEach(() => void (language.value = 'en'));

test('in French a field is filled in with a comma, and is read with it', () => {
  language.value = 'fr';
  const draft = endDraft(form, {}, metric);
  expect(draft).toMatchObject({ syrup: '3,07', strength: '66,9' });
  expect(pageOf(endTyped(draft, form, {}, metric))).toMatchObject({ syrup: { litres: 3.07 } });
});

test('what nobody can tell is left empty and stays not known', () => {
  const unknown: EndForm = {
    ...{
      syrup_litres: null,
      syrup_brix: null,
      measured: { syrup: false, brix: false },
      broken_off: true,
      drawn_litres: null,
      most_syrup: null,
      asks_draw_off: false,
      jars: null,
      asks_sap: false,
    },
    fuel: { kind: 'wood', ask: 'cords', before_kg: null, likely: null },
  };
  const draft = endDraft(unknown, {}, metric);
  expect(Object.values(draft).join('')).toBe('');
  expect(pageOf(endTyped(draft, unknown, {}, metric), { taste: 'sweet' })).toEqual({ taste: 'sweet' });
});

test('of a boil that was broken off it is said what was drawn off, where that is known', () => {
  const brokenOff = { ...form, broken_off: true };
  expect(endRemarks(form, {}, metric)).toEqual([]);
  expect(endRemarks(brokenOff, {}, metric)).toEqual([expect.stringMatching(/syrup is left empty/u)]);
  const [said] = endRemarks({ ...brokenOff, drawn_litres: 3.0712 }, {}, metric);
  expect(said).toContain('3.07\u00a0L of syrup were drawn off');
  expect(said).not.toContain('syrup is left empty');
  expect(endRemarks({ ...brokenOff, asks_draw_off: true }, { syrup: { litres: 3 } }, metric)).toEqual([]);
});

test('where nobody can tell which sap became the syrup, the form says what to note', () => {
  const [said] = endRemarks({ ...form, asks_draw_off: true }, {}, metric);
  expect(said).toMatch(/note the draw-off of the pan that it comes out of/u);
});

test('what is confirmed goes on the page in litres, kilograms and °Brix', () => {
  const page = pageOf(endTyped({ ...endDraft(form, {}, american), sap: '32', note: ' clear ' }, form, {}, american));
  expect(page.syrup!.litres).toBeCloseTo(0.81 * 3.785411784, 6);
  expect(page.syrup!.brix).toBeCloseTo(66.9, 0);
  expect(page.fuel).toEqual([{ kind: 'propane', before_kg: 12, after_kg: 17.6 * 0.45359237 }]);
  expect(page.sap!.litres).toBeCloseTo(32 * 3.785411784, 6);
  expect(page.notes).toBe('clear');
});

const kept: BoilPage = {
  syrup: { litres: 1.4037, brix: 66.53 },
  jars: [{ litres: 0.25, count: 5, lot: 'A' }],
  fuel: [{ kind: 'propane', kg: 24, price: 40 }],
  notes: 'Amber',
};

test('opened again it holds what was kept, not what is likely, and only what is changed is written', () => {
  const draft = endDraft(form, kept, metric);
  const asKept = { syrup: '1.4', strength: '66.5', jars: '5 × 250 mL', fuel: '24', sap: '', note: 'Amber' };
  expect(draft).toEqual(asKept);
  for (const settings of [metric, american])
    expect(pageOf(endTyped(endDraft(form, kept, settings), form, kept, settings), kept)).toEqual(kept);
  const denser = endTyped({ ...draft, strength: '67.2' }, form, kept, metric);
  // Something else of it was written meanwhile.
  const meanwhile = { ...kept, taste: 'Of plums' };
  expect(pageOf(denser, meanwhile)).toEqual({ ...meanwhile, syrup: { litres: 1.4037, brix: 67.2 } });
});

test('what was kept and is emptied is not known any more', () => {
  const emptied = { ...endDraft(form, kept, metric), strength: '', jars: '', fuel: '', note: '' };
  expect(pageOf(endTyped(emptied, form, kept, metric), kept)).toEqual({ syrup: { litres: 1.4037 } });
});

test('litres that are typed take the place of a weight, which they would not change', () => {
  const weighed: BoilPage = { syrup: { kg: 2, brix: 66 } };
  const typed = endTyped({ ...endDraft(form, weighed, metric), syrup: '1.5' }, form, weighed, metric);
  expect(pageOf(typed, weighed)).toEqual({ syrup: { litres: 1.5, brix: 66 } });
});

test.each([
  ['syrup', '3 jars or so', 'plain number'],
  ['fuel', '14', 'cannot weigh more than before'],
  ['jars', 'a dozen', '12 × 250 mL'],
  ['strength', '-2', 'plain number'],
] as const)('a slip in %s is asked about and nothing is kept', (field, text, why) => {
  const typed = endTyped({ ...endDraft(form, {}, metric), [field]: text }, form, {}, metric);
  expect(typed).toMatchObject({ ok: false, field });
  expect((typed as { why: string }).why).toContain(why);
});

test('jars are read as people write them, and come back as they were', () => {
  expect(jarsTyped('12 × 250 mL, 3 × 0,5 L', metric)).toEqual([
    { litres: 0.25, count: 12 },
    { litres: 0.5, count: 3 },
  ]);
  expect(jarsTyped('', metric)).toEqual([]);
  expect(jarsTyped('6 × 1 pt', american)![0]!.litres).toBeCloseTo(0.473176, 5);
  for (const settings of [metric, american]) {
    const jars = [{ litres: 0.25, count: 12 }];
    expect(jarsTyped(jarsWords(jars, settings), settings)![0]!.litres).toBe(0.25);
  }
  expect(jarsTyped('12 x many', metric)).toBeNull();
  expect(jarsTyped('12', metric)).toBeNull();
});

// NIST Handbook 44, appendix C: the fluid ounce, pint, quart and half gallon of the USA hold 29.5735, 473.176, 946.353 and
// 1892.71 mL; those of the imperial gallon (4.54609 L) are its 160th, 8th, 4th and half.
test.each([
  ['us-gallon', '12 × 8 fl oz, 3 × 1 pt, 2 × 1 qt, 1 × 1/2 gal', [0.23659, 0.47318, 0.94635, 1.89271]],
  ['imperial-gallon', '12 × 10 fl oz, 3 × 1 pt, 2 × 1 qt, 1 × 1/2 gal', [0.28413, 0.56826, 1.13652, 2.27305]],
] as const)('with %s chosen, jars of the trade are called by their names', (volume, text, litres) => {
  const chosen = { ...american, volume };
  const jars = jarsTyped(text, chosen)!;
  expect(jars.map((jar) => jar.litres)).toEqual(litres);
  expect(jarsWords(jars, chosen)).toBe(text);
});

test('jars are typed in the words of the language', () => {
  expect(jarsTyped('2 × 1 chopine, 1 × 1 pinte; 3 × 8 oz liq., 1 × 1 tasse', american)).toEqual(
    jarsTyped('2 × 1 pint, 1 × 1 quart, 3 × 8 fl. oz, 1 × 1 cup', american),
  );
});

test('jars that have a name are counted by it, with its plural, in either language', () => {
  const pint = 3.785411784 / 8;
  const jars = (text: string): [number, number][] | undefined =>
    jarsTyped(text, american)?.map(({ count, litres }) => [count, Math.round(1e5 * litres) / 1e5]);
  const each = (litres: number): number => Math.round(1e5 * litres) / 1e5;
  expect(jars('8 pints')).toEqual([[8, each(pint)]]);
  expect(jars('4 x 8 oz, 1 pint')).toEqual([
    [4, each(pint / 2)],
    [1, each(pint)],
  ]);
  expect(jars('2 pintes et 3 demi-gallons')).toEqual([
    [2, each(2 * pint)],
    [3, each(4 * pint)],
  ]);
  expect(jars('4 jars of 8 oz')).toEqual([[4, each(pint / 2)]]);
  for (const text of ['5 cans of 540 mL', '5 tins 540 ml', '5 cannes de 540 mL', '5 boîtes de 540 mL'])
    expect(jars(text)).toEqual([[5, 0.54]]);
  // One jar of 8 oz, or eight of 1 oz: nobody can tell.
  expect(jars('8 oz')).toBeUndefined();
});

test('what was typed and not kept stands over what is filled in, and follows other units', () => {
  const begun = endDraft(form, {}, american);
  const inHand = { fields: { syrup: '4', fuel: '10', jars: '8 of what' }, units: metric };
  expect(endDraftInHand(begun, inHand, 'after_kg', american)).toEqual({
    ...begun,
    syrup: '1.06',
    fuel: '22',
    jars: '8 of what',
  });
  // Cords are cords in all units.
  expect(endDraftInHand(begun, inHand, 'cords', american).fuel).toBe('10');
});

test('more syrup than the sap had sugar for is said where it is typed, by the litres or else by the jars', () => {
  const over = (fields: Partial<ReturnType<typeof endDraft>>, settings = metric) =>
    endOver({ ...endDraft(form, {}, settings), syrup: '', strength: '', ...fields }, form, settings);
  expect(over({})).toBeNull();
  expect(over({ syrup: '3.4' })).toBeNull();
  expect(over({ syrup: '3.6' })).toContain('more sugar than went in: what was noted makes 3.50');
  expect(over({ syrup: '3.6', strength: '60' })).toBeNull();
  expect(over({ syrup: '0.95' }, american)).toContain('0.92');
  expect(over({ jars: '8 × 500 mL' })).not.toBeNull();
  expect(over({ syrup: '3.4', jars: '8 × 500 mL' })).toBeNull();
  expect(endOver(endDraft(form, {}, metric), { ...form, most_syrup: null }, metric)).toBeNull();
  const aimed: EndForm = { ...form, most_syrup: { litres: 0.48, brix: 65.1, aimed: true } };
  const blank = { ...endDraft(aimed, {}, metric), strength: '', jars: '' };
  expect(endOver({ ...blank, syrup: '1.3' }, aimed, metric)).toContain('reckons with 65.1\u00a0°Bx');
  expect(endOver({ ...blank, syrup: '1.3', strength: '60' }, aimed, metric)).not.toContain('reckons with');
});

test('of sap that is asked for in the same form the syrup is questioned once both are typed', () => {
  const each: EndForm = { ...form, most_syrup: { litres: 0.012, brix: 65, aimed: true, each_litre_of_sap: true } };
  const blank = { ...endDraft(each, {}, metric), strength: '', jars: '' };
  expect(endOver({ ...blank, syrup: '1.3' }, each, metric)).toBeNull();
  expect(endOver({ ...blank, syrup: '1.3', sap: '40' }, each, metric)).toContain('makes 0.48');
  expect(endOver({ ...blank, syrup: '0.4', sap: '40' }, each, metric)).toBeNull();
});
