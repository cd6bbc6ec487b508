// Every mark that the forms can make is one that the protocol takes.
import { expect, test } from 'vitest';
import { markSchema } from '../../../src/protocol/entry-schemas.ts';
import { markForms } from '../../../src/screen/marks/forms.ts';
import { numberOf, problemIn, stamped } from '../../../src/screen/marks/mark-form.ts';
import type { Field, MarkPlace, Values } from '../../../src/screen/marks/mark-form.ts';
import { american, metric, moment } from '../moment.ts';

const places: MarkPlace[] = [metric, american].map((settings) => ({
  now: moment,
  header: moment.header ?? { recording: 'panwarden', version: 1, started: moment.clock },
  pan: 'p1',
  settings,
}));

/** Something sensible in every field: the middle of a number's range, the first choice, a few words. */
function filled(fields: Field[]): Values {
  return Object.fromEntries(
    fields.map((field) => {
      if ('options' in field) return [field.name, field.options[0]?.value ?? ''];
      if ('words' in field) return [field.name, 'foam'];
      return [field.name, String(Math.round((field.least + field.greatest) / 2))];
    }),
  );
}

test.each(markForms)('$kind: every quick press is a mark of the protocol', (form) => {
  for (const place of places) {
    for (const quick of form.quicks(place)) expect(markSchema.parse(quick.mark)).toMatchObject({ kind: form.kind });
  }
});

test.each(markForms.filter((form) => form.build !== undefined))(
  '$kind: what is typed is a mark of the protocol',
  (form) => {
    for (const place of places) {
      const fields = form.fields(place);
      const values = filled(fields);
      const built = form.build?.(values, place);
      expect(problemIn(values, fields)).toBeNull();
      expect(markSchema.parse(built)).toMatchObject({ kind: form.kind });
      expect(JSON.stringify(built)).not.toContain('null');
    }
  },
);

test('letters are one to a form', () => {
  const letters = markForms.map((form) => form.key);
  expect(new Set(letters).size).toBe(letters.length);
  // S and Q are those of the two alarm buttons.
  expect(letters).not.toContain('S');
  expect(letters).not.toContain('Q');
});

test('an empty number is refused by name, an optional one may stay empty', () => {
  const fields: Field[] = [
    { name: 'volume', label: 'Poured in', unit: 'litres', least: 0.01, greatest: 2000 },
    { name: 'brix', label: 'Strength', unit: '°Bx', least: 0, greatest: 90, optional: true },
  ];
  expect(problemIn({ volume: '' }, fields)).toContain('Poured in');
  expect(problemIn({ volume: '2,5' }, fields)).toBeNull();
  expect(problemIn({ volume: '2', brix: '95' }, fields)).toContain('0 to 90');
  expect(numberOf({ volume: '2,5' }, 'volume')).toBe(2.5);
});

test('a pressure tells its own unit', () => {
  const pressure = markForms.find((form) => form.kind === 'pressure');
  const [place] = places;
  if (place === undefined) throw new Error('no place');
  expect(pressure?.build?.({ at: 'station', value: '951' }, place)).toMatchObject({ hpa: 951 });
  expect(pressure?.build?.({ at: 'station', value: '28.08' }, place)).toMatchObject({
    hpa: expect.closeTo(950.9, 1) as number,
  });
});

test('what was done before now says when it happened', () => {
  const mark = { kind: 'flame', pan: 'p1', level: 1 } as const;
  expect(stamped(mark, 'm1', 600_000, 5)).toEqual({ ...mark, id: 'm1', happened: 300_000 });
  expect(stamped(mark, 'm1', 600_000, 0)).not.toHaveProperty('happened');
});
