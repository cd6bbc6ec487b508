// How the screens look: each picture is taken again and held against the kept one; `npm run pictures` keeps them anew.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import pixelmatch from 'pixelmatch';
import type { Browser, Page } from 'playwright';
import { PNG } from 'pngjs';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { languages } from '../../src/host/languages.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { CALLED, IDLE, NOW, RUNNING, openStage } from './scenes.ts';
import type { Scene, Stage } from './scenes.ts';

/** A pixel differs when its colour is further off than this (0 to 1, as pixelmatch measures it). */
const COLOUR_OFF = 0.2;
/** So much of a picture may differ: letters are drawn a little otherwise by another build of Chromium. */
const MOST_DIFFERENT = 0.02;
const isKeeping = process.env['PANWARDEN_KEEP_PICTURES'] === '1';
const isOurs = existsSync('/etc/debian_version');

const NAMES = ['pans.practice.boil', 'pans.practice.front', 'pans.practice.middle', 'pans.practice.birch'] as const;

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

/** What part of the picture differs from the kept one. */
function difference(taken: Buffer, kept: Buffer): number {
  // The same file is the same picture: most are where Chromium is the one that they were taken with.
  if (taken.equals(kept)) return 0;
  const [now, before] = [PNG.sync.read(taken), PNG.sync.read(kept)];
  if (now.width !== before.width || now.height !== before.height) return 1;
  const pixels = pixelmatch(now.data, before.data, undefined, now.width, now.height, { threshold: COLOUR_OFF });
  return pixels / (now.width * now.height);
}

beforeAll(async () => {
  browser = await startChromium();
}, 120_000);

afterEach(async () => {
  await page?.close();
  await stage?.close();
});

afterAll(() => browser?.close());

/** The screen once nothing on it changes any more: it is as it was kept, or two pictures in a row are the same. */
async function atRest(kept: Buffer): Promise<Buffer> {
  let before = kept;
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

/** Chooses a theme as Settings does, and waits until the page has it. */
async function chooseTheme(theme: string): Promise<void> {
  await stage.obeyed({ settings: { theme } });
  await page.locator(`html[data-theme=${theme}]`).waitFor();
}

/** Holds what the page shows against what was kept; says what is wrong with it. */
async function look(name: string, language: string, theme: string): Promise<string[]> {
  const place = placeOf(name, language, theme);
  if (isKeeping) {
    mkdirSync(dirname(place.pathname), { recursive: true });
    writeFileSync(place, await atRest(Buffer.alloc(0)));
    return [];
  }
  const kept = readFileSync(place);
  const taken = await atRest(kept);
  const part = difference(taken, kept);
  if (part <= MOST_DIFFERENT) return [];
  // What is wrong is laid beside it.
  writeFileSync(new URL(`looks/wrong-${language}-${theme}-${name}.png`, import.meta.url), taken);
  return [`${language} ${theme} ${name}: ${(100 * part).toFixed(1)} % differ`];
}

/** A language has a stage of its own, for its pots are called in it; the themes beside light are looked at in English. */
const WAYS = languages().named.map(([language]) => ({
  language,
  themes: language === 'en' ? ['light', 'dark', 'contrast'] : ['light'],
}));

async function lookAll(scenes: readonly Scene[], { language, themes }: (typeof WAYS)[number]): Promise<string[]> {
  await stage.obeyed({ settings: { language } });
  // Away first: an address that differs by its fragment alone would keep the page as it is.
  await page.goto('about:blank');
  await page.goto(stage.url);
  await page.locator('.nav').waitFor();
  await page.evaluate('document.fonts.ready');
  const wrong: string[] = [];
  for (const { name, go } of scenes) {
    await go(page);
    await page.locator('[aria-busy=true]').waitFor({ state: 'detached' });
    for (const theme of themes) {
      await chooseTheme(theme);
      wrong.push(...(await look(name, language, theme)));
    }
    await chooseTheme('light');
  }
  return wrong;
}

test.skipIf(!isOurs).each(WAYS)(
  'before a boil, during it and at a call, in $language',
  async (way) => {
    stage = await openStage(way.language);
    ({ page } = await openPage(browser, stage.url, LAPTOP));
    await page.emulateMedia({ reducedMotion: 'reduce' });
    page.setDefaultTimeout(15_000);
    await page.clock.setFixedTime(NOW);
    const wrong = await lookAll(IDLE, way);
    const [boil, front, middle, birch] = NAMES.map((key) => languages().tongue(way.language).say(key));
    await stage.obeyed({ practice: { speed: 60, names: { boil, front, middle, birch } } });
    await stage.pass(25);
    await page.goto(stage.url);
    await page.locator('.hurry-seen').waitFor();
    await page.keyboard.press('s');
    await page.locator('.hurry-seen').waitFor({ state: 'detached' });
    wrong.push(...(await lookAll(RUNNING, way)));
    await stage.pass(16);
    wrong.push(...(await lookAll(CALLED, way)));
    expect(wrong).toEqual([]);
  },
  400_000,
);
