// French says one and many, the day before the hour, and a pan by no gender that its name may not have.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { language } from '../../../src/screen/language/language.ts';
import { hostWords } from '../../../src/screen/language/host-words.ts';
import { correctionWords } from '../../../src/screen/words/correction-words.ts';
import { say, sayDrawn, setApart } from '../../../src/screen/language/say.ts';
import { triedWords } from '../../../src/screen/words/setup-words.ts';
import type { MessageKey, Values } from '../../../src/language/tongue.ts';
import { figureWords } from '../../../src/screen/words/figure-words.ts';
import { metric, moment } from '../moment.ts';

beforeAll(() => void (language.value = 'fr'));
afterAll(() => void (language.value = 'en'));

const KEPT = [' · 0 ligne enregistrée', ' · 1 ligne enregistrée', ' · 2 lignes enregistrées'] as const;

const COUNTED: readonly (readonly [MessageKey, (count: number) => Values, string, string, string])[] = [
  ['pans.lines_kept', (lines) => ({ lines }), ...KEPT],
  ['alarms.more', (count) => ({ count: String(count) }), '0 autre', '1 autre', '2 autres'],
  ['tune.count', (count) => ({ count, boils: 9 }), '0 cuisson sur 9', '1 cuisson sur 9', '2 cuissons sur 9'],
  [
    'season.part_known',
    (known) => ({ figure: '4 L', known, boils: 9 }),
    '4 L (de 0 cuisson sur 9)',
    '4 L (de 1 cuisson sur 9)',
    '4 L (de 2 cuissons sur 9)',
  ],
  [
    'compare.choose',
    (chosen) => ({ chosen, most: 6 }),
    'Choisissez les cuissons à comparer, 6 au plus\u00a0: aucune encore',
    'Choisissez les cuissons à comparer, 6 au plus\u00a0: 1 choisie',
    'Choisissez les cuissons à comparer, 6 au plus\u00a0: 2 choisies',
  ],
  [
    'probes.lines',
    (unreadable) => ({ lines: unreadable, unreadable }),
    '0 ligne',
    '1 ligne, dont 1 illisible',
    '2 lignes, dont 2 illisibles',
  ],
  [
    'replay.than.counts',
    (was) => ({ was, would: 3 }),
    '0 appel ce jour-là, 3 avec les autres choix.',
    '1 appel ce jour-là, 3 avec les autres choix.',
    '2 appels ce jour-là, 3 avec les autres choix.',
  ],
];

test.each(COUNTED)('%s: none and one are one, two are many', (key, of, none, one, two) => {
  expect([0, 1, 2].map((count) => say(key, of(count)))).toEqual([none, one, two]);
});

test('a count in a sentence of the host agrees, though English writes it in one way', () => {
  expect(hostWords('name must be at least 1 character long, but is ""')).toBe(
    'name doit compter au moins 1 caractère, or c’est ""',
  );
  expect(hostWords('1 of 40 lines give nothing in this way.')).toBe('1 ligne sur 40 ne donne rien ainsi.');
});

test('of a field that is out of range every part is told in one language', () => {
  const most = 'doit être d’au plus 60, or c’est 900';
  expect(hostWords('It cannot be done: seconds must be at most 60, but is 900.')).toBe(
    `Cela ne se peut pas\u00a0: seconds ${most}.`,
  );
  expect(hostWords('the plan must be at most 60, but is 900')).toBe(`le plan ${most}`);
  expect(hostWords('mark of kind reading: celsius must be at most 60, but is 900')).toContain(most);
});

test('a sentence around another one is found before the one within, which would swallow it', () => {
  const doubt = 'Front pot: the instrument said 58.0 °Bx and the thermometer 63.9 °Bx.';
  expect(hostWords(`${doubt} It was left out; the same again counts.`)).toBe(
    `${hostWords(doubt)} C’est laissé de côté\u00a0; le même chiffre une deuxième fois comptera.`,
  );
});

test('the day stands before the small word and its hour', () => {
  expect(say('marks.at', { time: 'hier 23:00' })).toBe('hier à 23:00');
  expect(say('marks.at', { time: '16:40' })).toBe('à 16:40');
  expect(say('pans.done_about', { time: 'demain 02:10' })).toBe('Prêt demain vers 02:10');
  expect(say('explain.top_up_by', { time: 'demain 02:10' })).toBe('Ajoutez de la sève d’ici demain 02:10');
  expect(say('alarm.quiet_until', { time: 'demain 02:10' })).toBe('Silence jusqu’à demain 02:10');
});

test('a pan may be a pot: its sentences give it no gender', () => {
  const pot = { pans: 'Gros chaudron', when: '07:30' };
  expect(say('plan.stage.light', pot)).toBe('07:30\u00a0: allumez le feu (Gros chaudron).');
  expect(say('plan.pan.hand', { time: '2 h', depth: '100 mm', wall: 'untold' })).toBe(
    'Avec 100 mm de profondeur (tapez la hauteur du bord, et le calcul partira de là), redemande de la sève froide après environ 2 h\u00a0; avec moins, plus tôt.',
  );
  expect(say('plan.lit')).toBe('Allumage');
  expect(`${say('shell.practice')} ${say('shell.practice_is_over')}`).toMatch(/^Exercice terminé/u);
});

test('parts are set apart with a space before the sign, and why a line was left out is said in French', () => {
  expect(setApart([])).toBe('');
  expect(setApart(['un', 'deux', 'trois'])).toBe('un\u00a0; deux\u00a0; trois');
  const lines = [{ readings: [], rejected: ['not a number: T1', 'no value: T2'] }];
  expect(triedWords({ lines } as never, false)).toBe(
    '✕ Rien n’est lu dans ces lignes. Laissé de côté\u00a0: ce n’est pas un nombre\u00a0; pas de valeur.',
  );
});

test('an hour is the end of a boil, “fin de cuisson”; the strength at which it ends is its “point de cuisson”', () => {
  const ofTimes: MessageKey[] = [
    'compare.by.before_finish',
    'compare.by.minutes_before_finish',
    'correction.finish',
    'plan.finish',
    'plan.legend',
    'replay.no_finish',
    'replay.said_nothing',
    'tune.line.near_finish',
    'lead.near_finish',
  ];
  const said = ofTimes.map((key) => say(key, { time: 10, times: '1,6' }));
  expect(said.filter((words) => !words.includes('fin de cuisson') || words.includes('point de cuisson'))).toEqual([]);
});

test('an end of a boil that is not known is a feminine one', () => {
  const known = { brix: 55, litres: 3, finishAt: 3_600_000 };
  const changed = { t: 0, pan: 'p1', before: { ...known, finishAt: null }, after: known };
  expect(correctionWords(changed, moment, metric)).toBe('fin de cuisson inconnue → 08:30');
});

test('what is said beside a board or a port agrees with either', () => {
  const beside: MessageKey[] = ['probes.port.open', 'probes.port.lost', 'probes.port.not_seen', 'probes.port.waiting'];
  expect(beside.map((key) => say(key)).filter((words) => /(?:u|é|ert)e?s?(?:,|$)/u.test(words))).toEqual([]);
});

test('a sentence that ends in a unit with a point has no second one; three points stay', () => {
  const left = '5\u00a0gal imp.';
  expect(say('plan.under.none_poured', { left: '5\u00a0gal' })).toMatch(/venir 5\u00a0gal du plan\.$/);
  expect(say('plan.under.poured', { poured: left, left })).toMatch(
    /versée\u00a0: 5\u00a0gal imp\.\u00a0; .* 5\u00a0gal imp\.$/,
  );
  const drawn = [sayDrawn('plan.beside', { changes: left, b: () => ({}) as never })].flat();
  expect(drawn.at(-1)).toMatch(/ 5\u00a0gal imp\.$/);
  expect(say('marks.remind.question')).toMatch(/…$/);
});

test('what nobody knows agrees with what it is of', () => {
  const words = (['water_off_l_per_h', 'boiling_hours', 'jars'] as const).map((name) =>
    figureWords(name, null, metric),
  );
  expect(words).toEqual(['inconnue', 'inconnu', 'inconnus']);
});
