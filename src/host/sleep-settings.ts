// Reads from the system, without running anything, whether closing the lid or leaving it alone puts this computer to sleep.
import { readFile, readdir } from 'node:fs/promises';
import { platform } from 'node:os';
import { join } from 'node:path';

/** What the system would do; `not-known` where it does not tell, or a desktop has taken it over. */
export type LidOutcome = 'sleeps' | 'turns-off' | 'stays-awake' | 'not-known';

export interface SleepFound {
  lid: LidOutcome;
  /** After so long without a touch it sleeps or turns off, s; null where that is not known. */
  idleSeconds: number | null;
}

/** Where the login service looks, the first found or the first of a name winning (logind.conf(5), from memory). */
const FOLDERS = ['etc/systemd', 'run/systemd', 'usr/local/lib/systemd', 'usr/lib/systemd'];
const MAIN_FILE = 'logind.conf';
/** What it does where nobody chose (logind.conf(5), from memory). */
const DEFAULT_LID = 'suspend';
const DEFAULT_IDLE_S = 30 * 60;

const SLEEPS = new Set(['suspend', 'hibernate', 'hybrid-sleep', 'suspend-then-hibernate', 'sleep']);
const TURNS_OFF = new Set(['poweroff', 'reboot', 'halt', 'kexec', 'factory-reset']);

type Settings = Record<string, string>;

/** The settings of the [Login] part of one file; one that is set to nothing is as if nobody had chosen. */
export function loginSettings(text: string): Settings {
  const settings: Settings = {};
  let part = '';
  for (const line of text.split('\n').map((one) => one.trim())) {
    const header = /^\[(.+)\]$/.exec(line);
    if (header !== null) part = header[1] ?? '';
    const set = /^(\w+)\s*=\s*(.*)$/.exec(line);
    if (set !== null && part === 'Login') settings[set[1] ?? ''] = set[2] ?? '';
  }
  return settings;
}

const UNIT_SECONDS: Readonly<Record<string, number>> = { '': 1, s: 1, sec: 1, min: 60, m: 60, h: 3600, hr: 3600 };

/** A time such as `30min` or `1h 30min`, s; null where it cannot be read or means never. */
export function spanSeconds(text: string): number | null {
  const spans = [...text.matchAll(/(\d+)\s*([a-z]*)/g)];
  const seconds = spans.reduce(
    (sum, [, count, unit]) => sum + Number(count) * (UNIT_SECONDS[unit ?? ''] ?? Number.NaN),
    0,
  );
  return spans.length > 0 && Number.isFinite(seconds) && seconds > 0 ? seconds : null;
}

/** `canSleep`: what the kernel offers; `isTakenOver`: a desktop answers the lid itself. */
export interface SleepFacts {
  settings: Settings;
  onBattery: boolean | null;
  canSleep: boolean | null;
  isTakenOver: boolean;
}

/** What follows from what the system tells. */
function sleepFrom({ settings, onBattery, canSleep, isTakenOver }: SleepFacts): SleepFound {
  const onLid = settings['HandleLidSwitch'] || DEFAULT_LID;
  const plugged = settings['HandleLidSwitchExternalPower'] || onLid;
  // Where it is not known what the machine runs from, the cable may be pulled any time.
  const action = onBattery === false ? plugged : onLid;
  const onIdle = settings['IdleAction'] || 'ignore';
  const goes = outcomeOf(onIdle, canSleep) !== 'stays-awake';
  return {
    lid: isTakenOver ? 'not-known' : outcomeOf(action, canSleep),
    idleSeconds: goes ? (spanSeconds(settings['IdleActionSec'] ?? '') ?? DEFAULT_IDLE_S) : null,
  };
}

function outcomeOf(action: string, canSleep: boolean | null): LidOutcome {
  if (TURNS_OFF.has(action)) return 'turns-off';
  return SLEEPS.has(action) && canSleep !== false ? 'sleeps' : 'stays-awake';
}

const textOf = (path: string): Promise<string | null> => readFile(path, 'utf8').catch(() => null);
const namesIn = (folder: string): Promise<string[]> => readdir(folder).catch(() => []);

/** All settings of the login service: its file, then what stands beside it, by name, later ones winning. */
async function allSettings(root: string): Promise<Settings> {
  const files = new Map<string, string>();
  let main: string | null = null;
  for (const folder of FOLDERS.map((name) => join(root, name))) {
    main ??= await textOf(join(folder, MAIN_FILE));
    for (const name of await namesIn(join(folder, `${MAIN_FILE}.d`))) {
      if (name.endsWith('.conf') && !files.has(name)) files.set(name, join(folder, `${MAIN_FILE}.d`, name));
    }
  }
  const beside = await Promise.all(
    [...files].toSorted(([one], [other]) => (one < other ? -1 : 1)).map(([, path]) => textOf(path)),
  );
  return Object.assign({}, ...[main, ...beside].map((text) => loginSettings(text ?? ''))) as Settings;
}

/** Whether a program has asked the login service to leave the lid to it. */
async function isLidTakenOver(root: string): Promise<boolean> {
  const folder = join(root, 'run/systemd/inhibit');
  const texts = await Promise.all((await namesIn(folder)).map((name) => textOf(join(folder, name))));
  return texts.some((text) => /^WHAT=.*handle-lid-switch/m.test(text ?? '') && /^MODE=block$/m.test(text ?? ''));
}

/** What a Linux system with systemd says; null where it does not. `root` is where its folders begin. */
export async function linuxSleep(onBattery: boolean | null, root = '/'): Promise<SleepFound | null> {
  // This folder is there while systemd runs the machine (sd_booted(3), from memory).
  if ((await readdir(join(root, 'run/systemd/system')).catch(() => null)) === null) return null;
  const [settings, isTakenOver, states] = await Promise.all([
    allSettings(root),
    isLidTakenOver(root),
    textOf(join(root, 'sys/power/state')),
  ]);
  return sleepFrom({ settings, onBattery, isTakenOver, canSleep: states === null ? null : states.trim() !== '' });
}

/** What this system tells; null where it does not. Never rejects. */
export async function systemSleep(onBattery: boolean | null): Promise<SleepFound | null> {
  return platform() === 'linux' ? linuxSleep(onBattery) : null;
}
