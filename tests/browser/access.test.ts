// Every view, in every theme, is without a fault that axe-core can find (WCAG 2.2 A and AA, and its best practices).
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { languages } from '../../src/host/languages.ts';
import { ROUTES } from '../../src/screen/shell/routes.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, goToView, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { alarms, idleNow, liveNow } from './tarn-hollow.ts';
import { replayedNow } from './tarn-past.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());

const away = { ...alarms[1]!, pan: 'p3', asideUntil: 19_000_000, asideReason: 'The probe is being changed' };
const calling = liveNow(4, { alarms: [...alarms, away], sound: { priority: 'high', silencedUntil: null } });

const THEMES = ['light', 'dark', 'contrast'];

/** The rules whose answer a theme can change; the others were asked of the same page in the light one. */
const OF_THEME = ['color-contrast', 'link-in-text-block'];

/** A way to each element that is well would be made, too, which takes longer than to look at it. */
const ONLY_FAULTS = { resultTypes: ['violations'] };

/** What is wrong in each theme, and where; `shown` says what is shown. The page stays as it is but for its colours. */
async function faults(page: Page, shown: string): Promise<string[]> {
  const found = [];
  for (const theme of THEMES) {
    await page.evaluate(`document.documentElement.dataset.theme = ${JSON.stringify(theme)}`);
    const asked = { ...ONLY_FAULTS, ...(theme === 'light' ? {} : { runOnly: OF_THEME }) };
    const { violations } = await page.evaluate<AxeResults>(`axe.run(document, ${JSON.stringify(asked)})`);
    for (const { id, nodes } of violations)
      found.push(...nodes.map(({ target }) => `${shown}, ${theme}, ${id}: ${target.join(' ')}`));
  }
  return found;
}

async function goTo(page: Page, route: string): Promise<void> {
  await goToView(page, route);
  await page.locator('main h1').first().waitFor({ state: 'attached' });
}

/** Where there is more to see once something was asked for. */
const PLACES: [place: string, there: string][] = [
  ['replay', '.choices .line-key'],
  ['compare/2027-04-11-first-run/second', '.lines-chart svg'],
  ['tune', '.dot-plot'],
];

/** What opens over the pans: by which keys, what is then there, and how it is closed. */
const OPENED: [keys: string[], there: string][] = [
  [['d'], '.mark-form'],
  [['a'], '.aside-form'],
  [['k'], '.dock-lists-open'],
  [['v'], '.cards-big'],
];

const LANGUAGES = languages().named.map(([language]) => language);

/** Pages are looked into side by side, on two cores that others may use, too. */
const PATIENT_MS = 400_000;

/** Each on a page and a host of its own, so that they can be looked at side by side. */
test.concurrent.each(LANGUAGES)(
  'with calls standing, in every theme, in %s',
  async (language) => {
    const host = await standIn(await ensureScreenBuilt(), calling, { theme: 'light', language });
    const { page, errors } = await openPage(browser, host.url, LAPTOP);
    await page.locator('.dock').waitFor();
    expect(await page.evaluate('document.documentElement.lang')).toBe(language);
    await page.evaluate(axeSource);
    const found: string[] = [];
    host.show(replayedNow);
    host.show(calling);
    for (const route of [...ROUTES, 'probes/setup']) {
      await goTo(page, route);
      found.push(...(await faults(page, route)));
    }
    for (const [place, there] of PLACES) {
      await goTo(page, place);
      await page.locator(there).first().waitFor();
      found.push(...(await faults(page, place)));
    }
    await goTo(page, 'pans');
    for (const [keys, there] of OPENED) {
      for (const key of keys) await page.keyboard.press(key);
      await page.locator(there).waitFor();
      found.push(...(await faults(page, there)));
      await page.keyboard.press(there === '.mark-form' || there === '.aside-form' ? 'Escape' : (keys[0] ?? ''));
      await page.locator(there).waitFor({ state: 'detached' });
    }
    // The pan that calls is the chosen one; the mark that changed something is of the first.
    await page.keyboard.press('1');
    await page.locator('button.corrected').focus();
    await page.locator('.corrected-words').waitFor();
    found.push(...(await faults(page, 'corrected')));
    await page.locator('.tell').first().press('Enter');
    await page.locator('.explain').waitFor();
    found.push(...(await faults(page, 'explain')));
    await page.keyboard.press('Escape');
    expect(errors).toEqual([]);
    for (const now of [liveNow(2, { ended: true }), idleNow()]) {
      const there = now.ended ? '.look-back' : '.welcome';
      host.show(now);
      await page.locator(there).waitFor();
      found.push(...(await faults(page, there)));
    }
    expect(found).toEqual([]);
    await page.context().close();
    await host.close();
  },
  PATIENT_MS,
);
