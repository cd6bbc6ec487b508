// Opens pages in Chromium at the two sizes that the screen is made for, and hears every error they make.
import { existsSync } from 'node:fs';
import { chromium } from 'playwright';
import type { Browser, Locator, Page } from 'playwright';

export const LAPTOP = { width: 1366, height: 768 };
export const PHONE = { width: 390, height: 844 };

/** A style of an element as it is shown, such as "font-size". */
export function styleOf(locator: Locator, property: string): Promise<string> {
  return locator.evaluate(
    (element, name) => element.ownerDocument.defaultView?.getComputedStyle(element).getPropertyValue(name) ?? '',
    property,
  );
}

export interface OpenedPage {
  page: Page;
  /** Errors of the page's scripts and console, in order. */
  errors: string[];
}

/** Goes to a view by its address, such as "notebook/season", and waits until what stood there before is gone. */
export async function goToView(page: Page, view: string): Promise<void> {
  await page.evaluate(`new Promise((done) => {
    // Two frames later the page has drawn what the new address asks for.
    const drawn = () => requestAnimationFrame(() => requestAnimationFrame(() => done()));
    if (location.hash === '#/${view}') return drawn();
    addEventListener('hashchange', drawn, { once: true });
    location.hash = '#/${view}';
  })`);
  await page.locator('main > *').first().waitFor({ state: 'attached' });
}

/** Debian's two builds of Chromium: the one without windows draws the same page in about two thirds of the time. */
const WINDOWLESS = '/usr/bin/chromium-headless-shell';
const WHOLE = '/usr/bin/chromium';

/** Starts Chromium; `whole` for what depends on more than the page: sound, notifications, a page put out of sight. */
export function startChromium({ whole = !existsSync(WINDOWLESS) } = {}): Promise<Browser> {
  // One process less to start and to pass every picture to; and threads of the script engine beside its own take an eighth more.
  const args = ['--in-process-gpu', '--js-flags=--single-threaded'];
  // The sandbox cannot be had as root, which is how tests run in a container.
  if (process.getuid?.() === 0) args.push('--no-sandbox');
  return chromium.launch({ executablePath: whole ? WHOLE : WINDOWLESS, args });
}

export async function openPage(
  browser: Browser,
  url: string,
  size: { width: number; height: number },
): Promise<OpenedPage> {
  // Read where litres and °C are usual: a first start takes its units from there.
  const context = await browser.newContext({ viewport: size, acceptDownloads: true, locale: 'en-GB' });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(url);
  return { page, errors };
}
