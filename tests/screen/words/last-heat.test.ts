// What a pan showed last is said as of then, and a stage that nobody sees is put as a question.
import { expect, test } from 'vitest';
import type { Reading } from '../../../src/screen/client/types.ts';
import { lastHeatWords } from '../../../src/screen/words/last-heat.ts';
import { isWaitedFor, notKnownYet, probeLine, probeStateWords, stageOf } from '../../../src/screen/words/pan-words.ts';
import { metric, moment, reading } from '../moment.ts';

const lastHeats = [{ pan: 'p1', celsius: 101.4, at: moment.t - 6 * 60_000 }];

test('the last temperature comes with its age, and that none is known where none ever was', () => {
  const words = (pan: string, stage: Reading['stage'] = 'unknown') =>
    lastHeatWords({ ...moment, lastHeats }, { pan, stage }, metric);
  expect(words('p1')).toMatch(/^was 101\.4\s°C, 6\u00a0min ago$/u);
  // Of a boil that is over an age would stand still.
  const over = lastHeatWords({ ...moment, lastHeats, ended: true }, { pan: 'p1', stage: 'unknown' }, metric);
  expect(over).toMatch(/^was 101\.4\s°C at \d\d:\d\d$/u);
  expect(words('p2')).toBe('not read yet');
  // It was read, perhaps seconds before it was taken off.
  expect(words('p2', 'off')).toBe('');
});

test('a stage that no thermometer tells is put as a question', () => {
  const unseen = { ...reading, temperature_c: null };
  expect(stageOf({ ...unseen, stage: 'thickening' })).toBe('Thickening?');
  expect(stageOf({ ...reading, stage: 'thickening' })).toBe('Thickening');
  expect(stageOf({ ...unseen, stage: 'off' })).toBe('Off the fire');
  expect(stageOf({ ...unseen, stage: 'unknown' })).toBe('Not known yet');
});

test('before the first number of a probe is due it is waited for, not late', () => {
  const late = { ...reading, probe: 'late' as const };
  const probe = { ...moment.probes[0]!, state: 'late' as const, ageSeconds: null, celsius: null };
  expect(isWaitedFor({ probes: [probe] }, late)).toBe(true);
  expect(isWaitedFor({ probes: [{ ...probe, ageSeconds: 3 }] }, late)).toBe(false);
  expect(isWaitedFor({ probes: [probe] }, { ...late, probe: 'lost' })).toBe(false);
  expect(probeStateWords(probe)).toBe('Waiting for the probe’s first number');
  expect(probeStateWords({ ...probe, ageSeconds: 3 })).toBe('Probe is late');
  expect(notKnownYet({ ...late, temperature_c: null })).toEqual([]);
  expect(notKnownYet({ ...late, probe: 'lost', temperature_c: null })).toHaveLength(1);
});

test('a pan whose own probe hangs elsewhere is not said to be read by hand', () => {
  const bare = { ...reading, probe: null };
  expect(probeLine(moment, bare)).toBe('No probe in it now');
  expect(probeLine(moment, { ...bare, pan: 'p2' })).toBe('No probe, readings by hand');
  expect(probeLine(moment, reading)).toBe('Probe good');
});
