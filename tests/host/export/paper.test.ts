// What goes onto paper: the report and the jar labels as PDF, the same for the same boil, whatever stands in its names.
import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { systemClock } from '../../../src/host/clock.ts';
import { labelsPdf } from '../../../src/host/export/labels-pdf.ts';
import { printable } from '../../../src/host/export/printable.ts';
import { reportData } from '../../../src/host/export/report-data.ts';
import { courseText, raisingText } from '../../../src/host/export/report-log.ts';
import { reportPdf } from '../../../src/host/export/report-pdf.ts';
import { languages } from '../../../src/host/languages.ts';
import type { Notebook } from '../../../src/notebook/contract.ts';
import { keepProbes } from '../../../src/host/probes/kept-probes.ts';
import { keptProbe } from '../probes/kept.ts';
import { settingsSchema } from '../../../src/protocol/messages.ts';
import { kept, keptFixture, recordingText, whole } from './tarn-boils.ts';

const machine = systemClock();

const tongue = languages().tongue('en');
const french = languages().tongue('fr');

const report = (notebook: Notebook, boil: string, paper: 'a4' | 'letter' = 'a4', language = tongue) =>
  whole(reportPdf(notebook, boil, { machine, paper, tongue: language }));

/** What each page draws, as pdfkit writes it. */
function streamsOf(pdf: Buffer): string[] {
  const raw = pdf.toString('latin1');
  // A packed stream may end with any byte, a carriage return among them: only the line feed after it is none of it.
  return [...raw.matchAll(/stream\r?\n([\s\S]*?)\nendstream/g)].map(([, body]) => {
    try {
      return inflateSync(Buffer.from(body ?? '', 'latin1')).toString('latin1');
    } catch {
      return '';
    }
  });
}

/** The words that the standard fonts draw, by page; pdfkit writes them in hex, kerned apart. */
function wordsOf(pdf: Buffer): string {
  return streamsOf(pdf)
    .map((stream) =>
      [...stream.matchAll(/\[([^\]]*)\] TJ/g)]
        .map(([, parts]) =>
          [...(parts ?? '').matchAll(/<([0-9a-f]*)>/g)]
            .map(([, hex]) => Buffer.from(hex ?? '', 'hex').toString('latin1'))
            .join(''),
        )
        .join('\n'),
    )
    .join('\n');
}

test.each([
  ['a4', '[0 0 595.28 841.89]'],
  ['letter', '[0 0 612 792]'],
] as const)('the report stands on %s', async (paper, box) => {
  const { notebook, boil } = await kept(recordingText());
  const pdf = await report(notebook, boil.boil, paper);
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pdf.toString('latin1')).toContain(`/MediaBox ${box}`);
});

test('name, place, figures and log can be read, and the same boil gives the same bytes', async () => {
  const { notebook, boil } = await keptFixture('lost-probe');
  const pdf = await report(notebook, boil);
  const words = wordsOf(pdf);
  expect(words).toContain('A bad plug');
  expect(words).toContain('2027-03-14, 10:05 to 13:35 (3\u00a0h\u00a030\u00a0min)');
  expect(words).toContain('Left pot: Probe lost (Now)');
  expect(words).toContain('Left pot: filling, 12.0\u00a0L, 28');
  expect(words).not.toContain('Practice');
  expect((await report(notebook, boil)).equals(pdf)).toBe(true);
});

test('the units are those that were chosen', async () => {
  const { notebook, boil } = await keptFixture('lost-probe');
  notebook.keepSetting('settings', { temperature: 'F', volume: 'us-gallon' });
  const words = wordsOf(await report(notebook, boil));
  expect(words).toContain('Left pot: filling, 3.2\u00a0US gal');
  expect(words).toContain('Check in boiling water, A/1, 207.8\u00a0\u00b0F');
});

test('in French all that is printed is French, with its decimal mark', async () => {
  const { notebook, boil } = await keptFixture('lost-probe');
  notebook.keepPage(boil, { taste: 'beurre', syrup: { brix: 66.5 } });
  const pdf = await report(notebook, boil, 'a4', french);
  const words = wordsOf(pdf);
  expect(pdf.toString('latin1')).toContain('/Lang (fr)');
  for (const said of [
    '2027-03-14, de 10:05 à 13:35 (3\u00a0h\u00a030\u00a0min)',
    'Sève versée',
    'Petits points gris\u00a0: point d\u0092ébullition de l\u0092eau.',
    'Goût\u00a0: beurre',
    'Notes et appels',
    'Left pot\u00a0: remplissage, 12,0\u00a0L, 28 °Bx',
    'Left pot\u00a0: Sonde perdue (Maintenant)\u00a0: ',
    'page 1 sur 2',
  ])
    expect(words).toContain(said);
  expect(words).not.toMatch(/\b(the|and|not|from|pan|probe|mark|alarm|known|worked|over|after|answered)\b|\d\.\d/iu);
});

test.each([
  ['en', 'for 1 imp gal ('],
  ['fr', 'pour 1 gal imp. ('],
])('no figure is cut, in %s and in the longest units', async (language, longest) => {
  const { notebook, boil } = await keptFixture('lost-probe');
  notebook.keepSetting('settings', { volume: 'imperial-gallon', mass: 'pound' });
  notebook.keepPage(boil, {
    syrup: { kg: 1.2, litres: 1.2 },
    fuel: [{ kind: 'propane', before_kg: 114, after_kg: 100 }],
  });
  const words = wordsOf(await report(notebook, boil, 'a4', languages().tongue(language)));
  expect(words).toContain(longest);
  // An ellipsis at the end of a line is where it was cut; in the fonts' letters it is 85.
  expect(words).not.toMatch(/\u0085$/mu);
});

test('what became of a call is told in order of time, whichever came first', () => {
  const minute = 60_000;
  const call = { raisedAt: 0, answeredAt: 28 * minute, clearedAt: 11 * minute, asides: [], noUse: false };
  const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
  expect(plain(courseText(call, tongue))).toBe('Over after 11 min; seen after 28 min');
  expect(plain(courseText(call, french))).toBe('Terminé au bout de 11 min ; vu au bout de 28 min');
  expect(plain(courseText({ ...call, answeredAt: minute }, tongue))).toBe('Seen after 60 s; over after 11 min');
  const asides = [{ at: minute, until: 6 * minute, reason: 'I stand there' }];
  expect(plain(courseText({ ...call, answeredAt: null, clearedAt: null, asides, noUse: true }, tongue))).toBe(
    'Not seen; put aside: I stand there; still there at the end; of no use, you said',
  );
});

test('the strengths of sap and syrup are called by two names', async () => {
  const { notebook, boil } = await keptFixture('lost-probe');
  notebook.keepPage(boil, { syrup: { brix: 66.5 } });
  const words = wordsOf(await report(notebook, boil));
  expect(words.match(/^Sap strength$/gmu)).toHaveLength(1);
  expect(words.match(/^Syrup strength$/gmu)).toHaveLength(1);
});

test('a boil on propane is not told that its wood and its electricity are not known', async () => {
  const { notebook, boil } = await kept(recordingText());
  notebook.keepPage(boil.boil, { fuel: [{ kind: 'propane', before_kg: 114, after_kg: 100 }] });
  const words = wordsOf(await report(notebook, boil.boil));
  expect(words).toMatch(/^Fuel$/mu);
  expect(words).not.toMatch(/^(?:Wood|Electricity)$/mu);
});

test('a practice boil says so on every page', async () => {
  const { notebook, boil } = await kept(
    recordingText({ practice: true }, [{ t: 0, mark: { kind: 'note', text: 'x' } }]),
  );
  const words = wordsOf(await report(notebook, boil.boil));
  expect(words.match(/PRACTICE/g)).toHaveLength(2);
  expect(words).toContain('no sap was boiled');
});

test('names in any letters are printed as far as the fonts go, and what is missing is said', async () => {
  const { notebook, boil } = await kept(recordingText({ name: 'Café Žofie Берёза 🍁\u0000\n<script>' }));
  const words = wordsOf(await report(notebook, boil.boil));
  expect(words).toContain('Caf\u00e9 \u008eofie \u00a4\u00a4\u00a4\u00a4\u00a4\u00a4 \u00a4  <script>');
  expect(words).toContain('have no such letter');
});

test('letters with a stroke of their own lose it rather than vanish', () => {
  expect(printable('ő−5 °C')).toEqual({ text: 'o–5 °C', isWhole: false });
});

test('a boil without a single reading has a report', async () => {
  const { notebook, boil } = await kept('{"recording":"panwarden","version":1,"started":"2027-04-18T07:30:00Z"}\n');
  expect(wordsOf(await report(notebook, boil.boil))).toContain('there is no curve');
});

/** A pot that nobody put a probe in: a dial is read, and typed. */
const handPot = { ports: [], probes: [], pans: [{ id: 'p1', name: 'Back pot', sap: 'birch' }] };
const read = (minute: number, celsius: number) => ({
  t: minute * 60_000,
  mark: { kind: 'reading', pan: 'p1', celsius },
});

function handText(marks: object[]): string {
  const lines = [{ recording: 'panwarden', version: 1, started: '2027-04-18T07:30:00Z', ...handPot }, ...marks];
  return [...lines, { t: 7_200_000, run: 'ended' }].map((line) => `${JSON.stringify(line)}\n`).join('');
}

test('a note that was corrected says so, and only what was taken back for good says that', async () => {
  const depth = (id: string, mm: number, more = {}) => ({ kind: 'depth', pan: 'p1', mm, id, ...more });
  const marks = [
    { t: 60_000, mark: depth('m1', 40) },
    { t: 120_000, mark: { kind: 'withdraw', id: 'm1' } },
    { t: 120_000, mark: depth('m2', 42, { corrects: 'm1', at: 60_000 }) },
    { t: 180_000, mark: depth('m3', 50) },
    { t: 240_000, mark: { kind: 'withdraw', id: 'm3' } },
  ];
  const { notebook, boil } = await kept(handText(marks));
  const words = wordsOf(await report(notebook, boil.boil));
  expect(words).toMatch(/depth, 40.mm \(corrected\)/u);
  expect(words).toMatch(/depth, 50.mm \(taken back\)/u);
});

/** How many dots are drawn: nothing else on paper has a round outline. */
const dotsOf = (pdf: Buffer): number =>
  streamsOf(pdf)
    .join('\n')
    .match(/ c\nh\n/g)?.length ?? 0;

test('each of eight pans is named under the curve', async () => {
  const names = Array.from({ length: 8 }, (_, index) => `Pot of Tarn Hollow ${index + 1}`);
  const pans = names.map((name, index) => ({ id: `p${index + 1}`, name }));
  const marks = pans.map(({ id }) => ({ t: 0, mark: { kind: 'reading', pan: id, celsius: 98, id: `m${id}` } }));
  const { notebook, boil } = await kept(recordingText({ pans }, marks));
  const words = wordsOf(await report(notebook, boil.boil)).split('\n');
  expect(names.filter((name) => !words.includes(name))).toEqual([]);
});

test('what was read by hand is drawn where it was read, and joined', async () => {
  const { notebook, boil } = await kept(handText([read(20, 97.9), read(60, 98.4), read(100, 99.1)]));
  const pdf = await report(notebook, boil.boil);
  // One dot each, and one in the key.
  expect(dotsOf(pdf)).toBe(4);
  const words = wordsOf(pdf);
  expect(words).toContain('Large dots: read by hand.');
  // No probe was read, and nobody was called: neither stands in the key.
  expect(words).not.toMatch(/Lines:|Triangles above/u);
  expect(words).toContain('not noted: Back pot');
});

test('of a pot read by hand the key names no water point that lies under the frame', async () => {
  const text = handText([read(20, 103.5)]).replace('"pans"', '"site":{"name":"Tarn Hollow","altitude_m":0},"pans"');
  const { notebook, boil } = await kept(text);
  const words = wordsOf(await report(notebook, boil.boil));
  expect(words).toContain('Large dots: read by hand.');
  expect(words).toContain('Red dashes: finish.');
  expect(words).not.toContain('Small pale dots');
});

test('what was read by hand is drawn as the screen has it: with what its thermometer was seen to be off', async () => {
  const known = [
    { t: 0, mark: { kind: 'pressure', hpa: 1013.25 } },
    read(20, 104),
    { t: 21 * 60_000, mark: { kind: 'density', pan: 'p1', brix: 60, celsius: 20, reference_celsius: 20 } },
    read(40, 104.2),
  ];
  const { notebook, boil } = await kept(handText(known));
  const { curves } = await reportData(notebook, boil.boil, { machine });
  const [first, second] = curves[0]!.byHand;
  expect(first).toMatchObject({ at: 20 * 60_000 });
  // 60 °Bx of birch boil higher than 104 °C at sea level: the thermometer shows too little.
  expect(second!.celsius).toBeGreaterThan(104.3);
  expect(second!.celsius).toBeLessThan(105.5);
});

test('a probe is called in the log as it was named', async () => {
  const lines = [
    { recording: 'panwarden', version: 1, started: '2027-04-18T07:30:00Z' },
    { t: 60_000, mark: { kind: 'water-check', probe: 'Tarn/T1', celsius: 99.9 } },
    { t: 120_000, mark: { kind: 'water-check', celsius: 99.9 } },
    { t: 180_000, run: 'ended' },
  ];
  Object.assign(lines[0]!, {
    ports: [{ id: 'Tarn', path: '/dev/invented-0' }],
    probes: [{ id: 'Tarn/T1', port: 'Tarn', channel: 'T1' }],
    pans: [{ id: 'p1', name: 'Back pot', sap: 'birch', probe: 'Tarn/T1' }],
  });
  const { notebook, boil } = await kept(lines.map((line) => `${JSON.stringify(line)}\n`).join(''));
  keepProbes(notebook, [keptProbe()], {});
  const words = wordsOf(await report(notebook, boil.boil));
  expect(words).toContain('Long one (T1)');
  expect(words).not.toContain('Tarn/T1');
});

test('a boil of minutes has lines: no point lies between two looks', async () => {
  const { notebook, boil } = await kept(recordingText());
  const { curves } = await reportData(notebook, boil.boil, { machine });
  // Twenty minutes, looked at each 10 s: all known but for the first, of which too little was read.
  const { low } = curves[0]!;
  expect(low.length).toBeLessThanOrEqual(120);
  expect(low.slice(1).every((celsius) => celsius !== null)).toBe(true);
});

test('a boil that only warmed up by hand is drawn as far as it came', async () => {
  const { notebook, boil } = await kept(handText([read(20, 30), read(60, 55)]));
  const pdf = await report(notebook, boil.boil);
  expect(dotsOf(pdf)).toBe(3);
  expect(wordsOf(pdf)).toMatch(/^50$/mu);
});

test('one label for each jar, with what is known and lines for what is not', async () => {
  const { notebook, boil } = await kept(recordingText());
  notebook.keepPage(boil.boil, {
    jars: [
      { litres: 0.25, count: 20, lot: 'L1', filled: '2027-04-19' },
      { litres: 0.5, count: 3 },
    ],
    syrup: { brix: 66.5 },
  });
  const pdf = await whole(labelsPdf(notebook, boil.boil, { paper: 'letter', text: 'From our own trees', tongue }));
  const words = wordsOf(pdf);
  expect(words.match(/Lot L1/g)).toHaveLength(20);
  expect(words.match(/Lot ____/g)).toHaveLength(3);
  expect(words.match(/From our own trees/g)).toHaveLength(23);
  expect(words).toContain('Density 66.5\u00a0\u00b0Bx');
  expect(words).toContain('Date 2027-04-19');
  expect(words.match(/Volume 250 mL/g)).toHaveLength(20);
  expect(words).toContain('Ask your food authority');
  expect(words.match(/^Maple syrup$/gm)).toHaveLength(23);
  expect(words.match(/^Sunday\u0092s run$/gm)).toHaveLength(23);
  // 23 labels are two sheets of 21; nothing is claimed of the grade.
  expect(pdf.toString('latin1').match(/\/Type \/Page\n/g)).toHaveLength(2);
  expect(words).not.toMatch(/pure|organic|grade/i);
});

test('report and labels carry the name that a boil was given since', async () => {
  const { notebook, boil } = await kept(recordingText());
  notebook.keepPage(boil.boil, { name: 'The long Sunday' });
  expect(wordsOf(await report(notebook, boil.boil))).toContain('The long Sunday');
  const labels = wordsOf(await whole(labelsPdf(notebook, boil.boil, { paper: 'a4', text: '', tongue })));
  expect(labels.match(/^The long Sunday$/gm)).toHaveLength(21);
});

const ownMix = { sucrose: 0.5, glucose: 0.3, fructose: 0.2 };

test.each([
  ['birch', ['birch'], 'Birch syrup', 'Sirop de bouleau'],
  ['a pan that says nothing, which holds maple', [undefined], 'Maple syrup', 'Sirop d\u0092\u00e9rable'],
  ['two maples', ['maple', undefined], 'Maple syrup', 'Sirop d\u0092\u00e9rable'],
  ['birch beside maple, of which nobody knows the jar', ['birch', 'maple'], 'Syrup', 'Sirop'],
  ['a mix of one\u2019s own', [ownMix], 'Syrup', 'Sirop'],
])('the label and the report name the syrup: %s', async (_, saps, english, inFrench) => {
  const pans = saps.map((sap, index) => ({ id: `p${index}`, sap }));
  const { notebook, boil } = await kept(recordingText({ pans, probes: [], name: 'Run' }));
  for (const [language, called] of [
    [tongue, english],
    [french, inFrench],
  ] as const) {
    const labels = wordsOf(await whole(labelsPdf(notebook, boil.boil, { paper: 'a4', text: '', tongue: language })));
    expect(labels.match(new RegExp(`^${called}$`, 'gmu'))).toHaveLength(21);
    expect(wordsOf(await report(notebook, boil.boil, 'a4', language))).toContain(`\u00b7 ${called}`);
  }
});

test('in French the labels are French, and what is not known has its line', async () => {
  const { notebook, boil } = await kept(recordingText());
  notebook.keepSetting('settings', { volume: 'us-gallon' });
  notebook.keepPage(boil.boil, { jars: [{ litres: 1.5, count: 1, filled: '2027-04-19' }], syrup: { brix: 66.5 } });
  const words = wordsOf(await whole(labelsPdf(notebook, boil.boil, { paper: 'a4', text: '', tongue: french })));
  expect(words).toContain('Densité 66,5\u00a0°Bx');
  expect(words).toContain('Date 2027-04-19');
  expect(words).toContain('Lot ____');
  expect(words).toContain('Volume 50,7 oz liq. É.-U. (1,5 L)');
  expect(words).toContain('Ne fait pas partie des étiquettes.');
  expect(words).not.toMatch(/\b(density|ask|not|the|fl)\b/iu);
});

test.each<[string, string, number?]>([
  ['us-gallon', 'Volume 16 US fl oz (473 mL)', 0.47318],
  // 0.5 L / 3.785411784 L * 128 and 0.5 L / 4.54609 L * 160, by hand.
  ['us-gallon', 'Volume 16.9 US fl oz (500 mL)'],
  ['imperial-gallon', 'Volume 17.6 imp fl oz (500 mL)'],
])('with %s chosen, a jar holds ounces', async (volume, words, litres = 0.5) => {
  const { notebook, boil } = await kept(recordingText());
  notebook.keepSetting('settings', { volume });
  notebook.keepPage(boil.boil, { jars: [{ litres, count: 1 }] });
  expect(wordsOf(await whole(labelsPdf(notebook, boil.boil, { paper: 'a4', text: '', tongue })))).toContain(words);
});

test('very many jars are twenty sheets', async () => {
  const { notebook, boil } = await kept(recordingText());
  notebook.keepPage(boil.boil, { jars: [{ litres: 0.25, count: 100_000 }] });
  const pdf = await whole(labelsPdf(notebook, boil.boil, { paper: 'a4', text: '', tongue }));
  expect(pdf.toString('latin1').match(/\/Type \/Page\n/g)).toHaveLength(20);
});

test('a reason that is a sentence of its own has one stop, and any other gets one', () => {
  const raised = { alarm: 'port-lost', pan: null, port: 'b1', priority: 'high', raisedAt: 0 } as const;
  const ended = { answeredAt: null, clearedAt: 60_000, asides: [], noUse: false };
  const told = (why: string) => raisingText({ ...raised, ...ended, why }, null, settingsSchema.parse({}), tongue);
  expect(told('It is tried again until it opens.')).toContain(': It is tried again until it opens. Not seen');
  expect(told('nothing comes from the probe')).toContain(': nothing comes from the probe. Not seen');
});
