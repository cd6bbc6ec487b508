// What a phone shows of the calls and of each pan: what still calls first, what is over in one line, and a pan off the fire as such.
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Now } from '../../src/protocol/messages.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { PHONE, openPage, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { alarms, idleNow, liveNow } from './tarn-hollow.ts';

let browser: Browser;

beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());

/** A phone's page on what the host says. */
async function phoneOn(now: Now) {
  const host = await standIn(await ensureScreenBuilt(), now);
  const { page, errors } = await openPage(browser, new URL('phone.html', host.url).href, PHONE);
  await page.locator('.phone-head').waitFor();
  const close = async (): Promise<void> => {
    expect(errors).toEqual([]);
    await page.context().close();
    await host.close();
  };
  return { page, host, close };
}

test('of a boil that is over it says so, when it ended and what came of it, and nothing of it as if it went on', async () => {
  const now = liveNow(3);
  const { page, host, close } = await phoneOn({ ...now, ended: true, endedAt: now.t - 12 * 60_000, syrup: null });
  await page.getByText('Ended at 12:30, after 5 h 00 min').waitFor();
  await page.getByText('How much syrup came of it is not known yet').waitFor();
  expect(await page.locator('.phone-next').innerText()).toBe('This boil is over');
  expect(await page.locator('.phone-pan').count()).toBe(0);
  expect(await page.getByRole('button', { name: 'Wall view' }).count()).toBe(0);
  host.show({ ...now, ended: true, endedAt: now.t, syrup: { litres: 1.42, brix: 66.9 } });
  await page.getByText(/1\.42\sL of 66\.9\s°Bx/).waitFor();
  await close();
});

test('while no boil runs it says that the pans come up by themselves', async () => {
  const { page, host, close } = await phoneOn(idleNow());
  await page.getByText('The pans come up here by themselves').waitFor();
  host.show(liveNow(2));
  await page.locator('.phone-pan').nth(1).waitFor();
  await close();
});

const [calling] = alarms;
const over = ['p1', 'p2', 'p3'].map((pan, place) => ({
  ...calling!,
  pan,
  condition: 'over' as const,
  since: 1000 * place,
}));

test('calls that are over take one line, under what still calls', async () => {
  const { page, host, close } = await phoneOn(liveNow(3, { alarms: [...over, calling!] }));
  await page.locator('.phone-call').waitFor();
  expect(await page.locator('.phone-call').count()).toBe(1);
  expect(await page.locator('.phone-over').innerText()).toMatch(/^3 calls are over, and nobody has seen them/);
  host.show(liveNow(3, { alarms: over }));
  await page.locator('.phone-call').waitFor({ state: 'detached' });
  expect((await page.locator('.phone-calls').boundingBox())?.height ?? 999).toBeLessThan(100);
  await close();
});

test('a pan off the fire shows its temperature and no rise, and each bar has its words', async () => {
  const now = liveNow(2);
  const readings = now.readings.map((reading, place) =>
    place === 0 ? { ...reading, stage: 'off' as const, temperature_c: 40 } : reading,
  );
  const { page, close } = await phoneOn({ ...now, readings });
  const [off, on] = [page.locator('.phone-pan').nth(0), page.locator('.phone-pan').nth(1)];
  expect(await off.locator('.phone-big').innerText()).toBe('40.0°C');
  expect(await off.innerText()).not.toContain('boiling water');
  expect(await on.locator('.phone-big').innerText()).toMatch(/^[+−]?\d+(\.\d)?°$/);
  expect(await on.locator('.phone-bar-words').innerText()).toMatch(/water[\s\S]*done[\s\S]*burns/);
  await close();
});
