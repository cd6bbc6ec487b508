// SenML both ways: our packs keep to RFC 8428, and its own examples are read as it says.
import { expect, test } from 'vitest';
import { systemClock } from '../../../src/host/clock.ts';
import { boilSource } from '../../../src/host/export/boil-source.ts';
import { nameOfPlain, plainName } from '../../../src/host/export/senml-names.ts';
import { senmlPack } from '../../../src/host/export/senml-pack.ts';
import { jsonItems } from '../../../src/host/import/json-items.ts';
import { SenmlResolver } from '../../../src/host/import/senml-records.ts';
import { takeIn } from '../../../src/host/import/take-in.ts';
import { scratchNotebook } from '../../notebook/scratch-folder.ts';
import { judgePack } from './senml-validator.ts';
import { inOnePiece, kept, recordingText, whole } from './tarn-boils.ts';
import fc from 'fast-check';

const machine = systemClock();

async function packOf(text: string): Promise<string> {
  const { notebook, boil } = await kept(text);
  return (await whole(senmlPack(boilSource(notebook, boil.boil), { machine }))).toString();
}

const oddPan = { pans: [{ id: 'päñ <1>', name: '"Back" pot', probe: 'A/1' }] };

test('a boil as a pack keeps every rule, with names, units and times as RFC 8428 wants them', async () => {
  const { resolved, wrong } = judgePack(await packOf(recordingText(oddPan)));
  expect(wrong).toEqual([]);
  expect(resolved.length).toBeGreaterThan(300);
  // 18 April 2027, 14:30:00 UTC and 1190 s, by hand: 1808058600 + 1190.
  expect(Date.parse('2027-04-18T14:30:00Z') / 1000).toBe(1808058600);
  const last = resolved.findLast(({ n }) => String(n).endsWith('/temperature'));
  expect(last).toMatchObject({ u: 'Cel', t: 1808058600 + 1190, v: 98.2 });
});

test('quantities stand in the units of the registry: 20 L at 8 °Bx are 0.02 m3 with a share near 0.08', async () => {
  const pour = { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 20, brix: 8, celsius: 10 } };
  const { resolved, wrong } = judgePack(await packOf(recordingText({}, [pour])));
  expect(wrong).toEqual([]);
  const first = (quantity: string) => resolved.find(({ n }) => String(n).endsWith(`/${quantity}`));
  expect(first('volume-at-20-Cel')).toMatchObject({ u: 'm3', v: 0.02 });
  // The strength is what is believed of what was typed, so it may be a tenth of a °Bx beside it.
  expect(first('sugar-share')).toMatchObject({ u: '/', v: expect.closeTo(0.08, 2) });
});

test('the validator finds what is wrong', () => {
  const { wrong } = judgePack('[{"n":"_a","u":"degC","t":1,"v":1,"vs":"x","c_":1}]');
  expect(wrong.map((sentence) => /\d+\.[\d.]+/.exec(sentence)?.[0])).toEqual(['4.4', '4.2', '4.5.1', '12.1', '4.6']);
});

test('any name goes into the characters of a record and comes back', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (name) => {
      const plain = plainName(name);
      expect(plain).toMatch(/^[A-Za-z0-9\-:./_]*$/);
      expect(nameOfPlain(plain)).toBe(name.isWellFormed() ? name : nameOfPlain(plain));
    }),
  );
});

test('our own pack comes back as the boil that it was: name, place, pans, temperatures', async () => {
  const pack = await packOf(recordingText(oddPan));
  const { notebook, boil, leftOut } = await kept(pack);
  expect(boil).toMatchObject({ name: 'Sunday’s run', kind: 'imported' });
  expect(notebook.header(boil.boil)).toMatchObject({
    started: '2027-04-18T14:30:00.000Z',
    site: { name: 'Tarn Hollow (invented)', altitude_m: 640 },
    pans: [{ id: 'päñ <1>', name: '"Back" pot', probe: 'senml/T1' }],
  });
  expect([...notebook.entries(boil.boil)].at(-1)).toBe('{"t":1190000,"port":"senml","line":"T1=98.2C"}');
  expect(leftOut.join()).toContain('120 in K');
  const again = await takeIn(notebook, inOnePiece(pack), 'it');
  expect([again.boil.boil, notebook.boils()]).toEqual([boil.boil, [boil]]);
});

test('a practice boil stays one', async () => {
  const { boil } = await kept(await packOf(recordingText({ practice: true })));
  expect(boil.kind).toBe('practice');
});

const resolveAll = async (text: string) => {
  const resolver = new SenmlResolver();
  const records = [];
  for await (const items of jsonItems([text])) records.push(...items.map((item) => resolver.take(item)));
  return records;
};

/** RFC 8428, 5.1.3 and 5.1.4, read in a public copy of it: a pack, and the same resolved. */
const MEASURED = `[
 {"bn":"urn:dev:ow:10e2073a01080063","bt":1.320067464e+09,"bu":"%RH","v":20},
 {"u":"lon","v":24.30621},{"u":"lat","v":60.07965},
 {"t":60,"v":20.3},{"u":"lon","t":60,"v":24.30622},{"u":"%EL","t":150,"v":98}]`;

test('the example of 5.1.3 is resolved as in 5.1.4', async () => {
  const name = 'urn:dev:ow:10e2073a01080063';
  expect(await resolveAll(MEASURED)).toEqual([
    { name, unit: '%RH', time: 1320067464, value: 20 },
    { name, unit: 'lon', time: 1320067464, value: 24.30621 },
    { name, unit: 'lat', time: 1320067464, value: 60.07965 },
    { name, unit: '%RH', time: 1320067524, value: 20.3 },
    { name, unit: 'lon', time: 1320067524, value: 24.30622 },
    { name, unit: '%EL', time: 1320067614, value: 98 },
  ]);
});

test('the examples of 5.1.5, 5.1.6 and 5.1.7: data types, two base names, a record that only carries a base', async () => {
  const types = `[{"bn":"urn:dev:ow:10e2073a01080063:","n":"temp","u":"Cel","v":23.1},{"n":"label","vs":"Machine Room"},
    {"n":"open","vb":false},{"n":"nfv-reader","vd":"aGkgCg"}]`;
  expect((await resolveAll(types)).map((one) => one?.value)).toEqual([23.1, 'Machine Room', false, { data: 'aGkgCg' }]);
  const two = `[{"bn":"2001:db8::2/","bt":1.320078429e+09,"n":"temperature","u":"Cel","v":25.2},
    {"n":"humidity","u":"%RH","v":30},{"bn":"2001:db8::1/","n":"temperature","u":"Cel","v":12.3},{"n":"humidity","u":"%RH","v":67}]`;
  expect((await resolveAll(two)).at(-1)).toEqual({
    ...{ name: '2001:db8::1/humidity', unit: '%RH', time: 1320078429, value: 67 },
  });
  const actuator = '[{"bn":"urn:dev:ow:10e2073a01080063:"},{"n":"temp","u":"Cel","v":23.1}]';
  expect(await resolveAll(actuator)).toEqual([
    null,
    { name: 'urn:dev:ow:10e2073a01080063:temp', unit: 'Cel', time: 0, value: 23.1 },
  ]);
});

test('sensors of somebody else become pans; times may come in any order', async () => {
  const { notebook, boil } = await kept(
    `[{"bn":"2001:db8::2/","bt":1808058600,"bu":"Cel","n":"t","t":2,"v":25.25},{"n":"t","v":24},{"n":"o","t":2,"v":-1e-7}]`,
  );
  expect(notebook.header(boil.boil).pans).toEqual([
    { id: '2001:db8::2/t', name: '2001:db8::2/t', probe: 'senml/T1' },
    { id: '2001:db8::2/o', name: '2001:db8::2/o', probe: 'senml/T2' },
  ]);
  expect([...notebook.entries(boil.boil)]).toEqual([
    '{"t":0,"port":"senml","line":"T1=24C"}',
    '{"t":2000,"port":"senml","line":"T1=25.25C T2=0C"}',
  ]);
});

test.each([
  ['[{"n":"urn:dev:ow:10e2073a01080063","u":"Cel","v":23.1}]', /times count from the moment/],
  ['[{"bver":11,"n":"a","bt":1808058600,"u":"Cel","v":1}]', /version 11/],
  ['[{"n":"a","u":"Cel","v":1,"odd_":2}]', /record 1.*"odd_"/],
  ['[{"n":"a","u":"Cel","v":1,"vs":"x"}]', /record 1.*more than one value/],
  ['[{"n":" a","u":"Cel","v":1}]', /record 1.*name/],
  ['[{"n":"a","u":"Cel","v":"hot"}]', /record 1.*"v"/],
  ['[{"n":"a","u":"V","v":1}]', /none of its records is a temperature/],
  ['[{"n":"a","bt":1808058600,"u":"Cel","v":1}', /breaks off/],
  ['[1,2]', /no JSON array of objects/],
  [`[{"a":${'['.repeat(100_000)}`, /nested deeper/],
  [`[{"vs":"${'x'.repeat(100_000)}`, /longer than 65536/],
  [`[${Array.from({ length: 101 }, (_, i) => `{"n":"s${i}","bt":1808058600,"u":"Cel","v":1}`).join()}]`, /100 sensors/],
])('%.60s is refused in words, and nothing is kept', async (text, sentence) => {
  const notebook = scratchNotebook();
  await expect(takeIn(notebook, inOnePiece(text), 'pack')).rejects.toThrow(sentence);
  expect(notebook.boils()).toEqual([]);
});
