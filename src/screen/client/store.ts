// Everything that the screen knows, as signals: what the host last said, and how long ago that was.
import { computed, signal } from '@preact/signals';
import type { FileAnswer, Link, LinkState } from './link.ts';
import { say } from '../language/say.ts';
import { requests } from './requests.ts';
import type { Requests } from './requests.ts';
import type { HostMessage, Now, PageReport, SapKind, Settings, TuningNow, Wish } from './types.ts';
import { usualClock, usualUnits } from './unit-sets.ts';

/** The host speaks once a second; with the half second between two looks, the page says within 5 s that it is gone. */
const LOST_AFTER_SECONDS = 4;
const TICK_MS = 500;
const GOOD_NEWS_MS = 8000;
/** What can be taken back stands until a slip has been seen. */
const TAKE_BACK_MS = 20_000;

export interface Said {
  good: boolean;
  sentence: string;
  /** Undoes what was done. */
  takeBack?: (() => void) | undefined;
  /** The id of the mark that was noted: the host may say of it that it acts on nothing. */
  mark?: string | undefined;
}

const START_SETTINGS: Settings = {
  temperature: 'C',
  volume: 'litre',
  length: 'mm',
  pressure: 'hpa',
  mass: 'kg',
  strength: 'brix',
  power: 'watt',
  clock: '24',
  theme: 'system',
  language: 'system',
  loudness: 'loud',
  near_finish_lead_s: 600,
  scorch_lead_s: 240,
  low_level_lead_s: 600,
  finish_probability: 0.5,
  per_sap: {},
  backup_folder: '',
  spoken_calls: false,
  minute_tick: false,
  use_learnt: true,
  second_channel: { command: [] },
};

export const live = signal<Now | null>(null);
export const replay = signal<Now | null>(null);
/** How far tuning is; null until somebody starts it. */
export const tuning = signal<TuningNow | null>(null);
export const settings = signal<Settings>(START_SETTINGS);
/** The kinds of sap to choose from, as the host names them. */
export const saps = signal<readonly SapKind[]>([]);
export const about = signal<{ version: string; folder: string } | null>(null);
export const linkState = signal<LinkState>({ state: 'connecting' });
/** The last thing that went wrong or was done, in one sentence. */
export const said = signal<Said | null>(null);

const heardAtMs = signal(performance.now());
const tickMs = signal(performance.now());

/** Seconds since the host last said anything. */
export const silentSeconds = computed(() => Math.max(0, (tickMs.value - heardAtMs.value) / 1000));
export const isLost = computed(() => silentSeconds.value >= LOST_AFTER_SECONDS || linkState.value.state === 'refused');

let link: Link | null = null;
let asking: Requests | null = null;

function hear(message: HostMessage): void {
  heardAtMs.value = performance.now();
  if (message.kind === 'now') {
    if (message.view === 'live') live.value = message;
    else replay.value = message;
  } else if (message.kind === 'hello') {
    about.value = { version: message.version, folder: message.folder };
    hearSettings(message.settings);
    saps.value = message.saps;
    // Where the link fails now, the next hello asks again.
    if (message.unchosen) {
      const usual = { ...usualUnits(navigator.languages), clock: usualClock(navigator.languages) };
      void ask({ usual_settings: usual }).catch(() => {});
    }
  } else if (message.kind === 'tuning') {
    tuning.value = message;
  } else if (message.kind === 'settings') {
    hearSettings(message.settings);
  } else {
    asking?.answered(message);
  }
}

/** Starts the link, once, when the page starts. */
export function connect(chosen: Link): void {
  link = chosen;
  asking = requests((command) => chosen.send(command));
  setInterval(() => (tickMs.value = performance.now()), TICK_MS);
  chosen.listen((event) => {
    if (event.kind === 'message') hear(event.message);
    else linkState.value = event.now;
  });
}

/** Sends a command and resolves with its answer's data; rejects with a sentence for the person. */
export function ask(wish: Wish): Promise<unknown> {
  return asking === null ? Promise.reject(new Error(say('client.not_connected'))) : asking.ask(wish);
}

/** Sends what needs no answer; where the link is down it is lost. */
export function report(page: PageReport): void {
  link?.send({ ref: 'page', page });
}

/** Good news goes away by itself; what went wrong stays until it is put away. */
function goodNews(sentence: string, takeBack?: () => void, mark?: string): Said {
  const news = { good: true, sentence, takeBack, mark };
  setTimeout(
    () => {
      if (said.value === news) said.value = null;
    },
    takeBack === undefined ? GOOD_NEWS_MS : TAKE_BACK_MS,
  );
  return news;
}

/** Says that something was done, with a button for `takeBack` beside it where that can be undone. */
export function sayDone(sentence: string, takeBack?: () => void): void {
  said.value = goodNews(sentence, takeBack);
}

/**
 * Sends a command, says what went wrong if something did, and tells whether it took effect. `done` is said once it did,
 * with a button for `takeBack` beside it where that can be undone; `mark` is the id of what was noted by it.
 */
export async function tell(wish: Wish, done?: string, takeBack?: () => void, mark?: string): Promise<boolean> {
  try {
    await ask(wish);
    said.value = done === undefined ? null : goodNews(done, takeBack, mark);
    return true;
  } catch (error) {
    said.value = { good: false, sentence: error instanceof Error ? error.message : String(error) };
    return false;
  }
}

/** As the host last said them, and what of them was changed here and is not answered yet. */
let toldSettings: Settings = START_SETTINGS;
let ownSettings: Partial<Settings> = {};
let unanswered = 0;

function hearSettings(told: Settings): void {
  toldSettings = told;
  settings.value = { ...told, ...ownSettings };
}

/**
 * Keeps changed settings; the next change builds on them at once, though an older word of the host may still be under way.
 * `done` is said once they are kept.
 */
export function changeSettings(part: Partial<Settings>, done?: string): void {
  ownSettings = { ...ownSettings, ...part };
  unanswered += 1;
  hearSettings(toldSettings);
  void tell({ settings: part }, done).then(() => {
    unanswered -= 1;
    if (unanswered === 0) ownSettings = {};
    hearSettings(toldSettings);
  });
}

/** Hands a recording to the host; see Link.hand. */
export function handFile(way: 'import' | 'opened', recording: Blob): Promise<FileAnswer> {
  if (link === null) return Promise.resolve({ ok: false, why: say('client.not_connected') });
  return link.hand(way, recording);
}

/** Closes the replay, here and in the host. */
export async function closeReplay(): Promise<void> {
  await tell({ replay_close: true });
  replay.value = null;
}
