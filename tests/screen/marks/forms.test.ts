// Every mark that the forms can make is one that the protocol takes.
import { afterEach, expect, test } from 'vitest';
import { readInstrument } from '../../../src/core/physics/instruments.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { markSchema } from '../../../src/protocol/entry-schemas.ts';
import { language } from '../../../src/screen/language/language.ts';
import { formOf, formsFor, markForms } from '../../../src/screen/marks/forms.ts';
import type { Mark, Now, Settings } from '../../../src/screen/client/types.ts';
import { headOf, isFilling, numberOf, problemIn } from '../../../src/screen/marks/mark-form.ts';
import type { Field, MarkForm, MarkPlace, Values } from '../../../src/screen/marks/mark-form.ts';
import { typedAgain } from '../../../src/screen/marks/typed-again.ts';
import { american, metric, moment } from '../moment.ts';

afterEach(() => void (language.value = 'en'));

const plain = (words: string): string => words.replaceAll('\u00a0', ' ');

const onOtherScales: Settings[] = [
  { ...metric, strength: 'baume' },
  { ...american, strength: 'sg' },
];

const places: MarkPlace[] = [metric, american, ...onOtherScales].map((settings) => ({
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
      return [field.name, String(Number(((field.least + field.greatest) / 2).toFixed(field.greatest < 2 ? 2 : 0)))];
    }),
  );
}

test.each(markForms)('$kind: every quick press is a mark of the protocol', (form) => {
  for (const place of places) {
    for (const quick of form.quicks(place)) expect(markSchema.parse(quick.mark)).toMatchObject({ kind: form.kind });
  }
});

/** Every way to choose in a form whose fields hang on what is chosen. */
function choices(form: MarkForm, place: MarkPlace): Values[] {
  const [first] = form.fields(place);
  if (first === undefined || !('options' in first)) return [{}];
  return first.options.map(({ value }) => ({ [first.name]: value }));
}

test.each(markForms.filter((form) => form.build !== undefined))(
  '$kind: what is typed is a mark of the protocol',
  (form) => {
    for (const place of places) {
      for (const chosen of choices(form, place)) {
        const fields = form.fields(place, chosen);
        const values = { ...filled(fields), ...chosen };
        const built = form.build?.(values, place);
        expect(problemIn(values, fields)).toBeNull();
        if (built === null) {
          // The change of the set-up is then all there is to it.
          expect(form.patch?.({ ...values, ...chosen }, place)).toEqual({ site: { altitude_m: expect.any(Number) } });
          continue;
        }
        expect(markSchema.parse(built)).toMatchObject({ kind: form.kind });
        expect(JSON.stringify(built)).not.toContain('null');
      }
    }
  },
);

/** Every field at both of its ends, the others as they would be filled in. */
function atEnds(fields: Field[]): Values[] {
  const usual = filled(fields);
  return fields.flatMap((field) =>
    'least' in field ? [field.least, field.greatest].map((end) => ({ ...usual, [field.name]: String(end) })) : [],
  );
}

test.each(markForms.filter((form) => form.build !== undefined))(
  '$kind: no form takes what the host refuses',
  (form) => {
    for (const place of places) {
      for (const chosen of choices(form, place)) {
        const fields = form.fields(place, chosen);
        for (const values of atEnds(fields)) {
          expect(problemIn({ ...values, ...chosen }, fields)).toBeNull();
          const built = form.build?.({ ...values, ...chosen }, place);
          if (built !== null) expect(markSchema.safeParse(built).error).toBeUndefined();
        }
      }
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
    { name: 'volume', label: 'Poured in', unit: 'L', least: 0.01, greatest: 2000 },
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
  // As Canadian weather gives it; the French screen takes a comma.
  expect(pressure?.build?.({ at: 'sea-level', value: '100,3' }, place)).toMatchObject({ hpa: 1003 });
});

test('who has no pressure tells the height of the place alone, whichever is told of it already', () => {
  const pressure = formOf('pressure')!;
  const [place] = places as [MarkPlace];
  for (const altitude_m of [undefined, 300]) {
    const site = altitude_m === undefined ? {} : { altitude_m };
    const at: MarkPlace = { ...place, header: { ...place.header, site } };
    const values = { at: 'height', height: '450' };
    expect(pressure.fields(at, values).map(({ name }) => name)).toEqual(['at', 'height']);
    expect(pressure.build?.(values, at)).toBeNull();
    expect(pressure.patch?.(values, at)).toEqual({ site: { altitude_m: 450 } });
    expect(pressure.changed?.(values, at)).toContain('450\u00a0m');
  }
});

test.each(['8', '35.5', '121', '299', '1201'])('a pressure of %s is refused by the form, in any unit', (value) => {
  const [place] = places as [MarkPlace];
  const fields = formOf('pressure')!.fields(place);
  expect(problemIn({ at: 'station', value }, fields)).toBe(
    `It says: ${value} is no air pressure. Type 300 to 1200\u00a0hPa, 36 to 120\u00a0kPa or 9 to 35\u00a0inHg.`,
  );
});

test('what is poured is no hotter than syrup boils, as in the plan', () => {
  const [place] = places as [MarkPlace];
  const fields = formOf('top-up')!.fields(place);
  expect(problemIn({ volume: '5', temperature: '150' }, fields)).toContain('150 is outside of −5 to 110');
  expect(formOf('top-up')!.build?.({ volume: '5', temperature: '80' }, place)).toMatchObject({ celsius: 80 });
});

test('the quick temperatures of a reading by hand go in even steps from boiling water to the finish', () => {
  const quick = (settings: Settings): string[] => {
    const limits = [{ pan: 'p1', finish_c: 104.2, scorch_c: 107 }];
    const place = { ...(places[0] as MarkPlace), settings, now: { ...moment, limits } };
    return formOf('reading')!
      .quicks(place)
      .map(({ label }) => label);
  };
  expect(quick(metric)).toEqual([97, 98, 99, 100, 101, 102, 103, 104, 105].map((at) => `${at} °C`));
  expect(quick(american)).toEqual([208, 210, 212, 214, 216, 218, 220].map((at) => `${at} °F`));
});

const labels = (kind: string, place: MarkPlace): string[] =>
  formOf(kind as Parameters<typeof formOf>[0])!
    .quicks(place)
    .map(({ label }) => label.replaceAll('\u00a0', ' '));
const at = (place: MarkPlace, reading: Partial<Now['readings'][number]>, over: Partial<Now> = {}): MarkPlace => ({
  ...place,
  now: { ...moment, ...over, readings: moment.readings.map((each) => ({ ...each, ...reading })) },
});

test('a reading of cold sap offers no numbers of a boil', () => {
  const place = places[0] as MarkPlace;
  expect(labels('reading', at(place, { temperature_c: 6.5 }))).toEqual([]);
  const unread = { temperature_c: null, probe: null, stage: 'unknown', litres: 20 } as const;
  expect(labels('reading', at(place, unread))).toEqual([]);
  const lastHeats = [{ pan: 'p1', celsius: 6.5, at: moment.t - 60_000 }];
  expect(labels('reading', at(place, { temperature_c: null }, { lastHeats }))).toEqual([]);
  expect(labels('reading', at(place, { temperature_c: 96 }))).not.toEqual([]);
  // It may boil since.
  expect(labels('reading', at(place, { temperature_c: null }, { lastHeats, t: moment.t + 30 * 60_000 }))).not.toEqual(
    [],
  );
});

test('depths to press are those about the one that is believed, and no deeper than the pan', () => {
  const [place, inches] = places as [MarkPlace, MarkPlace];
  expect(labels('depth', at(place, { depth_mm: 99 }))).toContain('100 mm');
  expect(labels('depth', at(inches, { depth_mm: 99 }))).toContain('4 in');
  expect(labels('depth', at(inches, { depth_mm: null }))).toEqual([
    '0.75 in',
    '1 in',
    '1.5 in',
    '2 in',
    '3 in',
    '4 in',
  ]);
  const vessel = { shape: 'round' as const, diameter_mm: 200, height_mm: 60 };
  const header = { ...place.header, pans: place.header.pans!.map((pan) => ({ ...pan, vessel })) };
  expect(labels('depth', { ...at(place, { depth_mm: 55 }), header }).at(-1)).toBe('50 mm');
});

test('amounts to press begin with what may go in at once, and end with what is in the pan', () => {
  const [place, gallons] = places as [MarkPlace, MarkPlace];
  const filled = { ...moment.marks[0]!, at: 0, t: 0, withdrawn: false, questioned: false };
  const marks = [{ ...filled, mark: { kind: 'top-up' as const, pan: 'p1', litres: 3, brix: 1 } }];
  const advice = [{ ...moment.advice[0]!, pan: 'p1', roomLitres: 0.7 }];
  expect(labels('top-up', at(gallons, {}, { marks, advice }))[0]).toBe('0.2 gal');
  expect(labels('top-up', at(place, {}, { marks, advice }))[0]).toBe('0.5 L');
  expect(labels('top-up', at(gallons, {}, { marks, advice: [] }))[0]).toBe('0.25 gal');
  expect(labels('draw-off', at(gallons, { litres: 2.3 })).at(-1)).toBe('0.5 gal');
  expect(labels('draw-off', at(place, { litres: 200 })).slice(1)).toEqual(['0.5 L', '1 L', '2 L', '3 L', '5 L']);
  const vessel = { shape: 'round' as const, diameter_mm: 200, height_mm: 100 };
  const header = { ...place.header, pans: place.header.pans!.map((pan) => ({ ...pan, vessel })) };
  expect(labels('top-up', { ...at(place, {}), header }).at(-1)).toBe('3 L');
});

test('the thermometer in the hand is checked in boiling water beside the probes, and alone where there are none', () => {
  const [place] = places as [MarkPlace, ...MarkPlace[]];
  const form = formOf('water-check')!;
  const choice = (at: MarkPlace): unknown => {
    const [first] = form.fields(at);
    return first !== undefined && 'options' in first ? first.options.map(({ label }) => label) : null;
  };
  // Its own probe comes first in a pan that has one, the hand in one that has none.
  expect(choice(place)).toEqual(['T1 on board A', 'T2 on board A', 'Thermometer in the hand']);
  expect(choice({ ...place, pan: 'p3' })).toEqual(['Thermometer in the hand', 'T1 on board A', 'T2 on board A']);
  expect(form.build!({ probe: 'A/2', temperature: '98.5' }, place)).toEqual({
    kind: 'water-check',
    probe: 'A/2',
    celsius: 98.5,
  });
  const noted = { kind: 'water-check', celsius: 98.5 };
  expect(form.build!({ probe: '', temperature: '98.5' }, place)).toEqual(noted);
  const bare = { ...place, header: { ...place.header, probes: [] }, now: { ...place.now, probes: [] } };
  expect(choice(bare)).toBeNull();
  expect(form.quicks(bare)).toEqual([]);
  expect(form.build!({ temperature: '98.5' }, bare)).toEqual(noted);
});

function densityNoted(typed: Values, settings: Settings): unknown {
  const place = { ...(places[0] as MarkPlace), settings };
  const fields = formOf('density')?.fields(place, typed) ?? [];
  expect(problemIn({ ...typed, temperature: typed['temperature'] ?? '' }, fields)).toBeNull();
  return formOf('density')?.build?.(typed, place);
}

test('what a boil has nothing for says so and what to do instead, in each language', () => {
  const [place] = places as [MarkPlace, ...MarkPlace[]];
  const bare = { ...place, header: { ...place.header, probes: [], pans: [{ id: 'p1' }] } };
  const said = (at: MarkPlace): (string | null)[] =>
    (['move-probe', 'transfer'] as const).map((kind) => formOf(kind)!.without!(at));
  expect(said(place)).toEqual([null, null]);
  expect(said(bare)).toEqual([
    expect.stringMatching(/^There is no probe in this boil. One is added under Probes/u),
    expect.stringMatching(/^There is only one pan in this boil/u),
  ]);
  language.value = 'fr';
  expect(said(bare)).toEqual([
    expect.stringMatching(/^Il n’y a pas de sonde dans cette cuisson. On en ajoute une/u),
    expect.stringMatching(/^Il n’y a qu’une casserole dans cette cuisson/u),
  ]);
});

test('a boil that is read by hand alone is offered no probe to move', () => {
  const kinds = (header: MarkPlace['header']): string[] => formsFor(header).map(({ kind }) => kind);
  const { header } = places[0]!;
  expect(kinds(header)).toContain('move-probe');
  expect(kinds({ ...header, probes: [] })).toEqual(kinds(header).filter((kind) => kind !== 'move-probe'));
});

test('a density has its instrument, its scale and what is printed on it', () => {
  expect(densityNoted({ value: '66' }, metric)).toEqual({
    kind: 'density',
    pan: 'p1',
    brix: 66,
    instrument: 'hydrometer',
    reference_celsius: 15.56,
  });
  expect(
    densityNoted(
      { instrument: 'hydrometer', scale: 'sg', value: '1.26', temperature: '211', reference: '20' },
      american,
    ),
  ).toMatchObject({ sg: 1.26, celsius: expect.closeTo(99.4, 1) as number, reference_celsius: 20 });
  expect(
    densityNoted(
      { instrument: 'refractometer', scale: 'sg', value: '65', compensated: 'yes' },
      onOtherScales[1] ?? metric,
    ),
  ).toEqual({
    kind: 'density',
    pan: 'p1',
    brix: 65,
    instrument: 'refractometer',
    reference_celsius: 20,
    compensated: true,
  });
});

test('each quick density is one that the instrument can show, whatever the scale', () => {
  for (const place of places) {
    for (const { mark } of formOf('density')?.quicks(place) ?? []) {
      const read = mark.kind === 'density' ? readInstrument(mark, sugarShares('maple')) : null;
      expect(read?.brix).toBeGreaterThan(58);
      expect(read?.brix).toBeLessThan(70);
    }
  }
});

test('a strength is typed on the scale that was chosen and noted in °Brix', () => {
  const place = places.find(({ settings }) => settings.strength === 'baume') as MarkPlace;
  const built = formOf('draw-off')?.build?.({ volume: '2', strength: '35.6' }, place);
  expect(built).toMatchObject({ brix: expect.closeTo(66, 0) as number });
});

const names = (fields: Field[] | undefined): string[] => (fields ?? []).map(({ name }) => name);

test('a pressure asks only for what its source needs, and for the height where nobody said it', () => {
  const [place] = places;
  if (place === undefined) throw new Error('no place');
  const form = formOf('pressure');
  expect(names(form?.fields(place))).toEqual(['at', 'value']);
  expect(names(form?.fields(place, { at: 'altimeter' }))).toEqual(['at', 'value', 'height']);
  expect(names(form?.fields(place, { at: 'sea-level' }))).toEqual(['at', 'value', 'temperature', 'height']);
  const known = { ...place, header: { ...place.header, site: { altitude_m: 640 } } };
  expect(names(form?.fields(known, { at: 'sea-level' }))).toEqual(['at', 'value', 'temperature']);
  expect(form?.patch?.({ at: 'altimeter', value: '1010', height: '640' }, place)).toEqual({
    site: { altitude_m: 640 },
  });
  expect(form?.patch?.({ at: 'altimeter', value: '1010' }, known)).toBeNull();
});

/** Each kind of mark that is typed, with all that can be said of it. */
const TYPED: Mark[] = [
  { kind: 'top-up', pan: 'p1', litres: 15.14, brix: 0.9, celsius: 4.4 },
  { kind: 'top-up', pan: 'p1', litres: 2 },
  { kind: 'draw-off', pan: 'p1', litres: 2, brix: 67 },
  { kind: 'transfer', from: 'p1', to: 'p2', litres: 3 },
  { kind: 'flame', pan: 'p1', level: 0.4 },
  { kind: 'density', pan: 'p1', brix: 28, instrument: 'hydrometer', celsius: 82.2, reference_celsius: 20 },
  { kind: 'density', pan: 'p1', baume: 35.5, instrument: 'hydrometer', reference_celsius: 15.56 },
  { kind: 'density', pan: 'p1', brix: 2, instrument: 'refractometer', reference_celsius: 20, compensated: true },
  { kind: 'depth', pan: 'p1', mm: 40 },
  { kind: 'reading', pan: 'p1', celsius: 101.3 },
  { kind: 'pressure', hpa: 951.4, at: 'station' },
  { kind: 'water-check', celsius: 98.1 },
  { kind: 'remind', text: 'Skim', seconds: 600 },
  { kind: 'note', pan: 'p1', text: 'Foam' },
];

test.each(TYPED)('a form that corrects $kind begins with what was typed: %j', (mark) => {
  for (const place of places) {
    const form = formOf(mark.kind)!;
    const values = typedAgain(mark, place.settings);
    const fields = form.fields(place, values);
    expect(problemIn(values, fields)).toBeNull();
    const again: Record<string, unknown> = { ...form.build?.(values, place) };
    for (const [name, value] of Object.entries(mark)) {
      if (typeof value === 'number') expect(again[name]).toBeCloseTo(value, 1);
      else expect(again[name]).toEqual(value);
    }
  }
});

test('a density of 0 would tell nothing and is not taken, and a temperature is asked for with one that a pan may show', () => {
  const problem = (kind: 'density' | 'reading', place: MarkPlace, value: string): string | null => {
    const fields = formOf(kind)!.fields(place, filled(formOf(kind)!.fields(place)));
    return problemIn({ ...filled(fields), [kind === 'density' ? 'value' : 'temperature']: value }, fields);
  };
  const [inCelsius, inFahrenheit, inBaume, inGravity] = places as [MarkPlace, MarkPlace, MarkPlace, MarkPlace];
  expect(problem('density', inCelsius, '0')).toBe('It shows: 0 is outside of 0.1 to 85\u00a0°Bx.');
  expect(problem('density', inBaume, '0')).toContain('0.1 to 46\u00a0°Bé.');
  expect(problem('density', inGravity, '1')).toMatch(/1 is outside of 1\.0005 to 1\.46\.$/u);
  expect(problem('density', inGravity, 'thick')).toBe('It shows: type a plain number, such as 1.23.');
  expect(problem('density', inBaume, 'thick')).toContain('such as 2.5.');
  expect(problem('density', inCelsius, '1.46')).toBeNull();
  expect(problem('reading', inCelsius, 'hot')).toBe('Thermometer: type a plain number, such as 98.5.');
  expect(problem('reading', inFahrenheit, 'hot')).toBe('Thermometer: type a plain number, such as 209.3.');
});

test('what is poured into an empty pan fills it, and where its size is known a depth tells the same', () => {
  const place = places[0] as MarkPlace;
  const topUp = formOf('top-up')!;
  const marked = (...marks: Mark[]): MarkPlace => ({
    ...place,
    now: {
      ...moment,
      marks: marks.map((mark) => ({
        ...{ t: 0, at: 0, mark, withdrawn: false, questioned: false, doubt: null, corrections: [] },
        ...{ cameTo: null, takenC: null },
      })),
    },
  });
  const pour = { kind: 'top-up', pan: 'p1', litres: 5 } as const;
  expect(headOf(topUp, marked())).toMatchObject({ word: 'marks.filling', question: 'marks.filling.question' });
  expect(headOf(topUp, marked(pour)).word).toBe('marks.top_up');
  expect(headOf(topUp, marked({ ...pour, pan: 'p2' })).word).toBe('marks.filling');
  expect(isFilling(marked({ kind: 'depth', pan: 'p1', mm: 40 }))).toBe(false);
  expect(isFilling(marked({ kind: 'transfer', from: 'p2', to: 'p1', all: true }))).toBe(false);
  const filled = marked(pour);
  expect(isFilling(marked(pour, { kind: 'draw-off', pan: 'p1', all: true }))).toBe(true);
  // Corrected, a note is called what it was, and asked for again in the same way.
  const first = { ...filled, again: filled.now.marks[0]! };
  expect(headOf(topUp, first).word).toBe('marks.filling');
  // Of a pan without a size a depth tells no litres.
  expect(topUp.otherWay?.(marked())).toBeNull();
  const pans = [{ id: 'p1', vessel: { shape: 'round' as const, diameter_mm: 400 } }];
  const sized = { ...marked(), header: { ...place.header, pans } };
  expect(topUp.otherWay?.(sized)).toMatchObject({ kind: 'depth' });
  expect(topUp.otherWay?.({ ...sized, now: filled.now, again: first.again })).toBeNull();
  expect(topUp.otherWay?.({ ...sized, now: filled.now })).toBeNull();
});

test('a boil of a plan offers the planned filling first, and says which strength and warmth are taken until others are typed', () => {
  const plan = {
    ...{ litres: 227, brix: 2, sap: 'maple' },
    pans: [
      { id: 'p1', vessel: { shape: 'rectangular', length_mm: 838, width_mm: 610 } },
      { id: 'p2', vessel: { shape: 'round', diameter_mm: 406 } },
    ],
  };
  const of = (settings: Settings, ...marks: Mark[]): MarkPlace => ({
    ...(places[0] as MarkPlace),
    settings,
    header: { ...places[0]!.header, plan } as MarkPlace['header'],
    now: {
      ...moment,
      marks: marks.map((mark) => ({
        ...{ t: 0, at: 0, mark, withdrawn: false, questioned: false, doubt: null, corrections: [] },
        ...{ cameTo: null, takenC: null },
      })),
    },
  });
  const topUp = formOf('top-up')!;
  const first = (place: MarkPlace): string => plain(topUp.quicks(place)[0]!.label);
  const labels = (place: MarkPlace): string[] => topUp.fields(place).map(({ label }) => plain(label));
  // 0.838 m by 0.61 m, 100 mm deep, are 51 L; a pot of 406 mm takes 12.9.
  expect(first(of(metric))).toBe('51 L, as planned');
  expect(first({ ...of(metric), pan: 'p2' })).toBe('13 L, as planned');
  expect(first(of(american))).toBe('14 gal, as planned');
  expect(topUp.quicks(of(metric))[0]!.mark).toEqual({ kind: 'top-up', pan: 'p1', litres: 51 });
  expect(labels(of(metric)).slice(1)).toEqual(['Its strength, if not 2.0 °Bx', 'How warm it was, if not 5 °C']);
  const filled = of(metric, { kind: 'top-up', pan: 'p1', litres: 51, brix: 1.8 });
  expect(first(filled)).toBe('0.5 L');
  expect(labels(filled)[1]).toBe('Its strength, if not 1.8 °Bx');
  // What had been boiled before tells nothing of the sap.
  const thick = of(metric, { kind: 'top-up', pan: 'p1', litres: 5, brix: 30 });
  expect(labels(thick)[1]).toBe('Its strength, if not 2.0 °Bx');
  // Where only what is usual would be taken nothing is made to look known.
  expect(labels(places[0] as MarkPlace)[1]).toBe('Its strength, if you know it');
});
