// Two tips in one pan: their mean is read, the one at odds is named and left out, and the calls come as they would by a good one alone.
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/core/boil/entries.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';
import { foldAll, inOrder, lines, mark, onePot, readingAt, tarnHollow, told, waterCelsius } from './tarn-hollow.ts';
import { type SteadyPan, steadyBrix, steadyCelsius, steadyWhen } from './tarn-hollow.ts';

const MIN = 60_000;
const twoTips = tarnHollow({ pans: [{ id: 'p1', name: 'Back pot', probe: ['A/1', 'A/2'] }] });
const pan: SteadyPan = { fromBrix: 45, k: 2e-4, start: 10 * MIN, sap: 'maple' };
const FINISH = steadyWhen(pan, 66.9);
const END = FINISH + 4 * MIN;
const water = waterCelsius(1013.25);

type Tip = (t: number) => number;
const noise = (seed: string): (() => number) => {
  const random = randomStream(7, seed);
  return () => 0.08 * nextNormal(random);
};
const first = noise('first');
const second = noise('second');
const good: Tip = (t) => steadyCelsius(pan, t) + second();
/** Shows so much more or less from a moment on, at once or over so long. */
const wrong = (at: number, byC: number, overMs = 1): Tip => {
  const share = (t: number): number => Math.min(1, Math.max(0, (t - at) / overMs));
  return (t) => steadyCelsius(pan, t) + first() + byC * share(t);
};
/** Out of the pan from a moment on, into something of so many °C. */
const out = (at: number, intoC: number): Tip => {
  const left = (t: number): number => (t < at ? 1 : Math.exp((at - t) / 8000));
  return (t) => intoC + (steadyCelsius(pan, t) - intoC) * left(t) + first();
};
const frozen = (at: number): Tip => {
  const before = wrong(0, 0);
  let last = 0;
  return (t) => (t < at ? (last = before(t)) : last);
};

const boil = (T1: Tip, T2: Tip, more: Entry[] = [], until = END) =>
  foldAll(twoTips, inOrder(more, lines(0, until, { T1, T2 })), until);
type Calls = ReturnType<typeof boil>['transitions'];
const raised = (calls: Calls, alarm: string) =>
  calls.filter((one) => one.alarm === alarm && one.event === 'raised').map(({ t, why }) => ({ t, why }));

const alone = foldAll(onePot(), lines(0, END, { T1: good }), END).transitions;

test.each([
  ['drifts up by 4 °C over 20 min in the thick', wrong(40 * MIN, 4, 20 * MIN), 40 * MIN, 'more', 0.1],
  ['drifts up by 4 °C over 20 min long before', wrong(20 * MIN, 4, 20 * MIN), 20 * MIN, 'more', 0.15],
  ['drifts down by 4 °C over 20 min', wrong(40 * MIN, -4, 20 * MIN), 40 * MIN, 'less', 0.1],
  ['leaps up by 2 °C shortly before the finish', wrong(62 * MIN, 2), 62 * MIN, 'more', 0.1],
  ['is lifted out to the air', out(50 * MIN, 8), 50 * MIN, 'less', 0.1],
  ['comes out of the syrup into its steam', out(50 * MIN, water), 50 * MIN, 'less', 0.1],
])('one that %s is named and left out, and the calls come in time', (_, tip, at, side, offC) => {
  for (const tips of [
    [tip, good],
    [good, tip],
  ] as const) {
    const { state, transitions } = boil(...tips);
    const named = tips[0] === tip ? 'A/1' : 'A/2';
    const [said, ...more] = raised(transitions, 'probe-suspect');
    expect(more).toEqual([]);
    expect(said!.why).toMatch(new RegExp(`^${named} shows .* °C ${side} than what else hangs in this pan`, 'u'));
    expect(said!.t).toBeGreaterThan(at);
    expect(said!.t).toBeLessThan(at + 7 * MIN);
    for (const alarm of ['near-finish', 'finish'])
      expect(Math.abs(raised(transitions, alarm)[0]!.t - raised(alone, alarm)[0]!.t)).toBeLessThan(2 * MIN);
    const reading = readingAt(state, 'p1', END);
    expect(reading.probe).toBe('ok');
    expect(Math.abs(reading.temperature_c! - steadyCelsius(pan, END))).toBeLessThan(offC + 0.1);
    expect(told(transitions).filter((one) => /lost|scorch/u.test(one))).toEqual([]);
  }
});

test('one that freezes is left out within two minutes, and said after five', () => {
  const { state, transitions } = boil(frozen(50 * MIN), good, [], 53 * MIN);
  expect(state.probes['A/1']!.beside.leftOut).toBe(true);
  expect(raised(transitions, 'probe-suspect')).toEqual([]);
  const whole = boil(frozen(50 * MIN), good);
  expect(raised(whole.transitions, 'probe-suspect')).toMatchObject([{ why: expect.stringContaining('same number') }]);
  for (const alarm of ['near-finish', 'finish'])
    expect(Math.abs(raised(whole.transitions, alarm)[0]!.t - raised(alone, alarm)[0]!.t)).toBeLessThan(1.5 * MIN);
  expect(Math.abs(readingAt(whole.state, 'p1', END).temperature_c! - steadyCelsius(pan, END))).toBeLessThan(0.2);
});

test('of two that differ by half a degree with opposite noise the mean is better than either, and nothing is said', () => {
  const random = randomStream(11, 'opposite');
  let shared = 0;
  const one: Tip = (t) => steadyCelsius(pan, t) + 0.25 + (shared = 0.15 * nextNormal(random));
  const other: Tip = (t) => steadyCelsius(pan, t) - 0.25 - shared;
  const heard = lines(0, END, { T1: one, T2: other });
  const rms = (header: typeof twoTips): number => {
    let sum = 0;
    let state = foldAll(header, [], 0).state;
    for (let t = 30 * MIN; t < END; t += MIN) {
      ({ state } = foldAll(header, heard.slice(0, t / 1000), t));
      sum += (readingAt(state, 'p1', t).temperature_c! - steadyCelsius(pan, t)) ** 2;
      t += 9 * MIN;
    }
    return Math.sqrt(sum);
  };
  const alike = (probe: string | string[]) => tarnHollow({ pans: [{ id: 'p1', name: 'Back pot', probe }] });
  const both = rms(alike(['A/1', 'A/2']));
  expect(both).toBeLessThan(0.3 * rms(alike('A/1')));
  expect(both).toBeLessThan(0.3 * rms(alike('A/2')));
  expect(raised(foldAll(twoTips, heard, END).transitions, 'probe-suspect')).toEqual([]);
});

test('three degrees apart from the first reading on: that nobody can tell is said, and the higher counts', () => {
  const { state, transitions } = boil(wrong(0, 0), wrong(-1, 3));
  const [said, ...more] = raised(transitions, 'probe-suspect');
  expect(more).toEqual([]);
  expect(said!.t).toBeLessThan(3 * MIN);
  expect(said!.why).toBe('A/1, A/2 lie 3.0 °C apart, and nobody can tell which is right: the higher one counts');
  expect(readingAt(state, 'p1', END).probe).toBe('suspect');
  for (const alarm of ['past-finish', 'scorch-risk']) expect(raised(transitions, alarm)[0]!.t).toBeLessThan(FINISH);
});

test('where somebody said what is in the pan, that settles its strength meanwhile', () => {
  const vessel = { shape: 'round' as const, diameter_mm: 400 };
  const told = tarnHollow({
    pans: [{ ...twoTips.pans![0]!, id: 'p1', vessel, heat: { kind: 'propane', power_w: 16_000 } }],
  });
  // 12.4 kg of sugar, of which 2e-4 of water a second: 2.5 g/s, 35 % of 16 kW.
  const fill = mark(0, { kind: 'top-up', pan: 'p1', litres: 23, brix: 45, celsius: 95 });
  const at = 50 * MIN;
  const heard = lines(0, at, { T1: good, T2: wrong(-1, 3) });
  const { state } = foldAll(told, [fill, ...heard], at);
  const { brix, brix_low: low, brix_high: high } = readingAt(state, 'p1', at);
  expect(Math.abs(brix! - steadyBrix(pan, at))).toBeLessThan(2);
  expect(low).toBeLessThan(steadyBrix(pan, at));
  expect(high).toBeGreaterThan(steadyBrix(pan, at));
});

test('one that is colder than what boils is the wrong one, though it was so from the first reading on', () => {
  const { transitions } = boil(wrong(-1, -3), good);
  expect(raised(transitions, 'probe-suspect')).toMatchObject([{ why: expect.stringMatching(/^A\/1 shows .* less/u) }]);
  const [near] = raised(transitions, 'near-finish');
  expect(Math.abs(near!.t - raised(alone, 'near-finish')[0]!.t)).toBeLessThan(1.5 * MIN);
});

test('what they did before a pour tells nothing of which one left its course', () => {
  const poured = 30 * MIN;
  const thinner: SteadyPan = { fromBrix: 38, k: 2e-4, start: poured, sap: 'maple' };
  const pot: Tip = (t) => steadyCelsius(t < poured ? pan : thinner, t) + second();
  const leaping: Tip = (t) => pot(t) + (t < 33 * MIN ? 0 : 1.2);
  const pour = mark(poured, { kind: 'top-up', pan: 'p1', litres: 4, brix: 10, celsius: 95 });
  const { transitions } = boil(leaping, pot, [pour], 45 * MIN);
  const [said, ...more] = raised(transitions, 'probe-suspect');
  expect(more).toEqual([]);
  expect(said!.why).toMatch(/^A\/1 shows .* more/u);
});

test('a tip that is put back counts again, and its call is over', () => {
  const back: Tip = (t) => (t < 45 * MIN ? out(30 * MIN, 8)(t) : good(t));
  const { state, transitions } = boil(back, good, [], 55 * MIN);
  expect(told(transitions)).toEqual(['p1 probe-suspect raised', 'p1 probe-suspect cleared']);
  expect(state.probes['A/1']!.beside).toMatchObject({ leftOut: false, odd: null });
});

test('of three the one far from the middle is left out; the odd one is read where the others are lost', () => {
  const header = tarnHollow({
    probes: ['1', '2', '3'].map((n) => ({ id: `A/${n}`, port: 'A', channel: `T${n}` })),
    pans: [{ id: 'p1', name: 'Back pot', probe: ['A/1', 'A/2', 'A/3'] }],
  });
  const lost = (tip: Tip) => (t: number) => (t < 60 * MIN ? tip(t) : null);
  const heard = lines(0, 62 * MIN, { T1: lost(good), T2: wrong(30 * MIN, 1.5), T3: lost(wrong(-1, 0.4)) });
  const { state, transitions } = foldAll(header, heard, 62 * MIN);
  expect(raised(transitions, 'probe-suspect')).toMatchObject([{ why: expect.stringMatching(/^A\/2 shows .* more/u) }]);
  expect(readingAt(state, 'p1', 62 * MIN).temperature_c).not.toBeNull();
});

test('a check in boiling water of one of two moves the pan to what that one is, without a slope', () => {
  const check = mark(40 * MIN, { kind: 'water-check', probe: 'A/2', celsius: water + 0.6 });
  const { state } = boil(wrong(-1, 0), (t) => good(t) + 0.6, [check], 41 * MIN);
  const { temperature_c: celsius, rate_c_per_min: rate } = readingAt(state, 'p1', 41 * MIN);
  // What the check says of the water point, known to 0.3 °C, moves the rest a little.
  expect(Math.abs(celsius! - steadyCelsius(pan, 41 * MIN))).toBeLessThan(0.2);
  const before = boil(wrong(-1, 0), (t) => good(t) + 0.6, [], 41 * MIN).state;
  expect(Math.abs(rate! - readingAt(before, 'p1', 41 * MIN).rate_c_per_min!)).toBeLessThan(0.03);
});
