// What a season says of kinds of sap: rows of each that was boiled apart, and in words why there is no ratio of all.
import { expect, test } from 'vitest';
import type { KindTotals, SeasonTotals } from '../../../src/protocol/season-messages.ts';
import { quotientWords, rowsOfKind, sumWords } from '../../../src/screen/words/season-words.ts';
import { metric } from '../moment.ts';

const figure = (value: number) => ({ value, low: null, high: null, from: 'worked-out' as const });
const sum = (value: number | null, boils: number) => ({
  figure: value === null ? null : figure(value),
  boils_known: boils,
});
const kind = (
  sap: KindTotals['sap'],
  boils: number,
  [inL, outL]: [number, number],
  ratio: number | null,
): KindTotals => ({
  sap,
  boils,
  sap_litres: sum(inL, boils),
  syrup_litres: sum(outL, boils - 1),
  ratio: ratio === null ? null : figure(ratio),
});
const season = (by_kind: KindTotals[], ratio: number | null = null) => ({
  totals: { by_kind, ratio: ratio === null ? null : figure(ratio) } as SeasonTotals,
});
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const rowsOf = (seasons: ReturnType<typeof season>[], name: 'sap_litres' | 'syrup_litres' | 'ratio') =>
  rowsOfKind(seasons, name, metric).map(([label, words]) => [
    label,
    ...seasons.map(({ totals }) => plain(words(totals))),
  ]);

const maple = kind('maple', 2, [80, 2], 40);
const birch = kind('birch', 2, [140, 1.4], 100);
const several = kind('several', 2, [60, 1], null);

test('each kind has its row, a season that did not boil it an empty place, and boils of several kinds no ratio', () => {
  const seasons = [season([maple, birch, several]), season([], 41)];
  expect(rowsOf(seasons, 'sap_litres')).toEqual([
    [expect.stringMatching(/Maple/), '80.0 L', ''],
    [expect.stringMatching(/Birch/), '140 L', ''],
    [expect.stringMatching(/several kinds in one boil/), '60.0 L', ''],
  ]);
  expect(rowsOf(seasons, 'syrup_litres')[0]![1]).toBe(plain(sumWords('syrup_litres', sum(2, 1), 2, metric)));
  expect(rowsOf(seasons, 'ratio').map(([, words]) => words)).toEqual(['40.0 : 1', '100.0 : 1']);
  expect(seasons.map(({ totals }) => plain(quotientWords('ratio', totals, metric)))).toEqual([
    'each kind apart',
    '41.0 : 1',
  ]);
});

test('where each boil held several kinds, no row tells them apart, and the ratio says why it is not known', () => {
  const seasons = [season([several])];
  expect(rowsOf(seasons, 'sap_litres')).toEqual([]);
  expect(rowsOf(seasons, 'ratio')).toEqual([]);
  expect(quotientWords('ratio', seasons[0]!.totals, metric)).toBe('not known: several kinds in one boil');
});
