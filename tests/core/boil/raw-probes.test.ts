// Checks probes that give Fahrenheit, millivolts or ohms through the fold: their pans, cold junctions, misfits, and words.
import { expect, test } from 'vitest';
import type { Entry, Header, Sensor } from '../../../src/core/boil/entries.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { foldAll, foldOn, inOrder, mark, readingAt, tarnHollow, told } from './tarn-hollow.ts';

const K: Sensor = { kind: 'thermocouple', type: 'K', cold_junction: 'CJ' };
const pt100: Sensor = { kind: 'rtd', r0_ohm: 100 };

/** NIST table, type K: 4.096 mV at 100 °C less 1.000 mV at 25 °C (memory). */
const at100 = '3.096';

function potWith(sensor: Sensor, offset?: number): Header {
  return tarnHollow({
    probes: [{ id: 'A/1', port: 'A', channel: 'T1', sensor, ...(offset !== undefined && { offset_c: offset }) }],
    pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1' }],
  });
}

/** The same line once in `every` ms, from `from` up to but not at `to` (ms). */
function same(line: string, from: number, to: number, every = 1000): Entry[] {
  return Array.from({ length: Math.ceil((to - from) / every) }, (_, i) => ({ t: from + i * every, port: 'A', line }));
}

const sentences = (state: { notices: { sentence: string }[] }): string[] =>
  state.notices.map(({ sentence }) => sentence);

test.each<[string, Sensor, string, number]>([
  ['degrees Fahrenheit', { kind: 'temperature', unit: 'F' }, 'T1=212', 100],
  ['kelvin', { kind: 'temperature', unit: 'K' }, 'T1=373.15', 100],
  ['degrees that carry their own unit', { kind: 'temperature', unit: 'F' }, 'T1=98.5C', 98.5],
  ['type K', K, `T1=${at100} CJ=25`, 100],
  ['type K with its cold junction in Fahrenheit', K, `CJ=77F T1=${at100}`, 100],
  ['type J', { ...K, type: 'J' }, 'T1=3.992 CJ=25.0', 100], // 5.269 - 1.277 (memory)
  ['type T', { ...K, type: 'T' }, 'T1=3.287 CJ=25.0', 100], // 4.279 - 0.992 (memory)
  ['platinum', pt100, 'T1=138.51', 100], // IEC 60751 table (read)
  ['platinum of 1000 ohm', { kind: 'rtd', r0_ohm: 1000 }, 'T1=1385.1', 100],
  ['a thermistor by its ohms at 25 °C and beta', { kind: 'ntc', r25_ohm: 10_000, beta_k: 3950 }, 'T1=1000', 87.72],
  [
    'a thermistor by Steinhart and Hart',
    { kind: 'ntc', steinhart_hart: [0.001129148, 0.000234125, 0.0000000876741] },
    'T1=678.1',
    100.016,
  ],
])('%s: the pan shows the temperature, offset and water check added after', (_, sensor, line, celsius) => {
  const heard = same(line, 0, 60_000);
  const { state, transitions } = foldAll(potWith(sensor), heard, 60_000);
  expect(Math.abs((readingAt(state, 'p1', 60_000).temperature_c ?? NaN) - celsius)).toBeLessThan(0.02);
  expect(told(transitions)).toEqual([]);
  expect(sentences(state)).toEqual([]);
  const bare = readingAt(state, 'p1', 60_000).temperature_c!;
  const shifted = foldAll(potWith(sensor, -1.5), heard, 60_000).state;
  expect(readingAt(shifted, 'p1', 60_000).temperature_c).toBeCloseTo(bare - 1.5, 9);
  // A barometer says what water boils at; a check that shows a degree less is the probe's error.
  const checked = inOrder(heard, [
    mark(1000, { kind: 'pressure', hpa: 1013.25, at: 'station' }),
    mark(2000, { kind: 'water-check', probe: 'A/1', celsius: 98.97 }),
  ]);
  const corrected = readingAt(foldAll(potWith(sensor), checked, 60_000).state, 'p1', 60_000).temperature_c!;
  expect(corrected - bare).toBeGreaterThan(0.8);
  expect(corrected - bare).toBeLessThan(1.2);
});

test('a unit in the line does not fit ohms or millivolts: no value, called as a lost probe, said once', () => {
  const { state, transitions } = foldAll(potWith(pt100), same('T1=140C', 0, 60_000), 60_000);
  expect(readingAt(state, 'p1', 60_000)).toMatchObject({ temperature_c: null, rise_c: null, probe: 'broken' });
  expect(told(transitions)).toEqual(['p1 probe-lost raised']);
  expect(sentences(state)).toEqual([expect.stringMatching(/^The probe A\/1 has no value: .*platinum.*ohms.*T1=140C/u)]);
});

test('ohms that are no temperature are said once, and the probe is well again with the next that are one', () => {
  const heard = [
    ...same('T1=138.51', 0, 30_000),
    ...same('T1=9999.9', 30_000, 60_000),
    ...same('T1=138.51', 60_000, 90_000),
  ];
  const { state, transitions } = foldAll(potWith(pt100), heard, 90_000);
  expect(told(transitions)).toEqual(['p1 probe-lost raised', 'p1 probe-lost cleared']);
  expect(sentences(state)).toEqual([expect.stringMatching(/^The probe A\/1 has no value: T1=9999.9 came/u)]);
  expect(readingAt(state, 'p1', 89_000).temperature_c).toBeCloseTo(100.01, 2);
});

test('under another setup a misfit is said again', () => {
  const heard = inOrder(same('T1=9999.9', 0, 60_000), [
    { t: 30_000, set: { probes: [{ id: 'A/1', port: 'A', channel: 'T1', sensor: { kind: 'rtd', r0_ohm: 1000 } }] } },
  ]);
  expect(sentences(foldAll(potWith(pt100), heard, 60_000).state)).toHaveLength(2);
});

test('a cold junction older than five of its own periods is none, and it is said once', () => {
  const tip = same(`T1=${at100}`, 500, 90_500);
  const cold = same('CJ=25', 0, 31_000);
  const { state, transitions } = foldAll(potWith(K), inOrder(tip, cold), 60_000);
  expect(transitions.map(({ t, alarm, event }) => [t, alarm, event])).toEqual([[35_500, 'probe-lost', 'raised']]);
  expect(readingAt(state, 'p1', 60_000)).toMatchObject({ temperature_c: null, probe: 'broken' });
  expect(sentences(state)).toEqual([
    expect.stringMatching(/^The probe A\/1 has no value: its cold junction, channel CJ of port A, was not heard/u),
  ]);
  const back = foldOn(state, inOrder(same('CJ=25', 91_000, 120_000), same(`T1=${at100}`, 91_500, 120_000)), 120_000);
  expect(told(back.transitions)).toEqual(['p1 probe-lost cleared']);
});

test('a cold junction that comes once in ten seconds is good for fifty', () => {
  const heard = inOrder(same(`T1=${at100}`, 500, 130_000), same('CJ=25', 0, 60_001, 10_000));
  const { transitions } = foldAll(potWith(K), heard, 130_000);
  expect(transitions.map(({ t, alarm, event }) => [t, alarm, event])).toEqual([[110_500, 'probe-lost', 'raised']]);
});

test('where tip and cold junction come in lines by turns, the start makes no alarm', () => {
  const heard = inOrder(same(`T1=${at100}`, 0, 60_000, 2000), same('CJ=25', 1000, 60_000, 2000));
  const { state, transitions } = foldAll(potWith(K), heard, 60_000);
  expect(told(transitions)).toEqual([]);
  expect(Math.abs(readingAt(state, 'p1', 59_000).temperature_c! - 100)).toBeLessThan(0.02);
});

test('a cold junction that never comes is waited for like a board, then said', () => {
  const { state, transitions } = foldAll(potWith(K), same(`T1=${at100}`, 0, 60_000), 60_000);
  expect(transitions.map(({ t, alarm, event }) => [t, alarm, event])).toEqual([[30_000, 'probe-lost', 'raised']]);
  expect(sentences(state)).toHaveLength(1);
});

test('after a gap an old cold junction does not count', () => {
  const before = foldAll(potWith(K), same(`T1=${at100} CJ=25`, 0, 60_000), 59_000).state;
  const gap: Entry = { t: 61_000, run: 'gap', seconds: 1 };
  const after = foldOn(before, [gap, ...same(`T1=${at100}`, 61_000, 64_000)], 64_000);
  expect(readingAt(after.state, 'p1', 64_000)).toMatchObject({ temperature_c: null, probe: 'late' });
});

test('a cold junction that the board calls broken is no cold junction', () => {
  const heard = [...same(`T1=${at100} CJ=25`, 0, 30_000), ...same(`T1=${at100} CJ=fault`, 30_000, 60_000)];
  const { state, transitions } = foldAll(potWith(K), heard, 60_000);
  expect(told(transitions)).toEqual(['p1 probe-lost raised']);
  expect(sentences(state)).toEqual([expect.stringContaining('is called broken by the board')]);
});

test('a cold junction is no channel without a probe, and one that becomes it is one no longer', () => {
  const { state } = foldAll(potWith(K), same(`T1=${at100} CJ=25 T9=55`, 0, 10_000), 10_000);
  expect(boilView(state, 10_000).probes.map(({ id }) => id)).toEqual(['A/1', 'A T9']);
  const named = [{ id: 'A/1', port: 'A', channel: 'T1', sensor: { ...K, cold_junction: 'T9' } }];
  const changed = foldOn(state, [{ t: 11_000, set: { probes: named } }], 12_000).state;
  expect(boilView(changed, 12_000).probes.map(({ id }) => id)).toEqual(['A/1']);
});

test('a raw number of no probe is no temperature to be offered, and its line counts as unreadable', () => {
  const { state } = foldAll(potWith(pt100), same('T9=32650', 0, 10_000), 10_000);
  expect(boilView(state, 10_000).probes.map(({ id }) => id)).toEqual(['A/1']);
  expect(boilView(state, 10_000).ports).toMatchObject([{ lines: 10, unreadable: 10 }]);
});

test('wires that touch are named: as warm as the plug at once after a hot pan, and well again when they part', () => {
  const heard = [
    ...same(`T1=${at100} CJ=25`, 0, 30_000),
    ...same('T1=0.01 CJ=25', 30_000, 60_000),
    ...same(`T1=${at100} CJ=25`, 60_000, 90_000),
  ];
  const { state, transitions } = foldAll(potWith(K), heard, 90_000);
  expect(told(transitions)).toEqual(['p1 probe-lost raised', 'p1 probe-lost cleared']);
  expect(sentences(state)).toEqual([expect.stringMatching(/^The probe A\/1 has no value: .*two wires .* touch/u)]);
});

test('a cold pot is as warm as the plug and no short, and so is a tip that was taken out and cooled', () => {
  const cold = foldAll(potWith(K), same('T1=0.01 CJ=25', 0, 30_000), 30_000);
  const cooling = Array.from({ length: 60 }, (_, i) => ({
    t: i * 1000,
    port: 'A',
    line: `T1=${(3.096 * Math.exp(-i / 10)).toFixed(3)} CJ=25`,
  }));
  const cooled = foldAll(potWith(K), [...cooling, ...same('T1=0.01 CJ=25', 60_000, 90_000)], 90_000);
  for (const { state } of [cold, cooled]) expect(sentences(state)).toEqual([]);
});
