// Boils beside each other in words: no two of them have the same legend.
import { expect, test } from 'vitest';
import { boilWordsAmong } from '../../../src/screen/words/compare-words.ts';

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
