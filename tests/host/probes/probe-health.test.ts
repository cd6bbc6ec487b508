// How well each probe does: noise, steps, losses, error and drift, two tips together, and the lines that could not be read.
import { expect, test } from 'vitest';
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';
import { probeHealth } from '../../../src/host/probes/probe-health.ts';
import type { KeptProbe } from '../../../src/protocol/probe-setup-messages.ts';
import { foldAll, inOrder, lines, mark, tarnHollow, waterCelsius } from '../../core/boil/tarn-hollow.ts';
import { boilingCheck, keptProbe } from './kept.ts';

const END_MS = 300_000;
const START_MS = Date.parse('2027-04-18T07:30:00-07:00');
const water = waterCelsius(1013.25);
const wallAt = (t: number): string => new Date(START_MS + t).toISOString();

function health(entries: Entry[], over: Partial<Header> = {}, kept: KeptProbe[] = []) {
  const { state } = foldAll(tarnHollow(over), entries, END_MS);
  return probeHealth({ state, t: END_MS, wallAt }, kept);
}

const random = randomStream(3, 'probe health');
const noisy = (celsius: number, noise: number) => (): number =>
  Math.round((celsius + noise * nextNormal(random)) / 0.25) * 0.25;

test('noise, steps and losses are those of the probe itself', () => {
  const heard = lines(0, END_MS, { T1: noisy(96, 0.5), T2: (t) => (t > 60_000 && t < 120_000 ? null : 20) });
  const [first, second] = health(heard).probes;
  expect(first).toMatchObject({ id: 'A/1', channel: 'T1', port: 'A', pan: 'p1', losses: 0, lostSeconds: 0 });
  expect(first!.noiseC).toBeGreaterThan(0.35);
  expect(first!.noiseC).toBeLessThan(0.7);
  expect(first!.stepC).toBeCloseTo(0.25);
  expect(second).toMatchObject({ stepC: null, losses: 1, lostSeconds: 60, lagS: null, doubt: null, error: null });
});

test('a check in the boil tells the error, and how far it moved from what was kept', () => {
  const heard = lines(0, END_MS, { T1: () => water + 0.5, T2: () => 20 });
  const check = mark(120_000, { kind: 'water-check', probe: 'A/1', celsius: water + 0.5 });
  const ports = [{ id: 'A', path: '/dev/invented-0' }];
  const kept = keptProbe({
    checks: [boilingCheck('2027-04-10T08:00:00-07:00')],
    error: { tooHighC: 0.1, sigmaC: 0.1 },
  });
  const [first, second] = health(inOrder(heard, [check]), { ports }, [kept]).probes;
  expect(first!.error!.tooHighC).toBeGreaterThan(0.3);
  expect(first!.driftC).toBeCloseTo(first!.error!.tooHighC - 0.1);
  expect(first!.checkedAt).toBe(wallAt(120_000));
  expect(second).toMatchObject({ error: null, driftC: null, checkedAt: null });
  const [before] = health(heard, { ports }, [kept]).probes;
  expect(before).toMatchObject({ error: kept.error, driftC: null, checkedAt: '2027-04-10T08:00:00-07:00' });
});

test('what was kept of another board on the same path says nothing of this one', () => {
  const kept = keptProbe({ device: 'serial/x/1', error: { tooHighC: 0.4, sigmaC: 0.1 } });
  const ports = [{ id: 'A', path: '/dev/invented-0', device: 'serial/x/2' }];
  expect(health([], { ports }, [kept]).probes[0]!.error).toBeNull();
  expect(health([], { ports: [{ ...ports[0]!, device: 'serial/x/1' }] }, [kept]).probes[0]!.error).toEqual(kept.error);
});

test('a channel that nobody set up is listed without a pan', () => {
  const heard = lines(0, END_MS, { T1: () => 96, T7: () => 21 });
  expect(health(heard).probes.at(-1)).toMatchObject({ id: 'A T7', channel: 'T7', port: 'A', pan: null });
});

test('a pot of plain water is told from pans', () => {
  const pans = [{ id: 'p1', name: 'Water', role: 'reference' as const, probe: 'A/1' }];
  expect(health([], { pans }).probes.map(({ isReference }) => isReference)).toEqual([true, false]);
});

const twoTips = { pans: [{ id: 'p1', name: 'Back pot', probe: ['A/1', 'A/2'] }] };

test('two tips in one boiling pan are compared, and the odd one is the one that the pan is not read by', () => {
  const wander = (t: number): number => 0.1 * Math.sin(t / 7000);
  const together = health(
    lines(0, END_MS, { T1: (t) => 101 + wander(t), T2: (t) => 101.2 + wander(t) }),
    twoTips,
  ).together;
  expect(together).toMatchObject([{ pan: 'p1', probes: ['A/1', 'A/2'], odd: [] }]);
  expect(together[0]!.apartC).toBeCloseTo(0.2);
  const over = health(lines(0, END_MS, { T1: (t) => 101 + wander(t), T2: (t) => 97 + wander(t) }), twoTips).together;
  expect(over).toMatchObject([{ odd: ['A/2'] }]);
  expect(over[0]!.meanC).toBeGreaterThan(100.5);
  // Both may be right by themselves, but the boil saw the one of them leave.
  const leaves = lines(0, END_MS, { T1: (t) => 101 + wander(t), T2: (t) => 101 + wander(t) + (t > 200_000 ? 4 : 0) });
  expect(health(leaves, twoTips).together).toMatchObject([{ odd: ['A/2'], apartC: expect.closeTo(4) as number }]);
  // It is left out before the boil is sure enough of it to call.
  const left = lines(0, END_MS, { T1: (t) => 101 + wander(t), T2: (t) => 101 + wander(t) + (t > 260_000 ? 4 : 0) });
  expect(health(left, twoTips).together).toMatchObject([{ odd: ['A/2'] }]);
});

test('lines that could not be read are counted by reason, the last as they came', () => {
  const bad: Entry[] = ['T1=12,5', 'T1=x', 'T1=y'].map((line, n) => ({ t: 1000 * n, port: 'A', line }));
  expect(health(bad).refused).toEqual([
    {
      port: 'A',
      reasons: [
        { reason: 'decimal comma', count: 1 },
        { reason: 'not a number', count: 2 },
      ],
      last: [
        { t: 0, line: 'T1=12,5', why: 'decimal comma: T1=12,5' },
        { t: 1000, line: 'T1=x', why: 'not a number: T1=x' },
        { t: 2000, line: 'T1=y', why: 'not a number: T1=y' },
      ],
    },
  ]);
  expect(health([]).refused).toEqual([]);
});
