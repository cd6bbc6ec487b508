// Faults 11 to 16: probes that say what cannot be true, and all at once, in boils whose minutes are moved by hand.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { nextNormal, randomStream } from '../../src/core/simulation/random.ts';
import type { ProbeHealth } from '../../src/protocol/probe-setup-messages.ts';
import { faultRig } from './always-true.ts';
import type { FaultRig } from './always-true.ts';

let rig: FaultRig;
beforeEach(async () => {
  // At sea level water boils at 100.0 °C.
  rig = await faultRig({ byHand: true, setup: { site: { name: 'Tarn Hollow', altitude_m: 0 } } });
});
afterEach(() => rig.remove());

const random = randomStream(11, 'faults of probes');
/** A probe in a boil: never the same number for long. */
const about = (celsius: number): string => (celsius + 0.08 * nextNormal(random)).toFixed(2);
const line = (first: string, second = about(100), third = about(100)): string => `T1=${first} T2=${second} T3=${third}`;
const isCalled = (alarm: string, pan: string): boolean =>
  rig.now().alarms.some((one) => one.alarm === alarm && one.pan === pan);
const whyOf = (alarm: string, pan: string): string => rig.raised(alarm, pan).at(-1)?.why ?? '';

test('11: one number that cannot be, and a probe that leaps to and fro', async () => {
  await rig.seconds(30, () => line('20.0'));
  await rig.seconds(1, () => line('850'));
  await rig.seconds(10, () => line('20.0'));
  await rig.seconds(1, () => line('300'));
  await rig.seconds(30, () => line('20.0'));
  expect(rig.raised('scorch-risk')).toEqual([]);
  expect(rig.raised('probe-suspect')).toEqual([]);
  expect(rig.raised('probe-lost')).toEqual([]);
  expect(rig.shown('A/1')).not.toContain(850);
  await rig.seconds(30, (second) => line(second % 2 === 0 ? '20.0' : '300'));
  expect(whyOf('probe-suspect', 'a1')).toMatch(/leap to and fro/);
  expect(rig.raised('probe-suspect', 'a2')).toEqual([]);
  expect(rig.raised('scorch-risk')).toEqual([]);
  await rig.alwaysTrue(11, 'out of range, impossible jumps', 'suspect, no scorch-risk');
});

test.each([
  ['the end of its range', '1023.75'],
  ['-127', '-127'],
  ['nan', 'nan'],
])('12: a broken probe (%s) is no temperature, and ends no alarm that runs', async (what, code) => {
  // Strength by the rise alone: 105 °C at sea level is beyond any finish.
  await rig.seconds(120, () => line(about(105)));
  expect(rig.raised('finish', 'a1').length + rig.raised('past-finish', 'a1').length).toBeGreaterThan(0);
  const before = rig.now().alarms.filter(({ pan }) => pan === 'a1');
  expect(before.length).toBeGreaterThan(0);
  const from = rig.alarms.length;
  const shown = rig.shown('A/1').filter((celsius) => celsius < 104 || celsius > 106);
  await rig.seconds(60, () => line(code));
  expect(rig.raised('probe-lost', 'a1').length).toBe(1);
  expect(rig.shown('A/1').filter((celsius) => celsius < 104 || celsius > 106)).toEqual(shown);
  for (const { alarm } of before) expect(isCalled(alarm, 'a1'), `${alarm} is gone`).toBe(true);
  expect(rig.alarms.slice(from).filter(({ event }) => event === 'cleared')).toEqual([]);
  await rig.alwaysTrue(12, `a broken probe: ${what}`, `${before.map(({ alarm }) => alarm).join(', ')} kept`);
});

test('12: 85.000 after the board was plugged in is no temperature', async () => {
  await rig.seconds(1, () => 'T1=85.000 T2=85.000 T3=85.000');
  await rig.seconds(2, () => line('20.0', '20.0', '20.0'));
  expect(rig.shown('A/1')).not.toContain(85);
  await rig.alwaysTrue(12, '85.000 at power-on', 'never shown');
});

test('13: the same digits while the neighbours move', async () => {
  await rig.seconds(400, () => line(about(100)));
  const stands = about(100);
  let second = 0;
  while (rig.raised('probe-suspect').length === 0 && second < 600) {
    await rig.seconds(10, () => line(stands));
    second += 10;
  }
  expect(whyOf('probe-suspect', 'a1')).toMatch(/the same number, .* for 5 min/);
  expect(rig.raised('probe-suspect').map(({ pan }) => pan)).toEqual(['a1']);
  await rig.alwaysTrue(13, 'the same digits, its neighbours move', `called after ${second} s`);
});

test('14: a probe that is lifted out of a pan that is nearly done', async () => {
  await rig.seconds(600, (second) => line(about(102.6 + second / 600)));
  expect(isCalled('near-finish', 'a1')).toBe(true);
  const from = rig.alarms.length;
  // In the air a tip cools faster than a pan can; four minutes go by in which somebody might say that the pan is off.
  await rig.seconds(300, (second) => line(about(10 + 93.6 * Math.exp(-second / 60))));
  expect(whyOf('probe-suspect', 'a1')).toMatch(/fell from 10\d °C faster than a pan can: the tip hangs in the air/);
  expect(isCalled('near-finish', 'a1')).toBe(true);
  expect(rig.alarms.slice(from).filter(({ event }) => event === 'cleared')).toEqual([]);
  await rig.alwaysTrue(14, 'a probe lifted out', 'said, near-finish kept');
});

test('14: a probe that is dropped into hot liquid', async () => {
  await rig.seconds(120, () => line('15.0'));
  await rig.seconds(60, (second) => line(about(102 - 87 * Math.exp(-second / 4))));
  expect(whyOf('probe-suspect', 'a1')).toMatch(/climbed from 15 °C faster than a pan can: was the tip put into hot/);
  expect(rig.raised('scorch-risk')).toEqual([]);
  await rig.alwaysTrue(14, 'a probe dropped in', 'said, no scorch-risk');
});

test('14: two probes that are swapped', async () => {
  await rig.seconds(400, () => line(about(103), about(99.9)));
  await rig.seconds(60, () => line(about(99.9), about(103)));
  expect(whyOf('probe-suspect', 'a1')).toMatch(/took over what the probe of Pan 2 showed, .*: are they swapped\?/);
  expect(whyOf('probe-suspect', 'a2')).toMatch(/took over what the probe of Pan 1 showed, .*: are they swapped\?/);
  await rig.alwaysTrue(14, 'two probes swapped', 'both said');
});

test('15: a channel twice, a new one, and one that is gone', async () => {
  await rig.seconds(20, () => 'T1=98.1 T2=98.2 T3=98.3');
  await rig.seconds(20, () => 'T1=98.1 T1=60.0 T3=98.3 T4=21.5');
  expect(rig.shown('A/1')).toEqual([98.1]);
  const answer = await rig.host.command({ ref: 'h', probe_health: true });
  const { refused } = (answer.ok ? answer.data : { refused: [] }) as Pick<ProbeHealth, 'refused'>;
  expect(refused[0]).toMatchObject({ port: 'A', reasons: [{ reason: 'named twice', count: 20 }] });
  expect(rig.now().probes.find(({ id }) => id === 'A T4')).toMatchObject({ channel: 'T4', pan: null, celsius: 21.5 });
  expect(rig.raised('probe-lost').map(({ pan }) => pan)).toEqual(['a1', 'a2']);
  await rig.alwaysTrue(15, 'channels twice, new and gone', 'conflict counted, T4 offered, 2 lost');
});

const FASTEST_C_PER_MIN = 5;

test('16: a minute of lines at once, after a stall', async () => {
  await rig.seconds(120, () => line('98.0', '98.0', '98.0'));
  await rig.stall(60);
  const rose = Array.from({ length: 60 }, (_, n) => (98 + n / 20).toFixed(2));
  await rig.burst(rose.map((celsius) => line(celsius, celsius, celsius)));
  let fastest = 0;
  for (let second = 0; second < 90; second += 1) {
    await rig.seconds(1, () => line('101.0', '101.0', '101.0'));
    fastest = Math.max(fastest, Math.abs(rig.pan('a1')?.rate_c_per_min ?? 0));
  }
  expect(fastest).toBeLessThan(FASTEST_C_PER_MIN);
  expect(rig.raised('scorch-risk')).toEqual([]);
  // The board speaks once a second as before: four seconds of silence are not yet a loss.
  const from = rig.alarms.length;
  await rig.stall(4);
  expect(rig.alarms.slice(from).filter(({ event }) => event === 'raised')).toEqual([]);
  await rig.alwaysTrue(16, 'a burst after a stall of a minute', `fastest ${fastest.toFixed(1)} °C/min said`);
});
