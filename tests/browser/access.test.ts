// Every view, in every theme, is without a fault that axe-core can find (WCAG 2.2 A and AA, and its best practices).
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ROUTES } from '../../src/screen/shell/routes.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import type { StandIn } from './stand-in-host.ts';
import { alarms, idleNow, liveNow } from './tarn-hollow.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
let host: StandIn;
let page: Page;
let errors: string[];

beforeAll(async () => {
  browser = await startChromium();
  host = await standIn(await ensureScreenBuilt(), calling);
  ({ page, errors } = await openPage(browser, host.url, LAPTOP));
  await page.locator('.dock').waitFor();
  await page.evaluate(axeSource);
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});

const away = { ...alarms[1]!, pan: 'p3', asideUntil: 19_000_000, asideReason: 'The probe is being changed' };
const calling = liveNow(4, { alarms: [...alarms, away], sound: { priority: 'high', silencedUntil: null } });
const replayed = liveNow(2, {
  view: 'replay',
  mode: 'replay',
  replay: {
    playing: false,
    length: 3e7,
    title: 'First',
    started: '2027-04-18T07:30:00-07:00',
    readUntil: 3e7,
    choices: { pans: [] },
    known: [
      {
        pan: 'p1',
        said: { at: 2.9e7, low: 2.8e7, high: 3e7 },
        was: { at: 2.95e7, by: 'called' },
        later_s: 500,
        inRange: true,
      },
    ],
  },
});

/** What is wrong, and where; `in` says what is shown. */
async function faults(shown: string): Promise<string[]> {
  const { violations } = await page.evaluate<AxeResults>('axe.run(document)');
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${shown}, ${id}: ${target.join(' ')}`));
}

async function goTo(route: string): Promise<void> {
  await page.evaluate(`location.hash = '#/${route}'`);
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

test.each(['light', 'dark', 'contrast'])('with calls standing, theme %s', async (theme) => {
  await page.evaluate(`document.documentElement.dataset.theme = '${theme}'`);
  const found: string[] = [];
  host.show(replayed);
  host.show(calling);
  for (const route of [...ROUTES, 'probes/setup']) {
    await goTo(route);
    found.push(...(await faults(route)));
  }
  for (const [place, there] of PLACES) {
    await goTo(place);
    await page.locator(there).first().waitFor();
    found.push(...(await faults(place)));
  }
  await goTo('pans');
  for (const [keys, there] of OPENED) {
    for (const key of keys) await page.keyboard.press(key);
    await page.locator(there).waitFor();
    found.push(...(await faults(there)));
    await page.keyboard.press(there === '.mark-form' || there === '.aside-form' ? 'Escape' : (keys[0] ?? ''));
    await page.locator(there).waitFor({ state: 'detached' });
  }
  await page.locator('button.corrected').focus();
  await page.locator('.corrected-words').waitFor();
  found.push(...(await faults('corrected')));
  await page.locator('.tell').first().press('Enter');
  await page.locator('.explain').waitFor();
  found.push(...(await faults('explain')));
  await page.keyboard.press('Escape');
  expect(errors).toEqual([]);
  for (const now of [liveNow(2, { ended: true }), idleNow()]) {
    const there = now.ended ? '.look-back' : '.welcome';
    host.show(now);
    await page.locator(there).waitFor();
    found.push(...(await faults(there)));
  }
  expect(found).toEqual([]);
});
