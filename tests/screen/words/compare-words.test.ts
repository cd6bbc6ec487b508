// Boils beside each other in words: no two of them have the same legend, and what differs is told of what is drawn.
import { expect, test } from 'vitest';
import { settingsSchema } from '../../../src/protocol/messages.ts';
import {
  BESIDE,
  boilWordsAmong,
  differingWords,
  figureBeside,
  hasPractice,
  notDrawnWords,
  pansWords,
} from '../../../src/screen/words/compare-words.ts';

const boil = (id: string, time: string, pan = { id: 'p1', name: 'Front pot' }) => ({
  ...{ boil: id, name: 'Backyard', started: `2027-03-13T${time}:00-07:00`, pan },
});

test('two boils of one day and name are told apart by the hour at which they began', () => {
  const all = [boil('a', '07:30'), boil('b', '15:05'), { ...boil('c', '09:00'), name: 'Birch' }];
  expect(all.map((one) => boilWordsAmong(one, all))).toEqual([
    '13 Mar, 07:30, Backyard, Front pot',
    '13 Mar, 15:05, Backyard, Front pot',
    '13 Mar, Birch, Front pot',
  ]);
});

test('which pan of which sap each boil is drawn by is told', () => {
  const pan = { id: 'p1', name: 'Front pot' };
  const boils = [
    { pan: { ...pan, sap: 'maple' } },
    { pan: null },
    { pan: { ...pan, name: 'Birch pot', sap: 'birch' } },
  ];
  expect(pansWords(boils, [])).toEqual(['1 Front pot (maple)', '3 Birch pot (birch)']);
  const shares = { sucrose: 0.1, glucose: 0.4, fructose: 0.45, others: 0.05 };
  const walnut = { key: 'walnut', name: '', shares, typicalBrix: 1, source: '', sentence: '' };
  const kinds = [walnut] as unknown as Parameters<typeof pansWords>[1];
  expect(pansWords([{ pan: { ...pan, sap: '0.100/0.400/0.450/0.050' } }], kinds)).toEqual(['1 Front pot (walnut)']);
});

test('a boil that has no line says which it is and why, and one that is drawn says nothing', () => {
  const drawn = { ...boil('a', '07:30'), isWorking: false, why: null };
  const not = { ...boil('b', '15:05'), isWorking: false, why: 'This pan was not finished.' };
  const all = [drawn, not];
  expect(notDrawnWords(drawn, all)).toBeNull();
  expect(notDrawnWords(not, all)).toBe('13 Mar, 15:05, Backyard, Front pot: not drawn. This pan was not finished.');
  expect(notDrawnWords({ ...drawn, isWorking: true }, all)).toBe('13 Mar, 07:30, Backyard, Front pot: being read …');
});

test('that nothing differs is said of boils that are drawn alone; else it is said why nothing can be compared', () => {
  const line = (id: string, y: (number | null)[]) =>
    ({ ...boil(id, '07:30'), isWorking: false, why: null, x: [0, 1], y, t: [0, 1] }) as const;
  const [a, b, c] = [line('a', [1, 2]), line('b', [null, null]), line('c', [2, 3])];
  const slower = { boil: 'b', sentence: '18 min slower from 30 to 60 °Bx.' } as never;
  const said = (...boils: ReturnType<typeof line>[]) =>
    differingWords({ boils: boils as never, differences: [slower], untold: ['d'] });
  expect(said(b, a)).toMatchObject({ lines: [], others: [expect.stringMatching(/with 1, for it is not drawn/u)] });
  expect(said(a, b)).toMatchObject({ lines: [], others: [expect.stringMatching(/no other is drawn/u)], leftOut: null });
  expect(said(a, b, c)).toEqual({
    lines: [],
    others: ['As fast as 1 through each stretch that is known of both: 3.'],
    leftOut: 'Not drawn, and so not compared: 2.',
  });
  expect(said(a, line('b', [5, 6]), c, line('d', [1, 1]))).toEqual({
    lines: [expect.stringMatching(/^2 .*18\smin slower/u)],
    others: [expect.stringMatching(/^As fast as 1 .*: 3\.$/u), expect.stringMatching(/cannot be told, .*: 4\.$/u)],
    leftOut: null,
  });
});

test('what went in and came out stands in the units shown, all fuels in one, and what is not known says so', () => {
  const figure = (value: number) => ({ value, low: null, high: null, from: 'page' as const });
  const figures = { sap_litres: figure(100), fuel_kg: figure(4), fuel_kwh: figure(3), hours: figure(5.5) };
  const row = { running: false, figures: figures as never };
  const inUs = settingsSchema.parse({ volume: 'us-gallon', mass: 'pound' });
  const words = BESIDE.map(([name]) => figureBeside(name, row, inUs));
  expect(words.map((each) => each.replaceAll('\u00a0', ' '))).toEqual([
    '26.4 US gal',
    'not known',
    'not known',
    '8.8 lb; 3.0 kWh',
    '5 h 30 min',
    'not known',
  ]);
  expect(figureBeside('ratio', { running: false, figures: null }, inUs)).toBe('…');
  expect(figureBeside('ratio', { running: true, figures: null }, inUs)).toBe('not known');
});

test('a practice boil is missed in a season in small only where one of its year is listed', () => {
  const boil = (year: number, practice: boolean) => ({ started: `${year}-03-06T08:00:00Z`, practice });
  expect(hasPractice([boil(2026, false), boil(2026, true)], 2026)).toBe(true);
  expect(hasPractice([boil(2026, false), boil(2025, true)], 2026)).toBe(false);
});
