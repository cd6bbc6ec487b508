// The menu of the window: recordings and recent boils first, and the usual entries; nothing in it leads out of the program.
import { Menu } from 'electron';
import type { MenuItemConstructorOptions } from 'electron';
import type { Host } from '../src/host/host.ts';
import type { BoilListing, HostMessage } from '../src/protocol/messages.ts';
import type { Replays } from './recordings.ts';

const MOST_RECENT = 8;

/** The boils that are over, the newest first, as lines of the menu. */
function recent(boils: readonly BoilListing[], replays: Replays): MenuItemConstructorOptions[] {
  const over = boils.filter(({ running }) => !running).toSorted((a, b) => b.started.localeCompare(a.started));
  if (over.length === 0) return [{ label: 'None yet', enabled: false }];
  return over.slice(0, MOST_RECENT).map(({ boil, name, started, practice }) => {
    const label = `${started.slice(0, 10)}  ${name ?? boil}${practice ? ' (practice)' : ''}`;
    // In a menu an ampersand underlines the letter behind it.
    return { label: label.replaceAll('&', '&&'), click: () => void replays.show(boil) };
  });
}

async function showMenu(host: Host, replays: Replays): Promise<void> {
  const answer = await host.command({ ref: 'menu', boils: true });
  const boils = answer.ok ? (answer.data as BoilListing[]) : [];
  const file: MenuItemConstructorOptions[] = [
    { label: 'Open a recording…', accelerator: 'CmdOrCtrl+O', click: () => void replays.choose() },
    { label: 'Recent boils', submenu: recent(boils, replays) },
    { type: 'separator' },
    { role: process.platform === 'darwin' ? 'close' : 'quit' },
  ];
  const template: MenuItemConstructorOptions[] = [
    { label: 'File', submenu: file },
    { role: 'editMenu' },
    { role: 'viewMenu' },
    { role: 'windowMenu' },
  ];
  if (process.platform === 'darwin') template.unshift({ role: 'appMenu' });
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}

/** Keeps the menu; what it gives back hears the host, since a boil that begins or ends changes the recent ones. */
export function keepMenu(host: Host, replays: Replays): (message: HostMessage) => void {
  let shown: string | null = null;
  return (message) => {
    if (message.kind !== 'now' || message.view !== 'live') return;
    const wanted = JSON.stringify([message.boil, message.ended]);
    if (wanted === shown) return;
    shown = wanted;
    void showMenu(host, replays);
  };
}
