// Times within a sentence: long ones with their hours, none torn over two lines, and nothing else touched.
import { expect, test } from 'vitest';
import { inMinutes, timesInWords } from '../../../src/core/quantities/time.ts';

const plain = (sentence: string): string => timesInWords(sentence).replaceAll('\u00a0', '_');

test.each([
  ['about 9 min (7–12) to 66.9 °Bx', 'about 9_min (7–12) to 66.9_°Bx'],
  ['about 112 min to 66.9 °Bx', 'about 1_h_52_min to 66.9_°Bx'],
  ['about 112 min (85–140) to 66.9 °Bx', 'about 1_h_52_min (85_min–2_h_20_min) to 66.9_°Bx'],
  ['environ 112\u00a0min (100–125) jusqu’à 66,9 °Bx', 'environ 1_h_52_min (1_h_40_min–2_h_05_min) jusqu’à 66,9_°Bx'],
  [
    '62 %, about 2 h 5 min left; the last pan needs about 25 h 25 min',
    '62_%, about 2_h_5_min left; the last pan needs about 25_h_25_min',
  ],
  [
    'it said 90.5 min, 100 minutes, 120 s, 3 heures, 5 min/h',
    'it said 90.5_min, 100 minutes, 120_s, 3 heures, 5_min/h',
  ],
])('%s', (written, told) => expect(plain(written)).toBe(told));

test('seconds are told to the minute, from 90 min on with their hours', () => {
  expect([60, 89.4 * 60, 89.5 * 60].map(inMinutes)).toEqual(['1\u00a0min', '89\u00a0min', '1\u00a0h\u00a030\u00a0min']);
});
