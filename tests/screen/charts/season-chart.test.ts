// Of which days or boils of a season a chart has anything to draw: with fewer than two it is a sentence.
import { expect, test } from 'vitest';
import { isOfOneKind, knownPlaces, knownSeries, type SeasonSeries } from '../../../src/screen/charts/season-chart.tsx';

const series = (values: (number | null)[]): SeasonSeries => ({
  label: '',
  name: '',
  words: String,
  values,
  kind: 'line',
});

test.each([
  ['no day at all', [], [[]], []],
  ['one day', ['18 Apr'], [[12], [null]], [0]],
  [
    'two boils, of which one tells anything',
    ['18 Apr', '19 Apr'],
    [
      [null, 9.8],
      [null, null],
    ],
    [1],
  ],
  [
    'two boils, each by another line',
    ['18 Apr', '19 Apr'],
    [
      [null, 9.8],
      [9.1, null],
    ],
    [0, 1],
  ],
])('%s', (_, places, values, known) => {
  expect(knownPlaces({ places, series: values.map(series) })).toEqual(known);
});

test('a line of which nothing is known is neither drawn nor named', () => {
  const [known, none] = [series([null, 9.8]), series([null, null])];
  expect(knownSeries([none, known])).toEqual([known]);
});

test('a line goes on from one boil to the next of the same sap alone, and from each where no kinds are told', () => {
  const kinds = ['maple', 'maple', 'birch'];
  expect([isOfOneKind({ kinds }, 0, 1), isOfOneKind({ kinds }, 1, 2), isOfOneKind({}, 1, 2)]).toEqual([
    true,
    false,
    true,
  ]);
});
