// The sign in the desktop's bar: there while pans are watched, with what calls, and gone afterwards.
import { beforeEach, expect, test, vi } from 'vitest';
import { existsSync } from 'node:fs';
import { WatchNote } from '../../electron/watch-note.ts';
import { app, Tray } from './electron-stand-in.ts';
import { alarm, now } from './tarn-hollow.ts';

vi.mock('electron', () => import('./electron-stand-in.ts'));

const show = vi.fn<() => void>();
beforeEach(() => {
  Tray.put = [];
  show.mockClear();
});

test('it stands there while pans are watched, says how many, and brings the window back', () => {
  const note = new WatchNote(show);
  note.hear(now({ mode: 'idle', boil: null }));
  expect(Tray.put).toEqual([]);
  note.hear(now());
  note.hear(now());
  const [tray] = Tray.put;
  expect([Tray.put.length, tray?.tip]).toEqual([1, 'Panwarden watches 1 pan']);
  expect(existsSync(tray!.picture.path)).toBe(true);
  tray?.emit('click');
  tray?.menu[0]?.click?.();
  expect(show).toHaveBeenCalledTimes(2);
  note.hear(now({ ended: true }));
  expect(tray?.isThere).toBe(false);
  note.hear(now());
  expect(Tray.put).toHaveLength(2);
});

test('it says what calls until somebody answers, and counts it on the dock', () => {
  const note = new WatchNote(show);
  note.hear(now({ alarms: [alarm(), alarm({ condition: 'over', title: 'Nearly syrup' })] }));
  expect([Tray.put[0]?.tip, app.badge]).toEqual(['Panwarden watches 1 pan. Will burn soon', 1]);
  note.hear(now({ alarms: [alarm({ answered: true })] }));
  expect([Tray.put[0]?.tip, app.badge]).toEqual(['Panwarden watches 1 pan', 0]);
});

test('practice is called so, and a replay changes nothing', () => {
  const note = new WatchNote(show);
  const pans = [{ id: 'p1' }, { id: 'p2' }];
  note.hear(now({ mode: 'practice', header: { ...now().header!, pans } }));
  note.hear(now({ view: 'replay', mode: 'idle', alarms: [alarm()] }));
  expect(Tray.put.map(({ tip, isThere }) => [tip, isThere])).toEqual([
    ['Panwarden watches 2 pans of a practice boil', true],
  ]);
});
