// The clock and the hands: entries in order however they are asked for, marks late or never, gaps, and a person's own marks.
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import type { Deed } from '../../../src/core/simulation/scenario.ts';
import { depthMillimetres, litresAtTwenty, strengthBrix } from '../../../src/core/simulation/liquid.ts';
import { practiceScenario } from '../../../src/core/simulation/practice-scenario.ts';
import { hearMark, stepSimulation } from '../../../src/core/simulation/simulate.ts';
import { panNamed, startSimulation, type SimulationState } from '../../../src/core/simulation/state.ts';
import { truthAt } from '../../../src/core/simulation/truth.ts';
import { marksOf, onePot, wholeBoil } from './one-pot.ts';

const pour = (seconds: number, more: Partial<Deed> = {}): Deed => ({
  when: { at: seconds * 1000 },
  acts: [{ act: 'pour', pan: 'p1', litres: 2, brix: 2, celsius: 5 }],
  ...more,
});

const person = (state: SimulationState, mark: Mark): void => hearMark(state, { t: state.second * 1000, mark });

test('the same entries come whether asked for by the moment, in odd steps or at once', () => {
  const whole = wholeBoil(practiceScenario(5)).entries;
  const state = startSimulation(practiceScenario(5));
  const pieces: Entry[] = [];
  for (let t = 0, step = 7; !state.ended || state.pending.length > 0; t += step, step = (step * 31) % 9973) {
    const piece = stepSimulation(state, t);
    expect(piece.every((entry) => entry.t <= t && entry.t >= (pieces.at(-1)?.t ?? 0))).toBe(true);
    pieces.push(...piece);
  }
  expect(pieces).toEqual(whole);
});

test('another seed is another boil; a copied state goes on alike', () => {
  expect(wholeBoil(practiceScenario(6)).entries).not.toEqual(wholeBoil(practiceScenario(5)).entries);
  const state = startSimulation(practiceScenario(5));
  stepSimulation(state, 900_000);
  const copy = structuredClone(state);
  expect(stepSimulation(copy, 1_200_000)).toEqual(stepSimulation(state, 1_200_000));
});

test('a pour typed late says when it happened; one that is forgotten is poured all the same', () => {
  const late = wholeBoil(onePot({ deeds: [pour(600, { late: [30, 90] })] }));
  const [mark] = marksOf(late.entries);
  expect(mark).toMatchObject({ kind: 'top-up', pan: 'p1', litres: 2, happened: 600_000, id: 'hand-1' });
  expect(mark?.t).toBeGreaterThanOrEqual(630_000);
  expect(mark?.t).toBeLessThanOrEqual(690_000);
  const forgotten = wholeBoil(onePot({ deeds: [pour(600, { forgotten: 1 })] }));
  expect(marksOf(forgotten.entries)).toEqual([]);
  const litres = (t: number): number => truthAt(forgotten.state.truth, 'p1', t)?.litres ?? NaN;
  expect(litres(610_000) - litres(590_000)).toBeGreaterThan(1.9);
});

test('a watched depth is topped up again and again, never twice within its rest', () => {
  const deed: Deed = {
    ...pour(0),
    when: { sight: 'depth-below', pan: 'p1', value: 130, times: 3, restSeconds: 600, delaySeconds: 20 },
  };
  const { entries, state } = wholeBoil(onePot({ deeds: [deed], endsAt: 7_200_000 }));
  const times = marksOf(entries).map(({ t }) => t);
  expect(times).toHaveLength(3);
  expect(times.slice(1).every((t, index) => t - (times[index] ?? 0) >= 600_000)).toBe(true);
  expect(truthAt(state.truth, 'p1', (times[0] ?? 0) - 20_000)?.depth_mm).toBeCloseTo(130, 0);
});

test('pouring one pan into another moves everything; the empty pan is off', () => {
  const { state, entries } = wholeBoil(
    onePot({
      deeds: [{ when: { at: 60_000 }, acts: [{ act: 'transfer', from: 'p1', to: 'p2', litres: 'all' }] }],
      endsAt: 120_000,
    }),
  );
  expect(marksOf(entries)).toMatchObject([{ kind: 'transfer', from: 'p1', to: 'p2', all: true }]);
  const start = panNamed(startSimulation(onePot()), 'p1').liquid;
  expect(panNamed(state, 'p2').liquid.sugarKg).toBeCloseTo(start.sugarKg, 12);
  expect(panNamed(state, 'p1').off).toBe(true);
  expect(state.truth.moments.some(({ what, pan }) => what === 'taken-off' && pan === 'p1')).toBe(true);
});

test('nothing is written down in a gap; after it come the gap and the ports', () => {
  const gap: Deed = { when: { at: 100_000 }, acts: [{ act: 'gap', seconds: 60 }] };
  const { entries } = wholeBoil(onePot({ deeds: [gap], endsAt: 200_000 }));
  expect(entries.filter(({ t }) => t >= 100_000 && t < 160_000)).toEqual([]);
  expect(entries.filter(({ t }) => t === 160_000)).toEqual([
    { t: 160_000, run: 'gap', seconds: 60 },
    { t: 160_000, port: 'A', state: 'open' },
  ]);
});

test('a pulled cable sends no line until it is back, and the truth says both', () => {
  const deeds: Deed[] = [
    { when: { at: 30_000 }, acts: [{ act: 'port', port: 'A', state: 'lost' }] },
    { when: { at: 50_000 }, acts: [{ act: 'port', port: 'A', state: 'open' }] },
  ];
  const { entries, state } = wholeBoil(onePot({ deeds, endsAt: 90_000 }));
  expect(entries.filter((entry) => 'line' in entry && entry.t >= 30_000 && entry.t < 51_500)).toEqual([]);
  expect(entries.filter((entry) => 'state' in entry).map(({ t }) => t)).toEqual([0, 30_000, 50_000]);
  expect(state.truth.moments.filter(({ port }) => port === 'A').map(({ what }) => what)).toEqual([
    'port-lost',
    'port-back',
  ]);
});

test('a person’s marks change the pan: poured in, drawn off, flame out', () => {
  const state = startSimulation(onePot());
  stepSimulation(state, 60_000);
  const pan = panNamed(state, 'p1');
  const before = litresAtTwenty(pan.liquid);
  person(state, { kind: 'top-up', pan: 'p1', litres: 3, brix: 2, celsius: 5 });
  expect(litresAtTwenty(pan.liquid)).toBeCloseTo(before + 3, 1);
  person(state, { kind: 'draw-off', pan: 'p1', litres: 1 });
  expect(litresAtTwenty(pan.liquid)).toBeCloseTo(before + 2, 1);
  person(state, { kind: 'flame', pan: 'p1', level: 0 });
  const strength = strengthBrix(pan.liquid);
  stepSimulation(state, 1_800_000);
  expect(pan.boiling).toBe(false);
  expect(strengthBrix(pan.liquid)).toBeLessThan(strength + 1);
  person(state, { kind: 'draw-off', pan: 'p1', all: true });
  expect(depthMillimetres(pan.liquid, pan.hearth.areaM2)).toBe(0);
});

test('marks for unknown pans and other entries change nothing', () => {
  const state = startSimulation(onePot());
  stepSimulation(state, 10_000);
  const before = structuredClone(state);
  person(state, { kind: 'top-up', pan: 'nobody', litres: 3 });
  person(state, { kind: 'transfer', from: 'p1', to: 'p1', all: true });
  person(state, { kind: 'move-probe', probe: 'X', pan: 'p1' });
  person(state, { kind: 'note', text: 'hello' });
  hearMark(state, { t: 10_000, answer: { silence: { seconds: 60 } } });
  expect(state).toEqual(before);
});

test('a pan that nobody watches burns: finish, then burned, then the temperature runs away', () => {
  const { state } = wholeBoil(onePot({ pan: { litres: 4, brix: 45 }, endsAt: 3 * 3_600_000 }));
  const moment = (what: string) => state.truth.moments.find((m) => m.what === what);
  expect(moment('reached-finish')?.brix).toBeCloseTo(66.9, 0);
  expect(moment('burned')?.brix).toBeCloseTo(78, 0);
  expect(moment('burned')?.t).toBeGreaterThan(moment('reached-finish')?.t ?? Infinity);
  expect(panNamed(state, 'p1').liquid.celsius).toBeGreaterThan(150);
});

test('a scenario that does not fit its header is refused by name', () => {
  const scenario = onePot();
  expect(() => startSimulation({ ...scenario, header: { ...scenario.header, pans: [] } })).toThrow('p1');
  expect(() => startSimulation({ ...scenario, header: { ...scenario.header, probes: [] } })).toThrow('A/1');
});
