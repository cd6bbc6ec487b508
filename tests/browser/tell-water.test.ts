// While nobody has told how hot water boils here, three presses over the pans lead to where each of them says, the height of the place too.
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { liveNow } from './tarn-hollow.ts';

let browser: Browser;
beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());

test('each way opens its own form, the height alone is kept without a pressure, and once it is known they are gone', async () => {
  const now = liveNow(2);
  const host = await standIn(await ensureScreenBuilt(), {
    ...now,
    water: { celsius: null, plusMinus: null, from: null },
  });
  const { page, errors } = await openPage(browser, host.url, LAPTOP);
  const ways = page.getByRole('region', { name: 'How hot water boils here:' });
  const head = page.locator('.mark-form h2');
  for (const [way, form] of [
    ['Check in boiling water', 'Check in boiling water'],
    ['Note the air pressure', 'Air pressure'],
  ] as const) {
    await ways.getByRole('button', { name: way }).click();
    await expect.poll(() => head.innerText()).toBe(`Front pot: ${form}`);
    await page.keyboard.press('Escape');
  }
  await ways.getByRole('button', { name: 'Type the height of the place' }).click();
  await page.getByLabel('Height of this place over the sea').fill('450');
  await page.keyboard.press('Enter');
  await expect
    .poll(() => host.heard.filter((each) => 'set' in each))
    .toMatchObject([{ set: { site: { altitude_m: 450 } } }]);
  await page.getByText('The height of the place is 450').waitFor();
  await head.waitFor({ state: 'detached' });
  expect(host.heard.filter((each) => 'mark' in each)).toEqual([]);
  host.show(now);
  await ways.waitFor({ state: 'detached' });
  expect(errors).toEqual([]);
  await page.context().close();
  await host.close();
});
