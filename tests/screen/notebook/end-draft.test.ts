// The form at the end of a boil: likely values in the person's own units, and what is kept of what was typed.
import { afterEach, expect, test } from 'vitest';
import type { EndForm } from '../../../src/protocol/season-messages.ts';
import { settingsSchema } from '../../../src/protocol/messages.ts';
import { language } from '../../../src/screen/language/language.ts';
import { endDraft, endTyped } from '../../../src/screen/notebook/end-draft.ts';
import { jarsTyped, jarsWords } from '../../../src/screen/words/jar-words.ts';

const metric = settingsSchema.parse({});
const american = settingsSchema.parse({ volume: 'us-gallon', mass: 'pound', strength: 'baume' });

const form: EndForm = {
  syrup_litres: 3.0712,
  syrup_brix: 66.9,
  jars: { litres: 0.25, count: 12 },
  fuel: { kind: 'propane', ask: 'after_kg', before_kg: 12, likely: 8 },
  sap: { likely_litres: 120 },
};

test('each field holds what is likely, in the units that were chosen', () => {
  expect(endDraft(form, metric)).toEqual({
    syrup: '3.07',
    strength: '66.9',
    jars: '12 x 250 mL',
    fuel: '8',
    sap: '120',
    note: '',
  });
  expect(endDraft(form, american)).toMatchObject({ syrup: '0.81', fuel: '17.6', sap: '32', jars: '12 x 8.5 fl oz' });
});

afterEach(() => void (language.value = 'en'));

test('in French a field is filled in with a comma, and is read with it', () => {
  language.value = 'fr';
  const draft = endDraft(form, metric);
  expect(draft).toMatchObject({ syrup: '3,07', strength: '66,9' });
  expect(endTyped(draft, form, {}, metric)).toMatchObject({ ok: true, page: { syrup: { litres: 3.07 } } });
});

test('what nobody can tell is left empty and stays not known', () => {
  const unknown: EndForm = {
    ...{ syrup_litres: null, syrup_brix: null, jars: null, sap: null },
    fuel: { kind: 'wood', ask: 'cords', before_kg: null, likely: null },
  };
  const draft = endDraft(unknown, metric);
  expect(Object.values(draft).join('')).toBe('');
  expect(endTyped(draft, unknown, { taste: 'sweet' }, metric)).toEqual({ ok: true, page: { taste: 'sweet' } });
});

test('what is confirmed goes on the page in litres, kilograms and °Brix', () => {
  const typed = endTyped({ ...endDraft(form, american), note: ' clear ' }, form, {}, american);
  if (!typed.ok) throw new Error(typed.why);
  const { page } = typed;
  expect(page.syrup!.litres).toBeCloseTo(0.81 * 3.785411784, 6);
  expect(page.syrup!.brix).toBeCloseTo(66.9, 0);
  expect(page.fuel).toEqual([{ kind: 'propane', before_kg: 12, after_kg: 17.6 * 0.45359237 }]);
  expect(page.sap!.litres).toBeCloseTo(32 * 3.785411784, 6);
  expect(page.notes).toBe('clear');
});

test.each([
  ['syrup', '3 jars or so', 'plain number'],
  ['fuel', '14', 'cannot weigh more than before'],
  ['jars', 'a dozen', '12 x 250 mL'],
  ['strength', '-2', 'plain number'],
] as const)('a slip in %s is asked about and nothing is kept', (field, text, why) => {
  const typed = endTyped({ ...endDraft(form, metric), [field]: text }, form, {}, metric);
  expect(typed).toMatchObject({ ok: false, field });
  expect((typed as { why: string }).why).toContain(why);
});

test('jars are read as people write them, and come back as they were', () => {
  expect(jarsTyped('12 x 250 mL, 3 × 0,5 L', metric)).toEqual([
    { litres: 0.25, count: 12 },
    { litres: 0.5, count: 3 },
  ]);
  expect(jarsTyped('', metric)).toEqual([]);
  expect(jarsTyped('6 x 1 pt', american)![0]!.litres).toBeCloseTo(0.473176, 5);
  for (const settings of [metric, american]) {
    const jars = [{ litres: 0.25, count: 12 }];
    expect(jarsTyped(jarsWords(jars, settings), settings)![0]!.litres).toBeCloseTo(0.25, 2);
  }
  expect(jarsTyped('12 x many', metric)).toBeNull();
});
