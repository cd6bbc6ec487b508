// What is said of a probe that sends a code for a number: broken, by name, never a temperature, and nothing else is called.
import { expect, test } from 'vitest';
import { readLine } from '../../../src/ingest/read-line.ts';
import { brokenWords } from '../../../src/core/boil/broken-probe.ts';
import { foldAll, lines, readingAt, tarnHollow, told } from './tarn-hollow.ts';

const boils = (until: number) => lines(0, until, { T1: () => 99.9, T2: () => 99.9 });

/** A boil of two pots in which T1 sends one number from 60 s on, for so many lines. */
function sends(text: string, count: number) {
  const sent = Array.from({ length: count }, (_, i) => ({
    t: 60_000 + i * 1000,
    port: 'A',
    line: `T1=${text} T2=99.9`,
  }));
  return foldAll(tarnHollow(), [...boils(60_000), ...sent], 60_000 + count * 1000);
}

test.each([
  ['-127', '−127: the sensor does not answer'],
  ['-127.00C', '−127: the sensor does not answer'],
  ['-196.6F', '−196.6: the sensor does not answer'],
  ['1023.75', '1023.75: the end of its range, so the tip or a lead is open'],
  ['2047.75', '2047.75: the end of its range, so the tip or a lead is open'],
  ['850', '850: the end of its range, so the tip or a lead is open'],
  ['1370.00', '1370: the end of its range, so the tip or a lead is open'],
  ['612.5', '612.5: no pan can be so hot, so it is no temperature'],
  ['-242.02', '−242.02: no pan can be so cold, so it is no temperature'],
  ['-0.00', '−0: what a board prints for a sum that went wrong'],
  ['nan', 'the board says that the probe is broken'],
])('%s again and again is a broken probe, by name', (text, why) => {
  const { state, transitions } = sends(text, 5);
  expect(told(transitions)).toEqual(['p1 probe-lost raised']);
  expect(transitions[0]).toMatchObject({ why });
  expect(transitions[0]!.t).toBeLessThanOrEqual(62_000);
  expect(readingAt(state, 'p1', 65_000)).toMatchObject({ probe: 'broken', temperature_c: null, rise_c: null });
  expect(readingAt(state, 'p2', 65_000)).toMatchObject({ probe: 'ok', temperature_c: 99.9 });
});

test.each(['-127', '850', '1023.75', '449', '-59'])(
  'one single %s between good numbers calls nothing at all',
  (text) => {
    const wild = { t: 60_500, port: 'A', line: `T1=${text}` };
    const after = boils(120_000).filter(({ t }) => t > 60_500);
    const { transitions } = foldAll(tarnHollow(), [...boils(60_500), wild, ...after], 120_000);
    expect(transitions).toEqual([]);
  },
);

test('two glitches with a good number between them are none', () => {
  const glitching = lines(60_000, 120_000, { T1: (t) => (t % 2000 === 0 ? -127 : 99.9), T2: () => 99.9 });
  expect(foldAll(tarnHollow(), [...boils(60_000), ...glitching], 119_000).transitions).toEqual([]);
});

test('a code never ends the alarm of its own pan, and a good number ends that of the probe', () => {
  const hot = lines(0, 60_000, { T1: () => 111, T2: () => 99.9 });
  const broken = lines(60_000, 120_000, { T1: () => -127, T2: () => 99.9 });
  const { state, transitions } = foldAll(tarnHollow(), [...hot, ...broken], 120_000);
  const calls = told(transitions);
  expect(calls).toContain('p1 scorch-risk raised');
  expect(calls).toContain('p1 probe-lost raised');
  expect(calls).not.toContain('p1 scorch-risk cleared');
  expect(state.book.alarms.map(({ alarm, condition }) => `${alarm} ${condition}`)).toContain('scorch-risk active');
  const again = [...hot, ...broken, ...lines(120_000, 130_000, { T1: () => 111, T2: () => 99.9 })];
  expect(told(foldAll(tarnHollow(), again, 130_000).transitions)).toContain('p1 probe-lost cleared');
});

test('85.000 at power-on is named', () => {
  const { state, transitions } = foldAll(tarnHollow(), lines(0, 2000, { T1: () => 85, T2: () => 60 }).slice(0, 1), 900);
  expect(state.probes['A/1']!.brokenBy).toEqual({ by: 'power-on' });
  expect(brokenWords({ by: 'power-on' })).toMatch(/^85\.000 at power-on/u);
  expect(told(transitions).every((one) => one === 'p1 probe-lost raised')).toBe(true);
});

test('the reader of lines hands codes on as they are written', () => {
  expect(readLine('T1=-127.00 T2=1023.75', undefined).readings).toMatchObject([{ value: -127 }, { value: 1023.75 }]);
});
