// What axe cannot see, on every view of the router: reflow at 400 %, size of targets, focus that is seen and not covered, motion that is left out, and charts with their numbers in a table.
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { ROUTES } from '../../src/screen/shell/routes.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, goToView, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import type { StandIn } from './stand-in-host.ts';
import { alarms, liveNow } from './tarn-hollow.ts';
import { replayedNow } from './tarn-past.ts';

/** 1280 by 1024 at 400 %: what WCAG 2.2, 1.4.10, asks for. */
const AT_400_PERCENT = { width: 320, height: 256 };
/** 1366 by 768 at 200 %. */
const AT_200_PERCENT = { width: 683, height: 384 };
/** WCAG 2.2, 2.5.8: CSS pixels that a target has at least each way, unless it stands within a sentence. */
const LEAST_TARGET = 24;

let browser: Browser;
let host: StandIn;
let page: Page;
let errors: string[];
const calling = liveNow(4, { alarms, sound: { priority: 'high', silencedUntil: null } });
const VIEWS = [...ROUTES, 'probes/setup', 'help/numbers', 'help/cautions'];

beforeAll(async () => {
  browser = await startChromium();
  host = await standIn(await ensureScreenBuilt(), calling);
  ({ page, errors } = await openPage(browser, host.url, LAPTOP));
  await page.locator('.dock').waitFor();
  host.show(replayedNow);
  host.show(calling);
  await page.locator('.nav').getByText('Replay').waitFor();
});
afterAll(async () => {
  await browser?.close();
  await host?.close();
});
beforeEach(() => page.setViewportSize(LAPTOP));

/** What the host is asked for when a view opens, and what stands above buttons once it has told. */
const COMES_LATE: Readonly<Record<string, string>> = { start: '.check-due', probes: '.check-due' };

async function goTo(view: string): Promise<void> {
  await goToView(page, view);
  await page.locator('main h1').first().waitFor({ state: 'attached' });
  // What is still to come would move what has the focus.
  await page.locator('[aria-busy=true]').waitFor({ state: 'detached' });
  const late = COMES_LATE[view];
  if (late !== undefined) await page.locator(late).waitFor();
}

describe.each([
  ['200 %', AT_200_PERCENT],
  ['400 %', AT_400_PERCENT],
])('at %s', (_name, size) => {
  test('nothing needs to be scrolled sideways, but what needs two dimensions', async () => {
    await page.setViewportSize(size);
    const found: string[] = [];
    for (const view of VIEWS) {
      await goTo(view);
      const wide = await page.evaluate<string[]>(`(() => {
        const width = document.documentElement.clientWidth;
        if (document.documentElement.scrollWidth <= width) return [];
        return [...document.querySelectorAll('body *')]
          .filter((each) => each.getBoundingClientRect().right > width + 1 && each.children.length === 0)
          .slice(0, 3)
          .map((each) => each.tagName + '.' + each.className + ' ' + Math.round(each.getBoundingClientRect().right));
      })()`);
      found.push(...wide.map((each) => `${view}: ${each}`));
    }
    expect(found).toEqual([]);
  });

  test('the view itself can be seen beside what stays at the top and the foot', async () => {
    await page.setViewportSize(size);
    const found: string[] = [];
    for (const view of VIEWS) {
      await goTo(view);
      const room = await page.evaluate<number>(`(() => {
        scrollTo(0, document.documentElement.scrollHeight);
        const last = [...document.querySelectorAll('main *')].filter((each) => each.getClientRects().length > 0).at(-1);
        if (!last) return 0;
        const box = last.getBoundingClientRect();
        const seen = document.elementFromPoint(Math.min(innerWidth - 2, box.left + 2), Math.min(innerHeight - 2, Math.max(0, box.bottom - 2)));
        return seen === null || seen.closest('.bottom') === null || last.contains(seen) ? 1 : 0;
      })()`);
      if (room === 0) found.push(`${view}: the end of the view stays covered`);
    }
    expect(found).toEqual([]);
  });
});

test('every target is 24 px each way at least, or stands within a sentence or apart from others', async () => {
  const found: string[] = [];
  for (const view of VIEWS) {
    await goTo(view);
    const small = await page.evaluate<string[]>(`(() => {
      const boxes = [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [role=button]')]
        .filter((each) => each.getClientRects().length > 0 && !each.disabled)
        .map((each) => {
          const label = each.closest('label');
          const own = each.getBoundingClientRect();
          const box = /^(radio|checkbox)$/.test(each.type ?? '') && label ? label.getBoundingClientRect() : own;
          return { each, box };
        });
      const inSentence = (each) => each.tagName === 'A' && getComputedStyle(each).display === 'inline' && each.closest('p, li, dd, td') !== null;
      const small = boxes.filter(({ each, box }) => (box.width < ${LEAST_TARGET} || box.height < ${LEAST_TARGET}) && !inSentence(each));
      // A small target is right when a circle of 24 px about it touches no other target, nor another one's circle.
      const far = (a, b) => {
        const x = a.left + a.width / 2, y = a.top + a.height / 2;
        const dx = Math.max(b.left - x, 0, x - b.right), dy = Math.max(b.top - y, 0, y - b.bottom);
        return Math.hypot(dx, dy) >= ${LEAST_TARGET} / 2;
      };
      return small
        .filter(({ each, box }) => boxes.some((other) => other.each !== each && !each.contains(other.each) && !other.each.contains(each) && !far(box, other.box)))
        .map(({ each, box }) => each.tagName + ' ' + (each.textContent || each.getAttribute('aria-label') || each.className).trim().slice(0, 30) + ' ' + Math.round(box.width) + '×' + Math.round(box.height));
    })()`);
    found.push(...small.map((each) => `${view}: ${each}`));
  }
  expect(found).toEqual([]);
});

test('by Tab every view is gone through once: each stop is seen, ringed, and not covered', async () => {
  const found: string[] = [];
  for (const view of VIEWS) {
    await goTo(view);
    await page.evaluate("document.querySelector('.skip')?.focus(); scrollTo(0, 0)");
    const seen = new Set<string>();
    for (let stop = 0; stop < 150; stop += 1) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate<{ name: string; id: string; ring: boolean; covered: boolean } | null>(`(() => {
        const each = document.activeElement;
        if (each === null || each === document.body) return null;
        window.stops ??= new WeakMap(); window.count ??= 0;
        if (!window.stops.has(each)) window.stops.set(each, String(window.count++));
        const box = each.getBoundingClientRect();
        const style = getComputedStyle(each);
        const x = Math.min(Math.max(box.left + box.width / 2, 0), innerWidth - 1);
        const y = Math.min(Math.max(box.top + box.height / 2, 0), innerHeight - 1);
        const top = document.elementFromPoint(x, y);
        const label = each.closest('label');
        return {
          id: window.stops.get(each),
          name: each.tagName + ' ' + (each.getAttribute('aria-label') || each.textContent || each.className).trim().slice(0, 30),
          ring: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2,
          covered: top === null || !(each.contains(top) || top.contains(each) || (label !== null && label.contains(top))),
        };
      })()`);
      if (at === null || seen.has(at.id)) break;
      seen.add(at.id);
      if (!at.ring) found.push(`${view}: ${at.name} shows no ring`);
      if (at.covered) found.push(`${view}: ${at.name} is covered`);
    }
    if (seen.size < 5) found.push(`${view}: only ${seen.size} stops`);
  }
  expect(found).toEqual([]);
}, 240_000);

test('the way between views comes first, after what passes over it, and the focus goes to the heading of what comes', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.nav').waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  const focused = (): Promise<string> =>
    page.evaluate('document.activeElement?.tagName + " " + document.activeElement?.textContent');
  expect(await focused()).toBe('A Pans');
  for (const view of ['Notebook', 'Plan', 'Probes']) {
    await page.keyboard.press('Tab');
    expect(await focused()).toBe(`A ${view}`);
  }
  await page.keyboard.press('Enter');
  await page.locator('h1', { hasText: 'Probes' }).waitFor();
  await expect.poll(focused).toBe('H1 Probes');
  await page.locator('.skip').focus();
  await page.keyboard.press('Enter');
  expect(await focused()).toBe('H1 Probes');
  await page.locator('.nav').getByText('Help').click();
  await expect.poll(focused).toBe('H1 Help');
  await page.locator('main nav a').nth(1).focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.url()).toContain('help/');
  expect(await focused()).toMatch(/^A /);
  await page.context().close();
});

test('with reduced motion nothing moves', async () => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const moving: string[] = [];
  for (const view of VIEWS) {
    await goTo(view);
    const names = await page.evaluate<string[]>(
      `document.getAnimations().filter((each) => each.playState === 'running').map((each) => each.animationName ?? each.transitionProperty)`,
    );
    moving.push(...names.map((name) => `${view}: ${name}`));
  }
  await page.emulateMedia({ reducedMotion: null });
  expect(moving).toEqual([]);
});

test('where the system forces its colours, the pan on its bar and the state of a call can still be told', async () => {
  await page.emulateMedia({ forcedColors: 'active' });
  await goTo('pans');
  const lined = await page.evaluate<Record<string, boolean>>(`(() => {
    const ink = getComputedStyle(document.body).color;
    const isLined = (selector) => {
      const style = getComputedStyle(document.querySelector(selector));
      return ['Left', 'Right'].some((side) => parseFloat(style['border' + side + 'Width']) > 0 && style['border' + side + 'Color'] === ink)
        || parseFloat(style.outlineWidth) > 0 && style.outlineStyle !== 'none';
    };
    return Object.fromEntries(['.bar-track', '.bar-pan', '.bar-done', '.bar-burns'].map((each) => [each, isLined(each)]));
  })()`);
  const word = await page.locator('.dock').innerText();
  await page.emulateMedia({ forcedColors: null });
  expect(lined).toEqual({ '.bar-track': true, '.bar-pan': true, '.bar-done': true, '.bar-burns': true });
  expect(word).toMatch(/Now|Soon/u);
});

test('every chart has a name, and its numbers in a table or a sentence', async () => {
  const found: string[] = [];
  for (const view of VIEWS) {
    await goTo(view);
    const bare = await page.evaluate<string[]>(`[...document.querySelectorAll('canvas, [role=img]')]
      .filter((each) => each.getClientRects().length > 0)
      .map((each) => each.closest('[role=img]') ?? each)
      .filter((each) => !(each.getAttribute('aria-label') || each.getAttribute('aria-labelledby')))
      .map((each) => each.tagName + '.' + each.className)`);
    found.push(...bare.map((each) => `${view}: ${each} has no name`));
  }
  expect(found).toEqual([]);
  expect(errors).toEqual([]);
});

/** What has the focus, as somebody would name it. */
const focused = (): Promise<string> =>
  page.evaluate<string>(`(() => {
    const at = document.activeElement;
    const pans = [...document.querySelectorAll('fieldset.pan-fields')];
    const pan = pans.indexOf(at.closest('fieldset.pan-fields'));
    return at.tagName + (pan < 0 ? '' : ' ' + (pan + 1) + ' of ' + pans.length) + ' ' + (at.matches('input') ? '' : at.textContent);
  })()`);

test.each(['start', 'plan'])('a pan that is added by keys is typed into at once (%s)', async (view) => {
  await goTo(view);
  const pans = await page.locator('fieldset.pan-fields').count();
  await page.getByRole('button', { name: '+ Another pan' }).press('Enter');
  await page.locator('fieldset.pan-fields').nth(pans).waitFor();
  await expect.poll(focused).toBe(`INPUT ${pans + 1} of ${pans + 1} `);
});

test('what asks once more has the focus on the answer that changes nothing, and its button has it no more', async () => {
  await goTo('pans');
  await page.getByRole('button', { name: 'End this boil' }).press('Enter');
  await expect.poll(focused).toBe('BUTTON No, go on');
  await page.keyboard.press('Enter');
  await expect.poll(focused).toMatch(/^H[12] /u);
});

test('where the pans come in place of what was pressed, their heading has the focus', async () => {
  await goTo('pans');
  host.show({ ...calling, mode: 'idle', header: null, boil: null, readings: [], alarms: [] });
  await page.getByRole('button', { name: 'practice' }).first().focus();
  host.show(calling);
  await page.locator('.cards').waitFor();
  await expect.poll(focused).toBe('H1 Pans');
});

test('a call is heard before anybody can say that it was heard', async () => {
  await goTo('start');
  expect(await page.getByLabel('I heard it').isDisabled()).toBe(true);
  await page.getByText('Nobody has said yet that the sound is heard').waitFor();
});

test('a note that is opened by its key leaves the page where it stood; its presses come first where they are meant', async () => {
  await goTo('pans');
  await page.evaluate('scrollTo(0, 0)');
  await page.keyboard.press('p');
  await page.locator('.mark-form').waitFor();
  await expect.poll(() => page.evaluate<number>('scrollY')).toBeGreaterThan(0);
  await page.keyboard.press('Tab');
  expect(await page.locator(':focus').textContent()).toMatch(/^All into/u);
  await page.keyboard.press('Escape');
  await page.locator('.mark-kinds').waitFor();
  await expect.poll(() => page.evaluate<number>('scrollY')).toBe(0);
  expect(await page.locator(':focus').getAttribute('class')).toContain('card-name');
});
