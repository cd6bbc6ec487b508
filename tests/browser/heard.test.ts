// What is heard and shown when a page or the host fails: real processes, real Chromium, an ear at the page's loudspeaker.
import { existsSync, readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { Program, ownFolder } from '../cli/program.ts';
import type { Line } from '../cli/program.ts';
import { LAPTOP, startChromium } from './chromium.ts';
import { listenTo, loudestUntil, untilHeard } from './ear.ts';

let browser: Browser;
let own: ReturnType<typeof ownFolder>;
let program: Program;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await startChromium({ whole: true });
});
afterAll(() => browser.close());

beforeEach(() => {
  own = ownFolder();
});
afterEach(async () => {
  // A page that hangs does not close, but its process can be ended with its context.
  void context.close().catch(() => undefined);
  if (program.process.exitCode === null && program.process.signalCode === null) await program.kill('SIGKILL');
  own.remove();
});

const isAlarm = (name: string, event: string) => (line: Line) =>
  line['kind'] === 'alarm' && line['alarm'] === name && line['event'] === event;
const latestT = (): number => Number(program.lines.findLast(({ kind }) => kind === 'reading')?.['t'] ?? 0);

/** Watches a pan without a probe, or one whose port is not there, which is a high call from the start. */
async function watch(how: { calling: boolean }): Promise<string> {
  const pan = { id: 'p1', name: 'Back pot' };
  const port = { ports: [{ id: 'A', path: own.path('none') }], probes: [{ id: 'A/1', port: 'A', channel: 'T1' }] };
  const setup = how.calling ? { ...port, pans: [{ ...pan, probe: 'A/1' }] } : { pans: [pan] };
  const file = own.write('setup.json', { name: 'Tarn Hollow, invented', ...setup });
  program = new Program('watch', '--data', own.path('data'), '--setup', file, '--json', '--every', '1', '--http', '0');
  return String((await program.line(({ kind }) => kind === 'serving'))['url']);
}

/** Seven pans, each behind a board that is not there: all of them call at once. */
async function watchFlood(): Promise<string> {
  const ids = [1, 2, 3, 4, 5, 6, 7];
  const file = own.write('setup.json', {
    name: 'Tarn Hollow, invented',
    ports: ids.map((n) => ({ id: `B${n}`, path: own.path(`none-${n}`) })),
    probes: ids.map((n) => ({ id: `B${n}/1`, port: `B${n}`, channel: 'T1' })),
    pans: ids.map((n) => ({ id: `p${n}`, name: `Pan ${n}`, probe: `B${n}/1` })),
  });
  program = new Program('watch', '--data', own.path('data'), '--setup', file, '--json', '--every', '1', '--http', '0');
  return String((await program.line(({ kind }) => kind === 'serving'))['url']);
}

async function open(url: string, before: (page: Page) => Promise<void> = async () => {}): Promise<void> {
  context = await browser.newContext({ viewport: LAPTOP });
  page = await context.newPage();
  await listenTo(page);
  await before(page);
  await page.goto(url);
  await page.locator('.first').waitFor();
  // A browser lets a page sound only after somebody has touched it.
  await page.locator('.first-what').click();
  await page.getByRole('button', { name: 'Try the sound' }).waitFor();
}

/** Seconds until the host says that nobody could hear, from what is done now. */
async function secondsToNoSound(what: () => unknown): Promise<number> {
  const from = program.lines.length;
  const sinceMs = performance.now();
  await what();
  await program.line(isAlarm('no-sound', 'raised'), from);
  return (performance.now() - sinceMs) / 1000;
}

/** The person's own command, set where they set it; it writes what it is given to a file. */
async function keepCommand(): Promise<string> {
  const file = own.path('said');
  const script = "require('fs').appendFileSync(process.argv[1], process.argv[2] + '\\n')";
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByLabel('A command of your own').fill([process.execPath, '-e', script, file].join('\n'));
  await page.getByRole('button', { name: 'Keep this command' }).click();
  await page.getByText('The command is kept.').waitFor();
  await page.locator('button:disabled', { hasText: 'Keep this command' }).waitFor();
  return file;
}

test('a call is heard; when the page is closed, the host knows within 5 s that nobody hears and says it the other way', async () => {
  await open(await watch({ calling: true }));
  await untilHeard(page, 8000);
  const file = await keepCommand();
  expect(await secondsToNoSound(() => page.close())).toBeLessThan(5);
  // The call that stood unanswered goes out with it, each by a run of the command of its own.
  const said = (): string => (existsSync(file) ? readFileSync(file, 'utf8') : '');
  await expect.poll(said, { timeout: 10_000 }).toMatch(/Panwarden: No sound/);
  await expect.poll(said, { timeout: 10_000 }).toMatch(/Board of Back pot: Board lost/);
});

test('all pans at once: one sound, three calls in the dock, and how many more there are', async () => {
  await open(await watchFlood());
  await program.until(() => program.lines.filter(isAlarm('port-lost', 'raised')).length === 7);
  await untilHeard(page, 8000);
  await page.locator('.dock').getByText('4 more').first().waitFor();
  expect(await page.locator('.dock .alarm-title').count()).toBe(3);
  // Sounds laid over one another would be louder than the one call ever is.
  const sinceMs = performance.now();
  expect(await loudestUntil(page, () => performance.now() - sinceMs > 3000)).toBeLessThan(1);
});

test('a page that hangs is missed within 5 s, though its connection stands', async () => {
  await open(await watch({ calling: false }));
  await program.until(() => latestT() > 2000);
  const hang = (): void => void page.evaluate('while (true);').catch(() => undefined);
  expect(await secondsToNoSound(hang)).toBeLessThan(5);
});

test('a page whose process dies is missed within 5 s', async () => {
  await open(await watch({ calling: false }));
  const crash = (): void => void page.goto('chrome://crash').catch(() => undefined);
  expect(await secondsToNoSound(crash)).toBeLessThan(5);
});

test('a hidden page whose timers stand still goes on hearing, calling and telling the host that it does', async () => {
  const url = await watch({ calling: false });
  await open(url, (opened) => opened.clock.install());
  // As in a page that has been hidden for long, only worse: from here on no timer fires and its clock stands.
  await page.clock.pauseAt(Date.now() + 3_600_000);
  const from = latestT();
  await program.until(() => latestT() > from + 8000);
  expect(program.lines.filter(isAlarm('no-sound', 'raised'))).toEqual([]);
  program.say({ ref: '1', mark: { kind: 'remind', text: 'skim', seconds: 0 } });
  await program.line(isAlarm('reminder', 'raised'));
  await untilHeard(page, 3000);
  expect(await page.title()).toContain('Reminder');
});

test('a page that is stopped is missed, and said to hear again when it goes on', async () => {
  await open(await watch({ calling: false }));
  const session = await context.newCDPSession(page);
  await session.send('Debugger.enable');
  await program.until(() => latestT() > 2000);
  expect(await secondsToNoSound(() => session.send('Debugger.pause'))).toBeLessThan(5);
  await session.send('Debugger.disable');
  await program.line(isAlarm('no-sound', 'cleared'));
});

test('a host that is killed while it calls: within 5 s the page says so in large letters and goes on sounding until somebody has seen it', async () => {
  await open(await watch({ calling: true }));
  await untilHeard(page, 8000);
  const killedMs = performance.now();
  await program.kill('SIGKILL');
  await page.getByText('Connection lost').waitFor({ timeout: 5000 });
  expect(performance.now() - killedMs).toBeLessThan(5000);
  expect(await page.title()).toContain('Connection lost');
  await untilHeard(page, 5000);
  await page.locator('.band-lost').getByRole('button', { name: 'I have seen it' }).click();
  const quietMs = performance.now();
  await loudestUntil(page, () => performance.now() - quietMs > 200);
  expect(await loudestUntil(page, () => performance.now() - quietMs > 6500)).toBe(0);
});

test('a host that is killed while nothing sounds is heard all the same', async () => {
  await open(await watch({ calling: false }));
  await program.until(() => latestT() > 1000);
  await program.kill('SIGKILL');
  await untilHeard(page, 6000);
});

test('the call is tried at the start of a boil until somebody says that they heard it, which is kept', async () => {
  await open(await watch({ calling: false }));
  const check = page.getByRole('region', { name: 'Sound check' });
  expect(await check.getByRole('button', { name: 'I heard it' }).isDisabled()).toBe(true);
  await check.getByRole('button', { name: 'Play the call' }).click();
  await untilHeard(page, 8000);
  await check.getByRole('button', { name: 'I heard it' }).click();
  await check.waitFor({ state: 'detached' });
  await page.reload();
  await page.locator('.card').waitFor();
  expect(await check.count()).toBe(0);
});

test('where it was chosen, a call is also spoken, and notified when the page is not in front', async () => {
  const url = await watch({ calling: false });
  await open(url, async (opened) => {
    // What the system would say and show is kept here; its own windows and voices are not the page's.
    await opened.addInitScript(() => {
      const told: string[] = [];
      Object.assign(globalThis, { told });
      speechSynthesis.speak = ({ text }) => void told.push(`spoken: ${text}`);
      document.hasFocus = () => false;
      class Shown {
        static permission = 'granted';
        constructor(title: string) {
          told.push(`notified: ${title}`);
        }
      }
      Object.assign(globalThis, { Notification: Shown });
    });
  });
  await page.getByRole('link', { name: 'Settings' }).click();
  const spoken = page.getByLabel('Speak the calls too');
  await spoken.click();
  await expect.poll(() => spoken.isChecked()).toBe(true);
  program.say({ ref: '1', mark: { kind: 'remind', text: 'skim', seconds: 0 } });
  await untilHeard(page, 5000);
  const told = () => page.evaluate(() => (globalThis as unknown as { told: string[] }).told);
  await expect
    .poll(told, { timeout: 10_000 })
    .toEqual(['notified: Panwarden: Reminder', 'spoken: Panwarden: Reminder. Do it, then say that you have seen it.']);
});
