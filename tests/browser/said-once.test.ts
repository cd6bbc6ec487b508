// A card says what is to be done once, and with what it takes.
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { liveNow } from './tarn-hollow.ts';

let browser: Browser;
beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());

const times = (words: RegExp, text: string): number => [...text.matchAll(words)].length;

test('when to top up stands once on a card, with how much and how often; that it has no probe, too', async () => {
  const now = liveNow(2);
  const topUp = { brix: 3, stage: 'boiling', finish_in_s: 9000, top_up_in_s: 1200, litres: 5 } as const;
  const unread = { temperature_c: null, rise_c: null, probe: null, stage: 'unknown', litres: 5 } as const;
  const [first, second] = [now.readings[0]!, now.readings[1]!];
  const readings = [
    { ...second, pan: first.pan, ...unread, brix: null, finish_in_s: null, top_up_in_s: null },
    { ...second, ...topUp },
  ];
  const advice = now.advice.map((each) => ({ ...each, pan: second.pan, shallow: null }));
  const marks: typeof now.marks = [];
  const host = await standIn(await ensureScreenBuilt(), {
    ...now,
    ...{ readings, advice, marks, pours: [], alarms: [], lastHeats: [] },
  });
  const { page } = await openPage(browser, host.url, LAPTOP);
  const told = page.locator(`.card[data-pan=${second.pan}]`);
  await told.getByText(/Top up by/u).waitFor();
  const text = await told.innerText();
  expect(times(/Top up by/gu, text)).toBe(1);
  expect(text).toMatch(/up to 1\.3\sL at once, about every 15\smin/u);
  const blind = await page.locator(`.card[data-pan=${first.pan}]`).innerText();
  expect(times(/no probe/giu, blind)).toBe(1);
  expect(blind).toContain('Read its thermometer.');
  await page.context().close();
  await host.close();
});
