// What the host writes in English beside the calls of the recordings is known to the catalogue by its form: calls of stories, refusals, doubts and ports.
import { readFileSync, readdirSync } from 'node:fs';
import ts from 'typescript';
import { afterEach, expect, test } from 'vitest';
import type { AlarmTransition } from '../../src/core/alarms/alarm.ts';
import { alarmWords } from '../../src/core/alarms/words.ts';
import { type BrokenBy, brokenWords } from '../../src/core/boil/broken-probe.ts';
import { PROGRAM_ALARMS } from '../../src/core/boil/program-alarms.ts';
import { checkDoubt } from '../../src/core/boil/readings-noted.ts';
import { NEEDS_ALTITUDE } from '../../src/core/boil/water.ts';
import { pressureDoubt } from '../../src/core/physics/pressure-doubt.ts';
import { sapKinds } from '../../src/core/physics/sap-kinds.ts';
import { BOTTLING_STEPS } from '../../src/core/season/bottling.ts';
import type { Entry, Sensor } from '../../src/core/boil/entries.ts';
import type { LineReading } from '../../src/core/boil/line-reading.ts';
import { misfitSentence } from '../../src/core/boil/misfit.ts';
import type { Misfit } from '../../src/core/boil/probe-value.ts';
import type { BoilState } from '../../src/core/boil/state.ts';
import { checkDue } from '../../src/host/probes/check-due.ts';
import type { KeptProbe } from '../../src/protocol/probe-setup-messages.ts';
import { numberValue, readValue } from '../../src/ingest/formats/value.ts';
import { parseHeader } from '../../src/protocol/parse-entry.ts';
import { Hearing } from '../../src/host/hearing.ts';
import { PowerWatch } from '../../src/host/power-watch.ts';
import { sleepWords } from '../../src/host/sleep-watch.ts';
import {
  lostTrouble,
  movedSentence,
  openingTrouble,
  perhapsSentence,
  whereTrouble,
} from '../../src/ingest/port-trouble.ts';
import { recognise } from '../../src/ingest/recognise/recognise.ts';
import type { PortRights } from '../../src/ingest/port-rights.ts';
import { formOf } from '../../src/language/host-words.ts';
import { hostWords } from '../../src/screen/language/host-words.ts';
import { language } from '../../src/screen/language/language.ts';
import { whyWords } from '../../src/screen/words/why-words.ts';
import { playBoil } from '../core/alarms/play-boil.ts';
import { storiesOf } from '../core/alarms/read-stories.ts';
import { foldAll, lines, readingAt, tarnHollow } from '../core/boil/tarn-hollow.ts';
import { american, metric } from '../screen/moment.ts';

const HOST = new URL('../../src/host/', import.meta.url);
const CAPTURES = new URL('../../fixtures/captures/', import.meta.url);
const FORMATS = new URL('../../src/ingest/formats/', import.meta.url);
/** Values that are sentences or parts of them, which have forms of their own. */
const SENTENCES = new Set(['what', 'trouble', 'advice', 'left', 'cure', 'idle', 'doubt', 'when', 'demand', 'sensor']);

function isKnown(sentence: string): boolean {
  const form = formOf(sentence);
  if (form === null) return false;
  return Object.entries(form.values).every(([name, value]) => !SENTENCES.has(name) || isKnown(value));
}

const unknown = (sentences: readonly string[]): string[] =>
  [...new Set(sentences)].filter((sentence) => sentence !== '' && !isKnown(sentence));

afterEach(() => void (language.value = 'en'));

test('what is said of a pan that burns, or that has burnt', () => {
  const reading = readingAt(foldAll(tarnHollow(), [], 0).state, 'p1', 0);
  const burning = [107, 204].map((celsius) =>
    alarmWords('scorch-risk', { ...reading, temperature_c: celsius, scorch_in_s: 0 }),
  );
  expect(burning[1]?.todo).toContain('Pour nothing in');
  expect(unknown(burning.flatMap(({ title, means, todo }) => [title, means, todo]))).toEqual([]);
});

test('why a pan burns, in the forms that the rules write, is told whole in French and in other units', () => {
  const counted = ', by what went in and boiled away: look how deep it is';
  const whys = [
    'too shallow in about 3 min at this heat: 6 mm deep, it burns from 5 mm down',
    `too shallow in about 3 min at this heat: 6 mm deep, it burns from 5 mm down${counted}`,
    `too shallow in about 2 min at this heat${counted}`,
    `too shallow${counted}`,
    'too shallow: 5 mm deep, it burns from 5 mm down',
    'too strong in about 3 min at this heat: 70.2 °Bx now, it burns from 75 °Bx',
    'too strong: 75.4 °Bx now, it burns from 75 °Bx',
    'too strong: rise 6.9 °C, it burns from a rise of 6.7 °C',
    'rises too fast: 4.2 °C/min, rise 2.5 °C',
    'over its ceiling: 94.7 °C, ceiling 94.4 °C',
  ].flatMap((why) => [why, `${why}, by a thermometer read by hand 4 min ago`]);
  const shown = whys.flatMap((why) => [whyWords(why, metric), whyWords(why, american)]);
  expect(unknown(shown)).toEqual([]);
  language.value = 'fr';
  expect(hostWords(whyWords(whys[2]!, metric)).replaceAll('\u00a0', ' ')).toBe(
    'trop peu profonde dans environ 3 min à ce feu : 6 mm de profondeur, ça brûle dès 5 mm, d’après ce qui y est entré et s’est évaporé : mesurez la profondeur',
  );
  expect(
    ['25 mm deep now, down to its least of 15 mm in about 9 min', '14 mm deep now, its least is 15 mm'].map((why) =>
      hostWords(whyWords(why, metric)).replaceAll('\u00a0', ' '),
    ),
  ).toEqual([
    '25 mm de profondeur maintenant, le minimum de 15 mm dans environ 9 min',
    '14 mm de profondeur maintenant, le minimum est de 15 mm',
  ]);
  const english = /\b(too|about|now|burns?|deep|down|rise|ceiling|went|look|read|ago)\b/u;
  expect(whys.map((why) => hostWords(whyWords(why, american))).filter((said) => english.test(said))).toEqual([]);
});

/** Their numbers come from the machine, and a story makes them up. */
const OF_THE_MACHINE: readonly string[] = PROGRAM_ALARMS;

test('the numbers behind every alarm that a story raises', () => {
  const calls: AlarmTransition[] = [];
  for (const { story } of storiesOf('boil')) playBoil(story, (call) => calls.push(call));
  const whys = calls
    .filter(({ alarm }) => alarm !== 'reminder' && !OF_THE_MACHINE.includes(alarm))
    .flatMap(({ why }) => [whyWords(why, metric), whyWords(why, american)]);
  expect(new Set(calls.map(({ alarm }) => alarm)).size).toBeGreaterThan(10);
  expect(unknown(whys)).toEqual([]);
});

test('which of the tips in one pan is at odds, and that nobody can tell', () => {
  const header = tarnHollow({ pans: [{ id: 'p1', name: 'Back pot', probe: ['A/1', 'A/2'] }] });
  const whys = [97, 103, 104.5].flatMap((celsius) => {
    const { transitions } = foldAll(header, lines(0, 180_000, { T1: () => 101, T2: () => celsius }), 180_000);
    return transitions.filter(({ alarm, event }) => alarm === 'probe-suspect' && event === 'raised');
  });
  expect(whys).toHaveLength(3);
  expect(unknown(whys.flatMap(({ why }) => [whyWords(why, metric), whyWords(why, american)]))).toEqual([]);
});

test('a broken probe, by each of its codes', () => {
  const codes: readonly (readonly [number, string])[] = [
    [-127, '-127'],
    [1372, '1372'],
    [0, '-0'],
    [3000, '3000'],
    [-300, '-300'],
  ];
  const broken: BrokenBy[] = [
    { by: 'board' },
    { by: 'sensor' },
    { by: 'power-on' },
    ...codes.map(([celsius, written]) => ({ by: 'code' as const, celsius, written })),
  ];
  expect(unknown(broken.map(brokenWords))).toEqual([]);
});

test('what a port says that is not there, held, forbidden, pulled or moved', async () => {
  const port = { id: 'A', path: '/dev/ttyUSB0' };
  const errors = ['No such file or directory', 'EBUSY', 'EACCES', 'ENOTTY', 'something else'];
  const rights: (PortRights | null)[] = [
    null,
    { group: 'dialout', groupMay: true, member: 'signed-in' },
    { group: 'dialout', groupMay: true, member: 'listed' },
    { group: 'dialout', groupMay: true, member: 'no' },
    { group: 'root', groupMay: false, member: 'no' },
  ];
  const opened = await Promise.all(
    errors.flatMap((message) => rights.map((right) => openingTrouble(port, new Error(message), async () => right))),
  );
  const places = [
    { kind: 'perhaps', path: '/dev/ttyUSB1' },
    { kind: 'alike', paths: ['/dev/ttyUSB1', '/dev/ttyUSB2'] },
    { kind: 'other-board' },
  ] as Parameters<typeof whereTrouble>[1][];
  const sentences = [
    ...opened.map(({ sentence }) => sentence),
    ...places.map((place) => whereTrouble(port, place)?.sentence ?? ''),
    lostTrouble(port).sentence,
    movedSentence(port, '/dev/ttyUSB1'),
    perhapsSentence(port, '/dev/ttyUSB1'),
  ];
  // Outside of a boil a port's id is its path, and is said once.
  const once = opened.map(({ sentence }) => sentence.replace('Port A (/dev/ttyUSB0)', 'Port COM3'));
  expect(unknown([...sentences, ...once])).toEqual([]);
});

test('what a boil has to say of its marks, its finish and its probes', () => {
  const pour = { kind: 'top-up', pan: 'p1', litres: 2 } as const;
  const header = tarnHollow({
    probes: [
      { id: 'A/T1', port: 'A', channel: 'T1', sensor: { kind: 'rtd', r0_ohm: 100 } },
      { id: 'A/T2', port: 'A', channel: 'T2', sensor: { kind: 'thermocouple', type: 'K', cold_junction: 'CJ' } },
    ],
    pans: [
      { id: 'p1', name: 'Back pot', probe: 'A/T1', finish: { rise_c: 40 } },
      { id: 'p2', name: 'Front pot', probe: 'A/T2', finish: { brix: 99 } },
    ],
  });
  const entries: Entry[] = [
    { t: 1000, mark: pour },
    { t: 2000, mark: pour },
    { t: 3000, mark: { ...pour, pan: 'nobody' } },
    { t: 4000, mark: { kind: 'move-probe', probe: 'nobody', pan: 'p1' } },
    ...['T1=5ohm', 'T1=9', 'T1=98.2C', 'T1=9000', 'CJ=24 T2=900', 'T2=-30'].map((line, index) => ({
      t: 5000 + index * 60_000,
      port: 'A',
      line,
    })),
  ];
  const { notices, marks } = foldAll(header, entries, 400_000).state;
  const said = [...notices.map(({ sentence }) => sentence), ...marks.flatMap(({ doubt }) => doubt ?? [])];
  for (const part of ['twice', 'the pan "nobody"', 'the probe "nobody"', 'a rise of 40', '99 °Bx', 'has no value'])
    expect(said.join('\n')).toContain(part);
  expect(unknown(said)).toEqual([]);
});

test('why a probe has no value, of each kind of sensor', () => {
  const sensors: readonly Sensor[] = [
    { kind: 'temperature', unit: 'C' },
    { kind: 'thermocouple', type: 'K', cold_junction: 'CJ' },
    { kind: 'rtd', r0_ohm: 100 },
    { kind: 'ntc', r25_ohm: 10_000, beta_k: 3950 },
  ];
  const misfits: readonly Misfit[] = ['has-unit', 'off-scale', 'reversed', 'shorted'];
  const junctions: readonly Misfit[] = ['cold-junction-broken', 'cold-junction-silent'];
  const said = sensors.flatMap((sensor) =>
    [...misfits, ...(sensor.kind === 'thermocouple' ? junctions : [])].flatMap((misfit) =>
      [-900, 0.01, 900_000].map((value) =>
        misfitSentence({ id: 'A/T1', port: 'A', channel: 'T1', sensor }, misfit, { value } as LineReading),
      ),
    ),
  );
  expect(unknown(said)).toEqual([]);
});

test('what is wrong with a header, by its field', () => {
  const started = '2027-04-18T07:30:00-07:00';
  const good = { recording: 'panwarden', version: 1, started };
  const probes = [{ id: 'T', port: 'A', channel: 'T1' }];
  const wrong: unknown[] = [
    {},
    { ...good, version: 9 },
    { ...good, recording: 'x' },
    { ...good, started: 'today' },
    { ...good, name: 7 },
    { ...good, site: 'here' },
    { ...good, site: { altitude_m: 'high' } },
    { ...good, site: { altitude_m: 1e9 } },
    { ...good, pans: 'one' },
    { ...good, ports: [{ id: '' }] },
    { ...good, ports: [{ id: 'A', baud: 1 }] },
    { ...good, ports: [{ id: 'A', baud: 1.5 }] },
    { ...good, ports: [{ id: 'A', format: {} }] },
    { ...good, ports: [{ id: 'A' }, { id: 'A' }] },
    { ...good, probes },
    { ...good, ports: [{ id: 'A' }], probes: [{ ...probes[0], sensor: 7 }] },
    ...[{ finish: {} }, { vessel: {} }, { sap: 'oak' }, { probe: 7 }].map((part) => ({
      ...good,
      pans: [{ id: 'p1', ...part }],
    })),
  ];
  const header = wrong.map((value) => parseHeader(JSON.stringify(value)));
  const lines = ['hello', '7', `{"pans":${'['.repeat(99)}${']'.repeat(99)}}`].map((text) => parseHeader(text));
  const said = [...header, ...lines].map((one) => (one.ok ? 'this was taken' : one.why));
  expect(unknown(said)).toEqual([]);
});

test('what may put the machine to sleep, and how long its battery lasts', () => {
  const lids = ['sleeps', 'turns-off', 'stays-awake', 'not-known'] as const;
  const sleeps = lids.flatMap((lid) => [600, null].map((idleSeconds) => sleepWords({ lid, idleSeconds }).sentence));
  const batteries = [0.04, null].flatMap((level) =>
    [300, null].flatMap((secondsLeft) => {
      const watch = new PowerWatch();
      const power = { onBattery: true, percent: level === null ? null : level * 100, secondsLeft };
      const looks = [1, 2, 3, 4].flatMap(() => [watch.look(power, 7500), watch.look(power, null)]);
      const mains = watch.look({ onBattery: false, percent: 50, secondsLeft: null }, null);
      return [...looks, mains].flatMap(({ news, why }) => [news ?? '', why ?? '']);
    }),
  );
  expect(unknown([...sleeps, ...batteries, new Hearing().why(0)])).toEqual([]);
});

test('what is asked about a pressure or a check that can hardly be meant', () => {
  const pressures = [600, 700, 850, 900, 990, 1013, 1030, 1090, 2000].flatMap((hpa) =>
    (['station', 'altimeter', 'sea-level'] as const).flatMap((at) =>
      [null, 0, 300, 1500].flatMap((altitudeM) =>
        [null, 90].map((outdoorC) => pressureDoubt({ hpa, at, altitudeM, outdoorC }) ?? ''),
      ),
    ),
  );
  const check = { kind: 'water-check', probe: 'A/1', celsius: 97.25 } as const;
  const byHand = { kind: 'water-check', celsius: 97.25 } as const;
  const checks = [check, byHand].flatMap((one) => [checkDoubt(one, true), checkDoubt(one, false)]);
  expect(unknown([...pressures, NEEDS_ALTITUDE, ...checks])).toEqual([]);
});

test('what is known of each sap', () => {
  expect(unknown(sapKinds.map(({ sentence }) => sentence))).toEqual([]);
});

/** What stands in the first place of the calls named, with a word for each value. */
function saidIn(file: URL, calls: RegExp): string[] {
  const tree = ts.createSourceFile(file.href, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && calls.test(node.expression.getText())) {
      const [said] = node.arguments;
      if (said !== undefined && ts.isStringLiteralLike(said)) found.push(said.text);
      if (said !== undefined && ts.isTemplateExpression(said))
        found.push(said.head.text + said.templateSpans.map(({ literal }) => `a value${literal.text}`).join(''));
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

test('why the host does not do what a page asks', () => {
  const files = readdirSync(HOST, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.ts'));
  const refusals = files.flatMap((path) => saidIn(new URL(path, HOST), /^refused$/));
  expect(refusals).toContain('No boil is running.');
  expect(unknown(refusals)).toEqual([]);
});

test('why a line, or a piece of one, is not read', () => {
  const files = readdirSync(FORMATS).filter((path) => path.endsWith('.ts'));
  const reasons = files.flatMap((path) => saidIn(new URL(path, FORMATS), /(^nothingFrom|\.refuse|\.reject|Pending)$/));
  const ofValues = ['', '1.x', '9\u0001'].map((text) => readValue(text, 0, text.length));
  expect(reasons).toContain('named twice');
  expect(unknown([...reasons, ...ofValues.map(String), String(numberValue(Infinity)), 'other reasons'])).toEqual([]);
});

test('the steps of bottling, and what to mind', () => {
  expect(unknown(BOTTLING_STEPS.flatMap(({ what, caution }) => [what, caution]))).toEqual([]);
});

test('what a board’s lines are taken for, and why not', () => {
  const captures = readdirSync(CAPTURES).filter((path) => path.endsWith('.txt') && !path.startsWith('blind-specs'));
  const said = captures.flatMap((path) => {
    const lines = readFileSync(new URL(path, CAPTURES), 'latin1').split(/\r\n|[\r\n]/);
    const { reasons, lines: shown, alternatives, channels } = recognise(lines);
    const known = new Set(channels.map(({ channel }) => channel));
    // What stands before the colon is a channel's own name.
    const whys = reasons.map((reason) => {
      const [name = '', ...rest] = reason.split(': ');
      return known.has(name) ? rest.join(': ') : reason;
    });
    const spans = shown.flatMap((line) => line.spans.flatMap((span) => (span.is === 'left-out' ? [span.why] : [])));
    return [...whys, ...spans, ...shown.flatMap(({ why }) => why ?? []), ...alternatives.map(({ why }) => why)];
  });
  expect(said.length).toBeGreaterThan(200);
  expect(unknown([...new Set(said)].filter((one) => one !== ''))).toEqual([]);
});

test('that a check in boiling water is due', () => {
  const own = { path: '/dev/ttyUSB0', channel: 'T1', checks: [], error: null } as unknown as KeptProbe;
  const pressures = (...celsius: [number, number]) =>
    ({
      probes: { 'A/T1': {} },
      water: {
        evidence: [
          { kind: 'pressure', at: 1, celsius: celsius[0] },
          { kind: 'check', at: 2, celsius: 98 },
          { kind: 'pressure', at: 3, celsius: celsius[1] },
        ],
      },
    }) as unknown as BoilState;
  const today = '2027-04-18T09:00:00-07:00';
  const sentences = [
    checkDue([own], null, today),
    checkDue([own], pressures(98, 98.5), today),
    checkDue([own], pressures(98.5, 98), today),
  ];
  expect(sentences).not.toContain(null);
  expect(unknown(sentences.map(String))).toEqual([]);
});

test('French puts the numbers where its own sentence wants them, and leaves what it does not know as it was', () => {
  language.value = 'fr';
  expect(hostWords('The boil "Sunday" is running: end it first.')).toBe(
    'La cuisson «\u00a0Sunday\u00a0» est en cours\u00a0: terminez-la d’abord.',
  );
  expect(hostWords(whyWords('fell from 101.2 to the steam and stays there: is the tip in the syrup?', metric))).toBe(
    'tombée de 101,2\u00a0°C à la vapeur et y reste\u00a0: la pointe est-elle dans le sirop\u00a0?',
  );
  expect(hostWords('nobody wrote this, 1.5 of it')).toBe('nobody wrote this, 1,5 of it');
  expect(hostWords('Nobody wrote this: not a word.')).toBe('Nobody wrote this: not a word.');
  expect(
    hostWords(
      'Port COM3 is not there: plug the board in, or choose the port it has now. It is tried again until it opens.',
    ),
  ).toBe(
    'Port COM3\u00a0: il n’est pas là. Branchez la carte, ou choisissez le port qu’elle a maintenant. On réessaie jusqu’à ce qu’il s’ouvre.',
  );
  expect(
    hostWords('The same was noted twice within two minutes and counts once. If it happened twice, note it once more.'),
  ).toBe(
    'La même chose a été notée deux fois en deux minutes et ne compte qu’une fois. Si c’est bien arrivé deux fois, notez-la encore une fois.',
  );
  expect(hostWords('the file, line 1: the header does not hold together: it is no JSON: "hello"')).toBe(
    'le fichier\u00a0: la première ligne (l’en-tête) n’est pas lisible\u00a0: elle n’est pas en JSON\u00a0: "hello"',
  );
});
