// What the machine runs from, as a Linux system tells it in its folder of power supplies, and what follows from it.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { linuxPower } from '../../src/host/power.ts';
import type { Power } from '../../src/host/power.ts';
import { PowerWatch, joinedPower, pagePower } from '../../src/host/power-watch.ts';

let folder: string;
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'panwarden-'))));
afterEach(() => rmSync(folder, { recursive: true }));

/** Names and units as the kernel's Documentation/ABI/testing/sysfs-class-power has them (from memory): µWh, µW, µAh, µA. */
function supply(name: string, says: Record<string, string | number>): void {
  mkdirSync(join(folder, name), { recursive: true });
  const lines = Object.entries(says).map(([key, value]) => `POWER_SUPPLY_${key}=${value}`);
  writeFileSync(join(folder, name, 'uevent'), `${lines.join('\n')}\n`);
}

const mains = (online: 0 | 1): void => supply('AC', { NAME: 'AC', TYPE: 'Mains', ONLINE: online });
const battery = (status: string, more: Record<string, string | number> = {}): void =>
  supply('BAT0', { TYPE: 'Battery', STATUS: status, CAPACITY: 50, ...more });

test('a laptop off the mains: percent, and time from what is left and what flows', async () => {
  mains(0);
  battery('Discharging', { ENERGY_NOW: 20_000_000, ENERGY_FULL: 40_000_000, POWER_NOW: 10_000_000 });
  expect(await linuxPower(folder)).toEqual({ onBattery: true, percent: 50, secondsLeft: 7200 });
});

test('a battery that counts charge, with a flow that is told as less than zero', async () => {
  battery('Discharging', { CHARGE_NOW: 1_000_000, CHARGE_FULL: 4_000_000, CURRENT_NOW: -2_000_000 });
  expect(await linuxPower(folder)).toMatchObject({ onBattery: true, secondsLeft: 1800 });
});

test('two batteries are taken together', async () => {
  battery('Discharging', { ENERGY_NOW: 10_000_000, ENERGY_FULL: 40_000_000, POWER_NOW: 10_000_000 });
  supply('BAT1', { TYPE: 'Battery', STATUS: 'Unknown', ENERGY_NOW: 10_000_000, ENERGY_FULL: 10_000_000, POWER_NOW: 0 });
  expect(await linuxPower(folder)).toEqual({ onBattery: true, percent: 40, secondsLeft: 7200 });
});

test('on the mains; and what is not told stays unknown', async () => {
  mains(1);
  battery('Charging');
  expect(await linuxPower(folder)).toEqual({ onBattery: false, percent: 50, secondsLeft: null });
  mains(0);
  battery('Discharging');
  expect(await linuxPower(folder)).toEqual({ onBattery: true, percent: 50, secondsLeft: null });
});

test('no folder, no battery, or only that of a mouse: nothing is known', async () => {
  expect(await linuxPower(join(folder, 'none'))).toBe(null);
  mains(1);
  supply('hidpp', { TYPE: 'Battery', SCOPE: 'Device', STATUS: 'Discharging', CAPACITY: 5 });
  expect(await linuxPower(folder)).toBe(null);
});

test('the page fills in what the system does not tell', () => {
  const page = pagePower({ charging: false, level: 0.4, seconds_left: 3000 });
  expect(joinedPower(null, page)).toEqual({ onBattery: true, percent: 40, secondsLeft: 3000 });
  const system = { onBattery: true, percent: 41, secondsLeft: null };
  expect(joinedPower(system, page)).toEqual({ onBattery: true, percent: 41, secondsLeft: 3000 });
  expect(joinedPower({ ...system, onBattery: false }, page)).toMatchObject({ onBattery: false, secondsLeft: null });
  expect(joinedPower(null, pagePower(null))).toBe(null);
});

const onBattery = (percent: number | null, minutes: number | null): Power => ({
  onBattery: true,
  percent,
  secondsLeft: minutes === null ? null : 60 * minutes,
});
const onMains: Power = { onBattery: false, percent: 80, secondsLeft: null };

test('running from the battery is said when it begins, and so is the mains coming back', () => {
  const watch = new PowerWatch();
  const news = [onMains, onBattery(64, 110), onBattery(63, 108), onMains, onMains].map(
    (power) => watch.look(power, null).news,
  );
  expect(news).toEqual([
    null,
    'This machine runs from its battery: 64 %, about 110 min left.',
    null,
    'This machine has mains power again.',
    null,
  ]);
});

test.each<[string, Power, number | null, boolean]>([
  ['less than three quarters of an hour', onBattery(64, 40), null, true],
  ['two hours, and nobody knows how long it takes', onBattery(64, 120), null, false],
  ['two hours, and the last pan takes three', onBattery(64, 120), 3 * 3600, true],
  ['no time told, and a fifth is left', onBattery(20, null), null, true],
  ['no time told, and more than a fifth is left', onBattery(21, null), null, false],
  ['nothing told at all', onBattery(null, null), 3 * 3600, false],
  ['on the mains', onMains, 3 * 3600, false],
])('%s: called only after two looks, and rightly', (_what, power, neededS, isCalled) => {
  const watch = new PowerWatch();
  expect(watch.look(power, neededS).why).toBe(null);
  expect(watch.look(power, neededS).why !== null).toBe(isCalled);
});

test('once called, only the mains end it', () => {
  const watch = new PowerWatch();
  const whys = [onBattery(30, 40), onBattery(30, 40), onBattery(30, 90), onMains].map(
    (power) => watch.look(power, 7200).why,
  );
  expect(whys.map((why) => why !== null)).toEqual([false, true, true, false]);
  expect(whys[1]).toBe('battery: 30 %, about 40 min left; the last pan needs about 2 h 0 min');
  expect(new PowerWatch(true).look(onBattery(30, 90), null).why).not.toBe(null);
});
