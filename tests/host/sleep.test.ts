// What would put the computer to sleep, as a Linux system tells it in its files, and what a person is told of it.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { linuxSleep, loginSettings, spanSeconds } from '../../src/host/sleep-settings.ts';
import { SleepWatch, sleepWords } from '../../src/host/sleep-watch.ts';

let root: string;
beforeEach(() => (root = mkdtempSync(join(tmpdir(), 'panwarden-'))));
afterEach(() => rmSync(root, { recursive: true }));

function file(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

/** A machine that systemd runs; folders, names and defaults as logind.conf(5) and sd_booted(3) have them (from memory). */
function systemd(): void {
  mkdirSync(join(root, 'run/systemd/system'), { recursive: true });
  file('sys/power/state', 'freeze mem disk\n');
}

test('only the login part counts, comments do not, and what is set to nothing is as if nobody had chosen', () => {
  const text =
    '[Login]\n#HandleLidSwitch=suspend\nHandleLidSwitch = ignore\nIdleAction=\n[Other]\nIdleAction=suspend\n';
  expect(loginSettings(text)).toEqual({ HandleLidSwitch: 'ignore', IdleAction: '' });
});

test.each([
  ['1800', 1800],
  ['30min', 1800],
  ['1h 30min', 5400],
  ['infinity', null],
  ['5 moons', null],
])('the span %s is %s s', (text, seconds) => expect(spanSeconds(text)).toBe(seconds));

test('a system that systemd does not run tells nothing', async () => {
  file('etc/systemd/logind.conf', '[Login]\nHandleLidSwitch=ignore\n');
  expect(await linuxSleep(null, root)).toBeNull();
});

test('where nobody chose, the lid puts it to sleep', async () => {
  systemd();
  expect(await linuxSleep(false, root)).toEqual({ lid: 'sleeps', idleSeconds: null });
});

test('what stands beside the file wins over it, by name, and /etc over what came with the system', async () => {
  systemd();
  file('etc/systemd/logind.conf', '[Login]\nHandleLidSwitch=suspend\nIdleAction=suspend\nIdleActionSec=20min\n');
  file('usr/lib/systemd/logind.conf.d/50-shed.conf', '[Login]\nHandleLidSwitch=poweroff\n');
  file('etc/systemd/logind.conf.d/50-shed.conf', '[Login]\nHandleLidSwitch=lock\n');
  file('run/systemd/logind.conf.d/10-first.conf', '[Login]\nHandleLidSwitch=hibernate\n');
  file('etc/systemd/logind.conf.d/99.txt', '[Login]\nHandleLidSwitch=poweroff\n');
  expect(await linuxSleep(true, root)).toEqual({ lid: 'stays-awake', idleSeconds: 1200 });
});

test('on the mains another setting may stand, and it counts there alone', async () => {
  systemd();
  file('etc/systemd/logind.conf', '[Login]\nHandleLidSwitchExternalPower=ignore\n');
  expect(await linuxSleep(false, root)).toMatchObject({ lid: 'stays-awake' });
  expect(await linuxSleep(true, root)).toMatchObject({ lid: 'sleeps' });
  expect(await linuxSleep(null, root)).toMatchObject({ lid: 'sleeps' });
});

test('a machine whose kernel offers no sleep stays awake, and can still be turned off', async () => {
  systemd();
  file('sys/power/state', '\n');
  expect(await linuxSleep(true, root)).toMatchObject({ lid: 'stays-awake' });
  file('etc/systemd/logind.conf', '[Login]\nHandleLidSwitch=poweroff\n');
  expect(await linuxSleep(true, root)).toMatchObject({ lid: 'turns-off' });
});

test('where a desktop has taken the lid over, what it does is not known', async () => {
  systemd();
  file('run/systemd/inhibit/3', 'WHAT=sleep\nMODE=delay\n');
  expect(await linuxSleep(true, root)).toMatchObject({ lid: 'sleeps' });
  file('run/systemd/inhibit/7', 'WHAT=handle-power-key:handle-lid-switch\nWHO=desk\nMODE=block\n');
  expect(await linuxSleep(true, root)).toMatchObject({ lid: 'not-known' });
});

test('every finding has its sentence, and what is not known is said so', () => {
  const all = [
    sleepWords({ lid: 'sleeps', idleSeconds: null }),
    sleepWords({ lid: 'turns-off', idleSeconds: 1200 }),
    sleepWords({ lid: 'stays-awake', idleSeconds: null }),
    sleepWords({ lid: 'not-known', idleSeconds: 1800 }),
    sleepWords(null),
  ];
  expect(all.map(({ warns, sentence }) => [warns, sentence])).toEqual([
    [
      true,
      'Closing the lid puts this computer to sleep: keep it open, or the watch ends. Whether being left alone puts it to sleep is not known here: look at its power settings.',
    ],
    [
      true,
      'Closing the lid turns this computer off: keep it open, or the watch ends. Left alone for 20 min it goes to sleep: switch that off in its power settings.',
    ],
    [
      false,
      'Closing the lid does not put this computer to sleep. Whether being left alone puts it to sleep is not known here: look at its power settings.',
    ],
    [
      true,
      'What closing the lid does is not known here: look at its power settings. Left alone for 30 min it goes to sleep: switch that off in its power settings.',
    ],
    [
      false,
      'Whether this computer goes to sleep when its lid is closed, or when nobody touches it, cannot be seen from here: look at its power settings, for a computer that sleeps watches nothing.',
    ],
  ]);
});

test('it is said once, again when it changes, and when the danger is over; what was never a danger is not', () => {
  const watch = new SleepWatch();
  expect(watch.look({ lid: 'stays-awake', idleSeconds: null })).toBeNull();
  expect(watch.now).toMatchObject({ warns: false });
  expect(watch.look({ lid: 'sleeps', idleSeconds: null })).toMatch(/^Closing the lid puts/);
  expect(watch.look({ lid: 'sleeps', idleSeconds: null })).toBeNull();
  expect(watch.look({ lid: 'stays-awake', idleSeconds: null })).toMatch(/does not put this computer to sleep/);
  expect(watch.look({ lid: 'stays-awake', idleSeconds: null })).toBeNull();
});
