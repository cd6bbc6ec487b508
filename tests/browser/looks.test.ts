// How the screens look: each picture is taken again and held against the kept one; `npm run pictures` keeps them anew.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import pixelmatch from 'pixelmatch';
import type { Browser, Page } from 'playwright';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { CALLED, IDLE, RUNNING, openStage } from './scenes.ts';
import type { Scene, Stage } from './scenes.ts';

/** A pixel differs when its colour is further off than this (0 to 1, as pixelmatch measures it). */
const COLOUR_OFF = 0.2;
/** So much of a picture may differ: letters are drawn a little otherwise by another build of Chromium. */
const MOST_DIFFERENT = 0.02;
const isKeeping = process.env['PANWARDEN_KEEP_PICTURES'] === '1';
const isOurs = existsSync('/etc/debian_version');

/** The guide of the program shows some of them; the others are kept for this test alone. */
const IN_GUIDE = new Set(['pans', 'call', 'probes', 'plan', 'start', 'note', 'notebook']);

let stage: Stage;
let browser: Browser;
let page: Page;

function placeOf(name: string, language: string, theme: string): URL {
  if (theme === 'light' && IN_GUIDE.has(name))
    return new URL(`../../src/screen/help/pictures/${language}/${name}.png`, import.meta.url);
  return new URL(`looks/${language}-${theme}-${name}.png`, import.meta.url);
}

/** What part of the picture differs from the kept one; the new one is laid beside it where that is too much. */
function difference(taken: Buffer, kept: URL): number {
  if (isKeeping) {
    mkdirSync(dirname(kept.pathname), { recursive: true });
    writeFileSync(kept, taken);
    return 0;
  }
  const [now, before] = [PNG.sync.read(taken), PNG.sync.read(readFileSync(kept))];
  if (now.width !== before.width || now.height !== before.height) return 1;
  const pixels = pixelmatch(now.data, before.data, undefined, now.width, now.height, { threshold: COLOUR_OFF });
  return pixels / (now.width * now.height);
}

beforeAll(async () => {
  stage = await openStage();
  browser = await startChromium();
  ({ page } = await openPage(browser, stage.url, LAPTOP));
  await page.emulateMedia({ reducedMotion: 'reduce' });
  page.setDefaultTimeout(15_000);
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await stage?.close();
});

/** The screen once nothing on it changes any more: two pictures in a row are the same. */
async function atRest(): Promise<Buffer> {
  let before: Buffer = Buffer.alloc(0);
  for (let tries = 0; tries < 20; tries += 1) {
    const taken = await page.screenshot({
      animations: 'disabled',
      caret: 'hide',
      // Where this run keeps its notebook.
      mask: [page.locator('.page > .hint')],
    });
    if (taken.equals(before)) break;
    before = taken;
  }
  return before;
}

async function look(scenes: readonly Scene[], language: string, theme: string): Promise<string[]> {
  await stage.obeyed({ settings: { language, theme } });
  const wrong: string[] = [];
  for (const { name, go } of scenes) {
    // Away first: an address that differs by its fragment alone would keep the page as it is.
    await page.goto('about:blank');
    await page.goto(stage.url);
    await page.locator('.nav').waitFor();
    await page.evaluate('document.fonts.ready');
    await go(page);
    await page.locator('[aria-busy=true]').waitFor({ state: 'detached' });
    const taken = await atRest();
    const part = difference(taken, placeOf(name, language, theme));
    if (part > MOST_DIFFERENT) {
      writeFileSync(new URL(`looks/wrong-${language}-${theme}-${name}.png`, import.meta.url), taken);
      wrong.push(`${language} ${theme} ${name}: ${(100 * part).toFixed(1)} % differ`);
    }
  }
  return wrong;
}

/** Light in both languages, the other themes in English. */
const WAYS = [
  ['en', 'light'],
  ['fr', 'light'],
  ['en', 'dark'],
  ['en', 'contrast'],
] as const;

test.skipIf(!isOurs)(
  'before a boil, during it and at a call, in both languages and three themes',
  async () => {
    const wrong: string[] = [];
    for (const [language, theme] of WAYS) wrong.push(...(await look(IDLE, language, theme)));
    await stage.obeyed({ practice: { speed: 60 } });
    await stage.pass(25);
    await page.goto(stage.url);
    await page.locator('.hurry-seen').waitFor();
    await page.keyboard.press('s');
    await page.locator('.hurry-seen').waitFor({ state: 'detached' });
    for (const [language, theme] of WAYS) wrong.push(...(await look(RUNNING, language, theme)));
    await stage.pass(16);
    for (const [language, theme] of WAYS) wrong.push(...(await look(CALLED, language, theme)));
    expect(wrong).toEqual([]);
  },
  400_000,
);
