// A call shows its pan on a phone once it is answered, in the big view by itself, and what can wait makes room; notes go on to the pan that was chosen.
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

test('while a call is not seen the sound check makes room, and a note goes on to the pan that was chosen', async () => {
  const sleep = { lid: 'sleeps', idle: 'not-known', warns: true, sentence: 'Closing the lid ends the watch.' } as const;
  const calm = liveNow(3, { sleep });
  const host = await standIn(await ensureScreenBuilt(), calm);
  const { page, errors } = await openPage(browser, host.url, PHONE);
  const check = page.getByRole('region', { name: 'Sound check' });
  await check.waitFor();
  await page.getByRole('button', { name: 'Note for Front pot' }).waitFor();
  const call = { ...alarms[0]!, ...ALARM_WORDS['low-level'], alarm: 'low-level' as const, pan: 'p2' };
  host.show({ ...calm, alarms: [call] });
  await check.waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Note for Front pot' }).waitFor();
  await page.keyboard.press('t');
  await expect.poll(() => page.locator('.mark-form h2').innerText()).toContain('Front pot');
  await page.keyboard.press('Escape');
  await page.evaluate('scrollTo(0, 0)');
  const [card, dock] = await Promise.all(['.card', '.dock'].map((name) => page.locator(name).first().boundingBox()));
  expect(card!.y + 100).toBeLessThan(dock!.y);
  host.show({ ...calm, alarms: [{ ...call, answered: true }] });
  await check.waitFor();
  await page.getByRole('button', { name: 'Note for Front pot' }).waitFor();
  await page.locator('.card[data-pan=p2] .card-name').click();
  await page.getByRole('button', { name: 'Note for Back pot' }).waitFor();
  expect(errors).toEqual([]);
  await page.context().close();
  await host.close();
});

test('a note’s form shows which pan it is for, marks the one that called, and goes over to it with what was typed', async () => {
  const calm = liveNow(3);
  const call = { ...alarms[0]!, ...ALARM_WORDS['low-level'], alarm: 'low-level' as const, pan: 'p2', answered: true };
  const host = await standIn(await ensureScreenBuilt(), { ...calm, alarms: [call] });
  const { page, errors } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').first().waitFor();
  await page.keyboard.press('t');
  const pans = page.getByRole('group', { name: 'Which pan?' }).getByRole('button');
  const pressed = (): Promise<(string | null)[]> =>
    pans.evaluateAll((all) => all.map((each) => each.getAttribute('aria-pressed')));
  // The call has not moved the choice under the hand; that it was of another pan stands on that one's button.
  expect(await pressed()).toEqual(['true', 'false', 'false']);
  const texts = await pans.evaluateAll((all) => all.map((each) => each.textContent));
  expect(texts.map((text) => text.includes('Running low'))).toEqual([false, true, false]);
  await page.getByLabel('Poured in').fill('4');
  await pans.nth(1).click();
  await expect.poll(() => page.locator('.mark-form h2').innerText()).toContain('Back pot');
  expect(await page.getByLabel('Poured in').inputValue()).toBe('4');
  const box = (await pans.first().boundingBox())!;
  expect(box.height).toBeGreaterThanOrEqual(48);
  await page.getByRole('button', { name: 'Note it' }).click();
  await expect
    .poll(() => host.heard.flatMap((each) => ('mark' in each ? [each.mark] : [])))
    .toMatchObject([{ kind: 'top-up', pan: 'p2', litres: 4 }]);
  await page.locator('.mark-form').waitFor({ state: 'detached' });
  // Where no field has the keyboard, the keys of the cards choose it, too.
  await page.keyboard.press('f');
  await page.locator('.mark-form').waitFor();
  await page.keyboard.press('3');
  await expect.poll(pressed).toEqual(['false', 'false', 'true']);
  // What was asked about one pan is not answered for another.
  await page.keyboard.press('Escape');
  await page.keyboard.press('t');
  await page.getByLabel('Poured in').fill('900');
  await page.getByRole('button', { name: 'Note it' }).click();
  await page.locator('.mark-doubt').waitFor();
  await pans.first().click();
  await page.locator('.mark-doubt').waitFor({ state: 'detached' });
  expect(errors).toEqual([]);
  await page.context().close();
  await host.close();
});

test('who answers a call sees its pan, however far down it stands; while a note is typed the page stays where it is', async () => {
  const calm = liveNow(4);
  const host = await standIn(await ensureScreenBuilt(), calm);
  const { page } = await openPage(browser, host.url, PHONE);
  const call = { ...alarms[0]!, ...ALARM_WORDS['low-level'], alarm: 'low-level' as const, pan: 'p4', since: calm.t };
  const name = page.locator('.card[data-pan=p4] .card-name');
  const isInSight = async (): Promise<boolean> => {
    const [top, box, bottom] = await Promise.all(
      [page.locator('.top'), name, page.locator('.bottom')].map((place) => place.boundingBox()),
    );
    return box!.y >= top!.y + top!.height && box!.y + box!.height <= bottom!.y;
  };
  await name.waitFor();
  await page.keyboard.press('n');
  await page.locator('.mark-form').waitFor();
  host.show({ ...calm, alarms: [call] });
  await page.locator('.hurry-seen').click();
  await expect.poll(() => host.heard.some((each) => 'answer' in each)).toBe(true);
  expect(await isInSight()).toBe(false);
  await page.keyboard.press('Escape');
  host.show({ ...calm, alarms: [{ ...call, since: calm.t + 1 }] });
  await page.locator('.alarm-title').waitFor();
  await page.evaluate('scrollTo(0, 0)');
  expect(await isInSight()).toBe(false);
  await page.locator('.hurry-seen').click();
  await expect.poll(isInSight).toBe(true);
  await page.context().close();
  await host.close();
});

test('in the big view the pan that calls comes into sight by itself; elsewhere a call moves nothing', async () => {
  const calm = liveNow(4, { alarms: [] });
  const host = await standIn(await ensureScreenBuilt(), calm);
  const { page } = await openPage(browser, host.url, LAPTOP);
  const number = page.locator('.card[data-pan=p3] .big');
  const call = { ...alarms[0]!, ...ALARM_WORDS['low-level'], alarm: 'low-level' as const, pan: 'p3', since: calm.t };
  const isInSight = async (): Promise<boolean> => {
    const [top, box, bottom] = await Promise.all(
      [page.locator('.top'), number, page.locator('.bottom')].map((place) => place.boundingBox()),
    );
    return box!.y >= top!.y + top!.height && box!.y + box!.height <= bottom!.y;
  };
  await number.waitFor();
  host.show({ ...calm, alarms: [call] });
  await page.locator('.alarm-title').waitFor();
  expect(await page.evaluate('scrollY')).toBe(0);
  // Who turns to the big view while it calls sees its pan, and so does who looks at it when the next call comes.
  await page.locator('.big-view-button').click();
  await page.locator('.cards-big').waitFor();
  await expect.poll(isInSight).toBe(true);
  host.show(calm);
  await page.locator('.alarm-title').waitFor({ state: 'detached' });
  await page.evaluate('scrollTo(0, 0)');
  host.show({ ...calm, alarms: [{ ...call, since: calm.t + 1 }] });
  await page.locator('.alarm-title').waitFor();
  await expect.poll(isInSight).toBe(true);
  await page.context().close();
  await host.close();
});

test('a call that comes over a note that is being filled in covers nothing of it', async () => {
  const calm = liveNow(4, { alarms: [] });
  const host = await standIn(await ensureScreenBuilt(), calm);
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').first().waitFor();
  await page.keyboard.press('t');
  const note = page.locator('.mark-form button[type=submit]');
  await note.waitFor();
  const calls = (['scorch-risk', 'near-finish', 'low-level', 'probe-suspect'] as const).map((alarm, place) => ({
    ...{ ...alarms[0]!, ...ALARM_WORDS[alarm], alarm, pan: `p${place + 1}` },
    since: calm.t - place,
  }));
  host.show({ ...calm, alarms: calls, sound: { priority: 'high', silencedUntil: null } });
  await page.locator('.alarm-todo').first().waitFor();
  // One row of calls leaves the form its room: what it asks, and the press that notes it, are both in sight.
  await expect
    .poll(async () => {
      const [top, head, press, bottom] = await Promise.all(
        [page.locator('.top'), page.locator('.mark-form h2'), note, page.locator('.bottom')].map((place) =>
          place.boundingBox(),
        ),
      );
      return head!.y >= top!.y + top!.height && press!.y + press!.height <= bottom!.y;
    })
    .toBe(true);
  expect(await page.locator('.dock .alarm').count()).toBe(1);
  await page.context().close();
  await host.close();
});

test('with four pans beside each other, what a pan that calls does stands clear of the sentence on its probe', async () => {
  const calm = liveNow(4);
  const host = await standIn(await ensureScreenBuilt(), { ...calm, alarms: [{ ...alarms[0]!, pan: 'p1' }] });
  const { page } = await openPage(browser, host.url, LAPTOP);
  const foot = page.locator('.card[data-pan=p1] .probe span');
  await foot.nth(1).waitFor();
  const under = await foot.evaluateAll(([sentence, stage]) => {
    sentence!.textContent =
      'Lu à 19:58, à l’instant. Vous avez tapé 103,0 °C ; d’après tout ce qui a été noté, c’est 102,8 °C.';
    stage!.textContent = 'Presque du sirop';
    return stage!.getBoundingClientRect().top - sentence!.getBoundingClientRect().bottom;
  });
  expect(under).toBeGreaterThanOrEqual(0);
  const gap = await foot.evaluateAll(([sentence, stage]) => {
    sentence!.textContent = 'La sonde fonctionne';
    stage!.textContent = 'Bout';
    return stage!.getBoundingClientRect().left - sentence!.getBoundingClientRect().right;
  });
  expect(gap).toBeGreaterThanOrEqual(10);
  await page.context().close();
  await host.close();
});
