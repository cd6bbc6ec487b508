// A page with an ear at its loudspeaker, on the real program with a boil: what is heard and shown when one of the two fails.
import type { Browser, BrowserContext, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { Program, ownFolder } from '../cli/program.ts';
import type { Line } from '../cli/program.ts';
import { LAPTOP, startChromium } from './chromium.ts';
import { listenTo } from './ear.ts';

let browser: Browser;
let own: ReturnType<typeof ownFolder>;
export let program: Program;
export let context: BrowserContext;
export let page: Page;

/** To be called once in each file that has such pages. */
export function openForTests(): void {
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
}

/** A file in the folder of this test. */
export const ownPath = (name: string): string => own.path(name);

export const isAlarm = (name: string, event: string) => (line: Line) =>
  line['kind'] === 'alarm' && line['alarm'] === name && line['event'] === event;
export const latestT = (): number => Number(program.lines.findLast(({ kind }) => kind === 'reading')?.['t'] ?? 0);

/** Watches a pan without a probe, or one whose port is not there, which is a high call from the start. */
export async function watch(how: { calling: boolean }): Promise<string> {
  const pan = { id: 'p1', name: 'Back pot' };
  const port = { ports: [{ id: 'A', path: own.path('none') }], probes: [{ id: 'A/1', port: 'A', channel: 'T1' }] };
  const setup = how.calling ? { ...port, pans: [{ ...pan, probe: 'A/1' }] } : { pans: [pan] };
  const file = own.write('setup.json', { name: 'Tarn Hollow, invented', ...setup });
  program = new Program('watch', '--data', own.path('data'), '--setup', file, '--json', '--every', '1', '--http', '0');
  return String((await program.line(({ kind }) => kind === 'serving'))['url']);
}

/** Seven pans, each behind a board that is not there: all of them call at once. */
export async function watchFlood(): Promise<string> {
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

/** Opens the page, with its ear, and touches it; `before` is done before the page loads. */
export async function open(url: string, before: (page: Page) => Promise<void> = async () => {}): Promise<void> {
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
