// The Settings screen says at once what came of a press, keeps what was typed and refused, and speaks one language.
import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import type { Settings } from '../../src/protocol/messages.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { idleNow } from './tarn-hollow.ts';

let browser: Browser;
const closing: (() => Promise<unknown>)[] = [];

beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});

async function settingsPage(chosen: Partial<Settings> = {}) {
  const host = await standIn(await ensureScreenBuilt(), idleNow(), chosen);
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  await page.getByRole('link', { name: /Settings|Réglages/ }).click();
  return { host, page };
}

test('a folder for copies that is refused stays in its field, and the next one is kept', async () => {
  const { host, page } = await settingsPage();
  host.refuse('settings', 'There is no such folder.');
  const field = page.getByLabel('Folder for them');
  await field.fill('/media/stick/copys');
  await page.getByRole('button', { name: 'Keep this folder' }).click();
  await page.getByText('There is no such folder.').waitFor();
  expect(await field.inputValue()).toBe('/media/stick/copys');
  expect(await page.getByRole('button', { name: 'Keep this folder' }).isEnabled()).toBe(true);
});

/** The page's own word on it lags behind the answer. */
async function answering(page: Page, answer: NotificationPermission): Promise<void> {
  await page.evaluate((given) => {
    Object.defineProperty(Notification, 'permission', { get: () => 'default', configurable: true });
    Notification.requestPermission = () => Promise.resolve(given);
  }, answer);
  // The panel asks anew when it is opened.
  await page.evaluate(() => void (location.hash = '#/plan'));
  await page.getByRole('heading', { name: 'Plan', level: 1 }).waitFor();
  await page.evaluate(() => void (location.hash = '#/settings'));
  await page.getByRole('button', { name: 'Allow notifications' }).click();
}

test('notifications that the browser refuses are said to be refused at the press', async () => {
  const { page } = await settingsPage();
  await answering(page, 'denied');
  await page.getByText('Notifications are refused for this page').waitFor();
});

test('notifications that nobody decided on are said not to be allowed, and can be asked for again', async () => {
  const { page } = await settingsPage();
  await answering(page, 'default');
  await page.getByText('The browser did not allow it.').waitFor();
  expect(await page.getByRole('button', { name: 'Allow notifications' }).isVisible()).toBe(true);
});

test('a whole set of units takes the strength with it, and is shown as chosen only then', async () => {
  const { host, page } = await settingsPage({ strength: 'sg', temperature: 'C' });
  const metric = page.getByRole('button', { name: 'Metric' });
  expect(await metric.getAttribute('aria-pressed')).toBe('false');
  await metric.click();
  await page.locator('button[aria-pressed="true"]', { hasText: 'Metric' }).waitFor();
  expect(host.heard.findLast((command) => 'settings' in command)).toMatchObject({ settings: { strength: 'brix' } });
});

test('units leave the clock as it is, and the clock the units', async () => {
  const { host, page } = await settingsPage({ clock: '12' });
  const changes = (): unknown[] => host.heard.flatMap((each) => ('settings' in each ? [each.settings] : []));
  for (const set of ['Metric', 'US', 'Imperial']) await page.getByRole('button', { name: set, exact: true }).click();
  await page.getByLabel('24 h (16:40)').click();
  await expect.poll(() => changes().length).toBe(4);
  const [metric, us, imperial, clock] = changes();
  for (const units of [metric, us, imperial]) expect(Object.keys(units as object)).not.toContain('clock');
  expect(clock).toEqual({ clock: '24' });
});

test('a finish is complained of only once it was typed, and in the language of now', async () => {
  const { page } = await settingsPage({ language: 'fr' });
  await page.getByRole('radio', { name: 'English' }).check();
  const maple = page.getByRole('group', { name: 'Maple' });
  await maple.getByLabel('It is done at').selectOption('rise');
  const field = maple.getByLabel('That is');
  await field.waitFor();
  expect(await page.locator('.problem').count()).toBe(0);
  await field.fill('much');
  const problem = page.locator('.problem');
  await problem.waitFor();
  expect(await problem.textContent()).toMatch(/Maple/);
  expect(await problem.textContent()).not.toMatch(/Érable/);
  await field.fill('');
  expect(await problem.count()).toBe(1);
});
