// Probes that were set up and checked outside of a boil: kept whole, in place of the old ones, and told to the next boil.
import { expect, test } from 'vitest';
import type { Place, ProbeCheck } from '../../../src/protocol/probe-setup-messages.ts';
import {
  calledProbe,
  checkTeachings,
  errorOf,
  keepProbes,
  keptProbes,
  lastCheckOf,
  newestFirst,
} from '../../../src/host/probes/kept-probes.ts';
import { boilingCheck, keptProbe } from './kept.ts';

const place: Place = { altitude_m: 640 };
const today = '2027-04-18T08:10:00-07:00';

/** A notebook's settings, in memory. */
function settings() {
  const kept = new Map<string, unknown>();
  return {
    setting: (key: string) => kept.get(key) ?? null,
    keepSetting: (key: string, value: unknown) => void kept.set(key, structuredClone(value)),
  };
}

test('what was kept of the same channel of the same port is replaced, and the rest stays', () => {
  const notebook = settings();
  expect(keptProbes(notebook)).toEqual({ probes: [], place: {} });
  keepProbes(notebook, [keptProbe(), keptProbe({ channel: 'T2' }), keptProbe({ path: '/dev/invented-1' })], {});
  keepProbes(notebook, [keptProbe({ name: 'Short one' })], place);
  expect(keptProbes(notebook)).toEqual({
    probes: [keptProbe({ channel: 'T2' }), keptProbe({ path: '/dev/invented-1' }), keptProbe({ name: 'Short one' })],
    place,
  });
});

test('a board that stands on another path today is the same board; two that say nothing of themselves are not', () => {
  const notebook = settings();
  const device = 'serial/f00d:0001/TH-1';
  keepProbes(notebook, [keptProbe({ device }), keptProbe({ path: '/dev/invented-1' })], {});
  keepProbes(notebook, [keptProbe({ device, path: '/dev/invented-2' })], {});
  expect(keptProbes(notebook).probes.map(({ path }) => path)).toEqual(['/dev/invented-1', '/dev/invented-2']);
});

test('a probe of a boil is called as it was named, by its board or by where that is', () => {
  const header = {
    ...{ recording: 'panwarden' as const, version: 1 as const, started: today },
    ports: [{ id: 'Tarn', path: '/dev/invented-0' }],
    probes: [
      { id: 'Tarn/T1', port: 'Tarn', channel: 'T1' },
      { id: 'Tarn/T2', port: 'Tarn', channel: 'T2' },
    ],
  };
  const called = (id: string) => calledProbe(header, [keptProbe(), keptProbe({ channel: 'T2', name: '' })], id);
  expect(['Tarn/T1', 'Tarn/T2', 'Tarn/T3'].map(called)).toEqual(['Long one (T1)', 'Tarn/T2', 'Tarn/T3']);
});

test('the error is what the checks show, and none without them', () => {
  const ice: ProbeCheck = { in: 'ice', shown_c: 0.4, sigma_c: 0.05, true_c: 0, true_sigma_c: 0.1, at: today };
  expect(errorOf([])).toBeNull();
  expect(errorOf([boilingCheck(today)])?.tooHighC).toBeCloseTo(0.4);
  expect(errorOf([boilingCheck(today)])?.sigmaC).toBeCloseTo(Math.hypot(0.08, 0.06));
  expect(errorOf([ice])?.sigmaC).toBeCloseTo(Math.hypot(0.05, 0.1, 0.3));
  expect(errorOf([boilingCheck(today), ice])!.sigmaC).toBeLessThan(errorOf([boilingCheck(today)])!.sigmaC);
});

const setup = (port: { path: string; device?: string }) => ({
  ports: [{ id: 'A', ...port }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
});
const checked = keptProbe({ checks: [boilingCheck(today)], error: { tooHighC: 0.4, sigmaC: 0.1 } });

test('a check teaches the probe of its channel what it found, on the day that it was made', () => {
  expect(checkTeachings(setup({ path: checked.path }), [checked])).toEqual([
    {
      boil: '',
      name: 'Probe check',
      started: today,
      learnt: { names: ['probe A/1'], mean: [0.4], covariance: [[expect.closeTo(0.01) as number]] },
      probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
      forgotten: [],
    },
  ]);
});

test.each([
  ['another path', setup({ path: '/dev/invented-9' }), checked],
  ['no check', setup({ path: checked.path }), keptProbe()],
  ['another channel', setup({ path: checked.path }), { ...checked, channel: 'T2' }],
  [
    'another board on its path',
    setup({ path: checked.path, device: 'serial/x/2' }),
    { ...checked, device: 'serial/x/1' },
  ],
])('%s teaches nothing', (_what, header, kept) => {
  expect(checkTeachings(header, [kept])).toEqual([]);
});

test('a board that says what it is, is taught wherever it stands', () => {
  const header = setup({ path: '/dev/invented-9', device: 'serial/x/1' });
  expect(checkTeachings(header, [{ ...checked, device: 'serial/x/1' }])).toHaveLength(1);
});

test('the newest is told by the moment, not by how it is written', () => {
  const later = { ...checked, checks: [boilingCheck('2027-04-18T09:00:00+02:00'), boilingCheck(today)] };
  expect(lastCheckOf(later)).toBe(today);
  const teachings = ['2027-04-18T09:00:00+02:00', today].map((started) => ({ started }) as never);
  expect(newestFirst(teachings).map(({ started }) => started)).toEqual([today, '2027-04-18T09:00:00+02:00']);
});

test('a check that is hardly sure of anything counts for nothing, also where an older program kept what it made of it', () => {
  const wild: ProbeCheck = { ...boilingCheck(today), shown_c: 91, sigma_c: 3 };
  const ice: ProbeCheck = { in: 'ice', shown_c: 0.4, sigma_c: 0.05, true_c: 0, true_sigma_c: 0.1, at: '2027-04-17' };
  expect(errorOf([wild])).toBeNull();
  expect(errorOf([{ ...boilingCheck(today), true_sigma_c: 2 }])).toBeNull();
  expect(errorOf([wild, ice])).toEqual(errorOf([ice]));
  const notebook = settings();
  notebook.keepSetting('probes', {
    probes: [keptProbe({ checks: [wild], error: { tooHighC: -6.8, sigmaC: 3 } })],
    place,
  });
  const { probes } = keptProbes(notebook);
  expect(probes[0]).toMatchObject({ error: null, checks: [wild] });
  expect(checkTeachings(setup({ path: checked.path }), probes)).toEqual([]);
  const both = keptProbe({ checks: [wild, ice], error: errorOf([wild, ice]) });
  expect(checkTeachings(setup({ path: checked.path }), [both])[0]?.started).toBe('2027-04-17');
});
