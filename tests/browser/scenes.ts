// The moments of the program that pictures are taken of: the real host on a clock that a test moves, with invented boils of Tarn Hollow.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright';
import { tarnHollowSeason } from '../../fixtures/tarn-hollow-season.ts';
import { createHost } from '../../src/host/create-host.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import { HandClock } from '../host/hand-clock.ts';

export interface Stage {
  url: string;
  /** Sends a command to the host and throws when it is refused. */
  obeyed(command: Record<string, unknown>): Promise<unknown>;
  /** Takes a recording in; its id in the notebook. */
  importText(text: string): Promise<string>;
  /** Lets so many seconds pass on the host, second by second. */
  pass(seconds: number): Promise<void>;
  close(): Promise<void>;
}

/** The moment of every picture, by the clocks of the host and of the page: no picture changes with the day on which it is taken. */
export const NOW = Date.parse('2027-04-29T15:00:00Z');

/** How many boils of the invented season are taken in: enough for a list and a chart. */
const BOILS = 6;

/** Turns of the event loop in which nothing more is written down. */
const QUIET_TURNS = 50;

interface Called {
  board: string;
  boil(number: number): string;
}

/** What people at Tarn Hollow would call a boil and a board, for pictures in their language. */
const CALLED_IN: Readonly<Record<string, Called>> = {
  en: { board: 'Tarn Hollow workshop', boil: (number) => `Run ${number}, invented` },
  fr: { board: 'Atelier Tarn Hollow', boil: (number) => `Coulée ${number}, inventée` },
};

/** One invented board, so that no picture shows what hangs on this machine; nobody opens it. */
const portsOf = ({ board }: Called): NonNullable<Parameters<typeof createHost>[0]['ports']> => ({
  list: async () => [{ path: '/dev/ttyUSB0', manufacturer: board, serialNumber: 'TH-0001' }],
  openPort: () => Promise.reject(new Error('nothing is plugged in')),
});

/** A language that nobody has given names for has the English ones. */
export async function openStage(language: string): Promise<Stage> {
  const called = CALLED_IN[language] ?? CALLED_IN['en']!;
  const folder = await mkdtemp(join(tmpdir(), 'tarn-hollow-'));
  const machine = new HandClock();
  machine.wall = NOW;
  const host = await createHost({ folder, machine, ports: portsOf(called), addresses: () => [] });
  const obeyed = async (command: Record<string, unknown>): Promise<unknown> => {
    const answer = await host.command({ ref: 'r', ...command });
    if (!answer.ok) throw new Error(answer.why);
    return answer.data;
  };
  const importText = async (text: string): Promise<string> => {
    const pieces = (async function* () {
      yield text;
    })();
    return (await host.importRecording(pieces, 'a recording')).boil;
  };
  for (const [index, { header, entries, page }] of tarnHollowSeason(7).boils.slice(0, BOILS).entries()) {
    const text = [{ ...header, name: called.boil(index + 1) }, ...entries].map((line) => `${JSON.stringify(line)}\n`);
    const boil = await importText(text.join(''));
    await obeyed({ keep_page: { boil, page } });
  }
  /** What the second brought is read and written down before the next one. */
  const settled = async (): Promise<void> => {
    let entries = -1;
    for (let quiet = 0; quiet < QUIET_TURNS; quiet += 1) {
      const now = host.running?.entries ?? 0;
      if (now !== entries) [entries, quiet] = [now, 0];
      await new Promise((resolve) => setImmediate(resolve));
    }
  };
  // The host's own sign of life goes by the clock that stands still: pages hear something else meanwhile.
  const alive = setInterval(() => void obeyed({ settings: {} }), 1000);
  const served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  return {
    url: served.url,
    obeyed,
    importText,
    async pass(seconds) {
      for (let second = 0; second < seconds; second += 1) {
        machine.run(1000);
        await settled();
      }
    },
    async close() {
      clearInterval(alive);
      await served.close();
      await host.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

export interface Scene {
  name: string;
  /** Brings the page there; the page stands at the pans of a practice boil. */
  go(page: Page): Promise<void>;
}

const at =
  (address: string, there: string) =>
  async (page: Page): Promise<void> => {
    await page.evaluate(`location.hash = '#/${address}'`);
    await page.locator(there).first().waitFor();
  };

async function planned(page: Page): Promise<void> {
  await at('plan', '.plan-page')(page);
  await page.locator('.plan-page input').first().fill('140');
  const pan = page.locator('.pan-fields').first();
  await pan.locator('select').first().selectOption('round');
  await pan.locator('input').nth(1).fill('400');
  await pan.locator('select').last().selectOption('propane');
  await pan.locator('input').last().fill('16');
  await page.locator('.plan-main').first().waitFor();
  await page.evaluate('scrollTo(0, 0)');
}

/** Before a boil runs. */
export const IDLE: readonly Scene[] = [
  { name: 'first-start', go: at('pans', '.welcome') },
  { name: 'start', go: at('start', '.cautions') },
];

/** While the practice boil runs. */
export const RUNNING: readonly Scene[] = [
  { name: 'pans', go: at('pans', '.card') },
  {
    name: 'note',
    async go(page) {
      await at('pans', '.card')(page);
      await page.keyboard.press('2');
      await page.keyboard.press('t');
      await page.locator('.mark-form').waitFor();
    },
  },
  { name: 'plan', go: planned },
  { name: 'probes', go: at('probes', 'main h1') },
  { name: 'notebook', go: at('notebook', 'table') },
  { name: 'season', go: at('notebook/season', '.season-chart') },
  { name: 'settings', go: at('settings', 'fieldset') },
  { name: 'cautions', go: at('help/cautions', '.cautions') },
];

/** Once a pot of it is called. */
export const CALLED: readonly Scene[] = [
  { name: 'call', go: at('pans', '.dock .alarm, .dock') },
  {
    name: 'big-view',
    async go(page) {
      await at('pans', '.card')(page);
      await page.keyboard.press('v');
      await page.locator('.cards-big').waitFor();
    },
  },
];
