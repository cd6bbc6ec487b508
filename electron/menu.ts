// The menu of the window: recordings and recent boils first, and the usual entries; nothing in it leads out of the program.
import { Menu } from 'electron';
import type { MenuItemConstructorOptions } from 'electron';
import type { Host } from '../src/host/host.ts';
import type { MessageKey } from '../src/language/tongue.ts';
import type { BoilListing, HostMessage } from '../src/protocol/messages.ts';
import type { Replays } from './recordings.ts';
import { say, spoken } from './spoken.ts';

const MOST_RECENT = 8;
const isMac = process.platform === 'darwin';

type Role = NonNullable<MenuItemConstructorOptions['role']>;
/** Null for a line between entries. */
type Entry = readonly [role: Role, words: MessageKey] | null;

/** Electron labels what it does itself in English only, so each entry is labelled here. */
const APP: readonly Entry[] = [
  ['about', 'window.menu.about'],
  null,
  ['services', 'window.menu.services'],
  null,
  ['hide', 'window.menu.hide'],
  ['hideOthers', 'window.menu.hide_others'],
  ['unhide', 'window.menu.show_all'],
  null,
  ['quit', 'window.menu.quit'],
];
const EDIT: readonly Entry[] = [
  ['undo', 'window.menu.undo'],
  ['redo', 'window.menu.redo'],
  null,
  ['cut', 'window.menu.cut'],
  ['copy', 'window.menu.copy'],
  ['paste', 'window.menu.paste'],
  ['delete', 'window.menu.delete'],
  null,
  ['selectAll', 'window.menu.select_all'],
];
const VIEW: readonly Entry[] = [
  ['reload', 'window.menu.reload'],
  ['forceReload', 'window.menu.force_reload'],
  ['toggleDevTools', 'window.menu.developer_tools'],
  null,
  ['resetZoom', 'window.menu.actual_size'],
  ['zoomIn', 'window.menu.zoom_in'],
  ['zoomOut', 'window.menu.zoom_out'],
  null,
  ['togglefullscreen', 'window.menu.full_screen'],
];
const WINDOW: readonly Entry[] = [
  ['minimize', 'window.menu.minimise'],
  ['zoom', 'window.menu.zoom'],
  ...(isMac ? ([null, ['front', 'window.menu.front']] as const) : ([['close', 'window.menu.close']] as const)),
];

const linesOf = (entries: readonly Entry[]): MenuItemConstructorOptions[] =>
  entries.map((entry) => (entry === null ? { type: 'separator' } : { role: entry[0], label: say(entry[1]) }));

/** The boils that are over, the newest first, as lines of the menu. */
function recent(boils: readonly BoilListing[], replays: Replays): MenuItemConstructorOptions[] {
  const over = boils.filter(({ running }) => !running).toSorted((a, b) => b.started.localeCompare(a.started));
  if (over.length === 0) return [{ label: say('window.menu.none'), enabled: false }];
  return over.slice(0, MOST_RECENT).map(({ boil, name, started, practice }) => {
    const named = `${spoken().day(started.slice(0, 10))}  ${name ?? boil}`;
    const label = practice ? say('window.menu.practice', { boil: named }) : named;
    // In a menu an ampersand underlines the letter behind it.
    return { label: label.replaceAll('&', '&&'), click: () => void replays.show(boil) };
  });
}

async function showMenu(host: Host, replays: Replays): Promise<void> {
  const answer = await host.command({ ref: 'menu', boils: true });
  const boils = answer.ok ? (answer.data as BoilListing[]) : [];
  const file: MenuItemConstructorOptions[] = [
    { label: say('window.menu.open'), accelerator: 'CmdOrCtrl+O', click: () => void replays.choose() },
    { label: say('window.menu.recent'), submenu: recent(boils, replays) },
    ...linesOf([null, isMac ? ['close', 'window.menu.close'] : ['quit', 'window.menu.quit']]),
  ];
  const template: MenuItemConstructorOptions[] = [
    ...(isMac ? [{ role: 'appMenu' as const, submenu: linesOf(APP) }] : []),
    { label: say('window.menu.file'), submenu: file },
    { role: 'editMenu', label: say('window.menu.edit'), submenu: linesOf(EDIT) },
    { role: 'viewMenu', label: say('window.menu.view'), submenu: linesOf(VIEW) },
    { role: 'windowMenu', label: say('window.menu.window'), submenu: linesOf(WINDOW) },
  ];
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}

/**
 * Keeps the menu; what it gives back hears the host, since a boil that begins or ends changes the recent ones, and
 * another language all of it.
 */
export function keepMenu(host: Host, replays: Replays): (message: HostMessage) => void {
  let boil: unknown = null;
  let shown: string | null = null;
  return (message) => {
    if (message.kind === 'now' && message.view === 'live') boil = [message.boil, message.ended];
    const wanted = JSON.stringify([boil, spoken().tag]);
    if (boil === null || wanted === shown) return;
    shown = wanted;
    void showMenu(host, replays);
  };
}
