// On a page as narrow as a phone a call shows its pan and has the notes go to it; what can wait makes room.
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ALARM_WORDS } from '../../src/core/alarms/words.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { openPage, PHONE, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { alarms, liveNow } from './tarn-hollow.ts';

let browser: Browser;
beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());

test('while a call is not seen the sound check makes room, and a note goes to the pan that calls', async () => {
  const sleep = { lid: 'sleeps', idle: 'not-known', warns: true, sentence: 'Closing the lid ends the watch.' } as const;
  const calm = liveNow(3, { sleep });
  const host = await standIn(await ensureScreenBuilt(), calm);
  const { page, errors } = await openPage(browser, host.url, PHONE);
  const check = page.getByRole('region', { name: 'Sound check' });
  await check.waitFor();
  await page.getByRole('button', { name: 'Note for Front pot' }).waitFor();
  const call = { ...alarms[0]!, ...ALARM_WORDS['low-level'], alarm: 'low-level' as const, pan: 'p2' };
  host.show({ ...calm, alarms: [call] });
  await page.getByRole('button', { name: 'Note for Back pot' }).waitFor();
  await check.waitFor({ state: 'detached' });
  const [card, dock] = await Promise.all(['.card', '.dock'].map((name) => page.locator(name).first().boundingBox()));
  expect(card!.y + 100).toBeLessThan(dock!.y);
  host.show({ ...calm, alarms: [{ ...call, answered: true }] });
  await check.waitFor();
  await page.getByRole('button', { name: 'Note for Back pot' }).waitFor();
  expect(errors).toEqual([]);
  await page.context().close();
  await host.close();
});
