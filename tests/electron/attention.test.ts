// The second channel: who is notified of what, how often, and whether the machine is kept awake.
import { beforeEach, expect, test, vi } from 'vitest';
import { Attention } from '../../electron/attention.ts';
import { Notification, powerSaveBlocker, shell } from './electron-stand-in.ts';
import { alarm, now } from './tarn-hollow.ts';

vi.mock('electron', () => import('./electron-stand-in.ts'));

const show = vi.fn<() => void>();
const titles = (): string[] => Notification.shown.map(({ options }) => options.title);

beforeEach(() => {
  Notification.shown = [];
  Notification.isSupported = () => true;
  powerSaveBlocker.works = true;
  powerSaveBlocker.running.clear();
  shell.beeps = 0;
  show.mockClear();
});

test('a high alarm is notified once, with its pan and its numbers, and brings the window back', () => {
  const attention = new Attention();
  attention.hear(now({ alarms: [alarm()] }), show);
  attention.hear(now({ alarms: [alarm()] }), show);
  expect(Notification.shown.map(({ options }) => options)).toEqual([
    expect.objectContaining({
      title: 'Back pot: Will burn soon',
      body: 'about 2 min until it burns. Take it off the heat.',
      urgency: 'critical',
      timeoutType: 'never',
    }),
  ]);
  expect(show).toHaveBeenCalledTimes(1);
  Notification.shown[0]?.emit('click');
  expect(show).toHaveBeenCalledTimes(2);
});

test('a new excursion of the same alarm is notified again', () => {
  const attention = new Attention();
  attention.hear(now({ alarms: [alarm()] }), show);
  attention.hear(now({ alarms: [alarm({ condition: 'over' })] }), show);
  attention.hear(now({ alarms: [alarm({ since: 80_000 })] }), show);
  expect(titles()).toEqual(['Back pot: Will burn soon', 'Back pot: Will burn soon']);
});

test.each([
  ['answered', now({ alarms: [alarm({ answered: true })] })],
  ['over', now({ alarms: [alarm({ condition: 'over' })] })],
  ['of middle priority while the page sounds', now({ alarms: [alarm({ priority: 'medium' })] })],
  ['of a replay', now({ view: 'replay', alarms: [alarm()] })],
])('an alarm that is %s is not notified', (_what, message) => {
  new Attention().hear(message, show);
  expect(titles()).toEqual([]);
});

test('while the page is down middle alarms are notified too, and it beeps until somebody silences it', () => {
  const attention = new Attention();
  attention.pageIsDown = true;
  const alarms = [alarm({ priority: 'medium', pan: null, title: 'Not being written down' })];
  attention.hear(now({ alarms }), show);
  attention.hear(now({ alarms }), show);
  expect(titles()).toEqual(['Not being written down']);
  expect(shell.beeps).toBe(2);
  attention.hear(now({ alarms, t: 90_000, sound: { priority: null, silencedUntil: 120_000 } }), show);
  expect(shell.beeps).toBe(2);
  attention.hear(now({ alarms, t: 120_000, sound: { priority: 'medium', silencedUntil: 120_000 } }), show);
  expect(shell.beeps).toBe(3);
  attention.pageIsDown = false;
  attention.hear(now({ alarms }), show);
  expect(shell.beeps).toBe(3);
});

test('the machine is kept awake while pans are watched, and no longer', () => {
  const attention = new Attention();
  const kept = (): string[] => [...powerSaveBlocker.running.values()];
  attention.hear(now({ mode: 'idle', boil: null }), show);
  expect([attention.watching, kept()]).toEqual([false, []]);
  attention.hear(now(), show);
  attention.hear(now(), show);
  expect([attention.watching, kept()]).toEqual([true, ['prevent-display-sleep']]);
  attention.hear(now({ ended: true }), show);
  expect([attention.watching, kept()]).toEqual([false, []]);
});

test('a machine that cannot be kept awake is said, once', () => {
  powerSaveBlocker.works = false;
  const attention = new Attention();
  attention.hear(now(), show);
  attention.hear(now(), show);
  expect(titles()).toEqual(['This machine may fall asleep']);
});

test('a system without notifications changes nothing else', () => {
  Notification.isSupported = () => false;
  new Attention().hear(now({ alarms: [alarm()] }), show);
  expect(titles()).toEqual([]);
  expect(show).toHaveBeenCalledTimes(1);
});
