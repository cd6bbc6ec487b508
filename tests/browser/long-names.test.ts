// A pan's long name is read whole on its card, in a call and on a phone, in the language whose other words leave it least room.
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ALARM_WORDS } from '../../src/core/alarms/words.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, PHONE, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { alarms, liveNow } from './tarn-hollow.ts';

let browser: Browser;
beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());

const NAME = 'Chaudron de finition de l’érablière';

/** Four pans of that name, of which the second calls. */
function named(answered: boolean) {
  const now = liveNow(4);
  const pans = (now.header!.pans ?? []).map((pan) => ({ ...pan, name: NAME }));
  const call = { ...alarms[0]!, ...ALARM_WORDS['low-level'], alarm: 'low-level' as const, pan: 'p2', answered };
  return { ...now, header: { ...now.header!, pans }, alarms: [call] };
}

test.each([
  ['a laptop', LAPTOP],
  ['a phone', PHONE],
])('on %s', async (_, size) => {
  const host = await standIn(await ensureScreenBuilt(), named(false), { language: 'fr' });
  const { page } = await openPage(browser, host.url, size);
  /** Texts that are cut off, by how much they hide, px. */
  const cut = (): Promise<string[]> =>
    page
      .locator('.card-called b, .alarm-title, .calm-words')
      .evaluateAll((all) =>
        all
          .filter((each) => each.scrollHeight > each.clientHeight + 2 || each.scrollWidth > each.clientWidth + 2)
          .map((each) => `${each.className} ${each.scrollWidth}×${each.scrollHeight}`),
      );
  await page.locator('.alarm-title').waitFor();
  expect(await page.locator('.card-called b').allInnerTexts()).toEqual(Array(4).fill(NAME));
  expect(await cut()).toEqual([]);
  host.show(named(true));
  await page.locator('.calm-words').waitFor();
  expect(await cut()).toEqual([]);
  await page.context().close();
  await host.close();
});
