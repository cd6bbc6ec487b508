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
import type { BoilState } from '../../src/core/boil/state.ts';
import { checkDue } from '../../src/host/probes/check-due.ts';
import type { KeptProbe } from '../../src/protocol/probe-setup-messages.ts';
import { numberValue, readValue } from '../../src/ingest/formats/value.ts';
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
import { formOf, hostWords } from '../../src/screen/language/host-words.ts';
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
const SENTENCES = new Set(['what', 'trouble', 'advice', 'left', 'cure', 'idle', 'doubt', 'when']);

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
    perhapsSentence('A', '/dev/ttyUSB1'),
  ];
  expect(unknown(sentences)).toEqual([]);
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
  expect(unknown([...pressures, NEEDS_ALTITUDE, checkDoubt(check, true), checkDoubt(check, false)])).toEqual([]);
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
    'tombé de 101,2\u00a0°C à la vapeur et y reste\u00a0: la pointe est-elle dans le sirop\u00a0?',
  );
  expect(hostWords('nobody wrote this, 1.5 of it')).toBe('nobody wrote this, 1,5 of it');
});
