// What is said of a pan that burns follows from how hot it stands: before, past the limit, and when a pour would do harm.
import { expect, test } from 'vitest';
import { alarmWords } from '../../../src/core/alarms/words.ts';
import { foldAll, readingAt, tarnHollow } from '../boil/tarn-hollow.ts';

const reading = readingAt(foldAll(tarnHollow(), [], 0).state, 'p1', 0);
const words = (celsius: number, scorch_in_s: number) =>
  alarmWords('scorch-risk', { ...reading, temperature_c: celsius, scorch_in_s });

test('about to burn, burning, and so hot that nothing may be poured in', () => {
  expect(words(104, 200).title).toBe('About to burn');
  expect(words(107, 0)).toMatchObject({ title: 'Burning', todo: words(104, 200).todo });
  expect(words(107, 0).todo).toContain('pour in sap or water');
  expect(words(204, 0).todo).toContain('Pour nothing in');
});

test('a pan that runs low is topped up, but not where sap would thin what is nearly syrup', () => {
  const low = (stage: typeof reading.stage) => alarmWords('low-level', { ...reading, stage });
  expect(low('boiling').todo).toContain('Top up');
  for (const stage of ['near-finish', 'finished'] as const) {
    expect(low(stage)).toMatchObject({ title: low('boiling').title });
    expect(low(stage).todo).toContain('smaller pot');
    expect(low(stage).todo).not.toContain('Top up');
  }
});

test('other alarms, and those of no pan, are told as they always are', () => {
  expect(alarmWords('past-finish', { ...reading, temperature_c: 204 }).title).toBe('Past its finish');
  expect(alarmWords('scorch-risk', null).title).toBe('About to burn');
});
