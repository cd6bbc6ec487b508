// What a person does with the calls on the page: many at once, put aside by keyboard, the history, and a word that one was of no use.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { ALARM_WORDS } from '../../src/core/alarms/words.ts';
import { createHost } from '../../src/host/create-host.ts';
import type { Host } from '../../src/host/host.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import type { Now } from '../../src/protocol/messages.ts';
import { HandClock } from '../host/hand-clock.ts';
import { LAPTOP, PHONE, openPage, startChromium, styleOf } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { alarms, flood, liveNow } from './tarn-hollow.ts';

let browser: Browser;
const closing: (() => Promise<unknown>)[] = [];

beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});

/** A page on a real host with one pot at Tarn Hollow, our invention, whose reminder has come. */
async function reminded(): Promise<{ page: Page; errors: string[]; machine: HandClock; host: Host }> {
  const folder = await mkdtemp(join(tmpdir(), 'tarn-hollow-'));
  closing.push(() => rm(folder, { recursive: true, force: true }));
  const machine = new HandClock();
  const host = await createHost({ folder, machine });
  closing.push(() => host.close());
  const setup = { name: 'Tarn Hollow, invented', site: { altitude_m: 640 }, pans: [{ id: 'p1', name: 'Front pot' }] };
  for (const command of [{ start: setup }, { mark: { kind: 'remind', text: 'Skim Front pot', seconds: 5 } }]) {
    const answer = await host.command({ ref: 'r', ...command });
    if (!answer.ok) throw new Error(answer.why);
  }
  machine.run(6000);
  const served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  closing.push(() => served.close());
  const { page, errors } = await openPage(browser, served.url, LAPTOP);
  closing.push(() => page.context().close());
  return { page, errors, machine, host };
}

test('a call is put aside by two keys, counted, taken up again, and told in the history', async () => {
  const { page, errors, machine } = await reminded();
  await page.getByText('Reminder: Skim Front pot').first().waitFor();
  await page.keyboard.press('a');
  await expect.poll(() => page.locator(':focus').innerText()).toBe('5\u00a0min');
  await page.keyboard.press('Enter');
  await page.locator('.dock-calm', { hasText: '1 put aside' }).waitFor();
  const row = page.locator('.history li');
  await expect.poll(() => row.innerText()).toContain('put aside');
  await page.locator('.dock-calm > details > summary').press('Enter');
  const away = page.locator('.dock .alarm');
  expect(await away.innerText()).toMatch(/comes back \d\d:\d\d, “Not just now”/);
  await page.getByRole('button', { name: 'Take it up again' }).press('Enter');
  // The press may reach the host after a second has passed there; a hundred of them are still well before it comes back by itself.
  const isBack = (): Promise<number> => (machine.run(1000), page.locator('.hurry-seen:enabled').count());
  await expect.poll(isBack, { interval: 200 }).toBe(1);
  await page.keyboard.press('s');
  await expect.poll(() => row.innerText()).toContain('seen after');
  machine.run(1000);
  await page.locator('.dock').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'This was no use: Reminder: Skim Front pot' }).press('Enter');
  await row.getByText('of no use').waitFor();
  await page.getByRole('button', { name: 'Take back: Reminder: Skim Front pot was no use' }).press('Enter');
  await row.getByText('of no use').waitFor({ state: 'detached' });
  expect(errors).toEqual([]);
});

test('after the boil a word that a call was of no use goes on its page, is counted, and can be taken back', async () => {
  const { page, errors, host } = await reminded();
  await page.locator('.history li', { hasText: 'Reminder: Skim Front pot' }).waitFor();
  await host.command({ ref: 'e', end: true });
  await page.locator('.look-back').waitFor();
  const counted = page.locator('.look-back div', { hasText: 'Of no use, you said' });
  expect(await counted.innerText()).toContain('none');
  await page.getByRole('button', { name: 'This was no use: Reminder: Skim Front pot' }).press('Enter');
  await expect.poll(() => counted.innerText()).toContain('1');
  const boil = (await host.command({ ref: 'b', boils: true })) as { data?: { boil: string }[] };
  const kept = () => host.command({ ref: 'p', boil_page: { boil: boil.data?.[0]?.boil ?? '' } });
  const word = { alarm: 'reminder', pan: null, port: null, raised: 5000 };
  await expect.poll(kept).toMatchObject({ data: { page: { no_use: [word] } } });
  await page.getByRole('button', { name: 'Take back: Reminder: Skim Front pot was no use' }).press('Enter');
  await expect.poll(() => counted.innerText()).toContain('none');
  await expect.poll(kept).toMatchObject({ data: { page: { no_use: [] } } });
  expect(errors).toEqual([]);
});

test('a lead that is changed in Settings holds at once for the boil that runs, and the call stays', async () => {
  const { page } = await reminded();
  await page.getByRole('link', { name: 'Settings', exact: true }).click();
  await page.getByText('A change holds at once for all pans of the boil that is running').waitFor();
  const leads = page.getByRole('region', { name: 'When you are called' });
  await leads.getByLabel('Call me when a pan is nearly syrup').selectOption('1800');
  await leads.getByText('Called about 30 min before the finish').waitFor();
  await leads.getByText('That is long: the forecast is less sure so early').waitFor();
  expect(await page.locator('.dock').innerText()).toContain('Reminder: Skim Front pot');
});

test.each([
  ['laptop', LAPTOP, 3],
  ['phone', PHONE, 1],
])('of nine calls a %s shows what fits, sorted, and opens the rest', async (_name, size, fits) => {
  const away = { ...alarms[1]!, asideUntil: 19_000_000, asideReason: 'The probe is being changed' };
  const now = liveNow(4, { alarms: [...flood, away], sound: { priority: 'high', silencedUntil: null } });
  const host = await standIn(await ensureScreenBuilt(), now);
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, size);
  closing.push(() => page.context().close());
  const rows = page.locator('.dock .alarm');
  await expect.poll(() => rows.count()).toBe(fits);
  expect(await rows.first().innerText()).toContain('Warming pan: Invented call 7');
  expect(await page.getByText('1 put aside').isVisible()).toBe(true);
  const todo = await page.locator('.alarm-full .alarm-todo').boundingBox();
  const list = await page.locator('.dock .alarms').boundingBox();
  expect((todo?.y ?? 0) + (todo?.height ?? 9999)).toBeLessThanOrEqual((list?.y ?? 0) + (list?.height ?? 0));
  await page.getByText(`${9 - fits} more`).click();
  await expect.poll(() => rows.count()).toBe(9);
  const top = (await page.locator('.dock').boundingBox())?.y ?? -1;
  expect((await page.locator('.dock .alarms').boundingBox())?.y ?? -1).toBeGreaterThanOrEqual(top);
  await page.keyboard.press('k');
  // What calls stays on top of those that were put aside: a press of "I have seen it" answers it.
  await expect.poll(() => rows.allInnerTexts()).toHaveLength(2);
  expect(await rows.first().innerText()).toContain('Warming pan: Invented call 7');
  expect(await rows.last().innerText()).toContain('“The probe is being changed”');
});

test('in French the buttons of the second and third call are whole; of rows that stand further down the list says how many', async () => {
  const names = ['scorch-risk', 'low-level', 'probe-suspect'] as const;
  const standing = names.map((alarm, place) => ({
    ...alarms[0]!,
    ...ALARM_WORDS[alarm],
    alarm,
    pan: `p${1 + place}`,
    priority: place === 0 ? ('high' as const) : ('medium' as const),
    why: 'about 9 min to 66.9 °Bx (7–12). At this heat it burns soon, if it does not burn already',
  }));
  const now = liveNow(4, { alarms: standing, sound: { priority: 'high', silencedUntil: null } });
  const host = await standIn(await ensureScreenBuilt(), now, { language: 'fr' });
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  const buttons = page.locator('.dock .alarm-answers button');
  await expect.poll(() => buttons.count()).toBe(4);
  const list = (await page.locator('.dock .alarms').boundingBox())!;
  for (const box of await Promise.all((await buttons.all()).map((button) => button.boundingBox()))) {
    expect(box!.y + box!.height).toBeLessThanOrEqual(list.y + list.height);
  }
  expect(await page.locator('.more-below').count()).toBe(0);
  await page.setViewportSize({ width: 1366, height: 520 });
  const below = page.locator('.more-below');
  expect(await below.innerText()).toMatch(/^▼ Encore [12] plus bas$/u);
  await below.click();
  await below.waitFor({ state: 'detached' });
});

test('a worse call that comes while the whole list is open and scrolled down is seen at once', async () => {
  const calling = (standing: Now['alarms']) =>
    liveNow(4, { alarms: standing, sound: { priority: 'high', silencedUntil: null } });
  const host = await standIn(await ensureScreenBuilt(), calling(flood));
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, PHONE);
  closing.push(() => page.context().close());
  await page.locator('.alarm-full').waitFor();
  await page.keyboard.press('l');
  await expect.poll(() => page.locator('.dock .alarm').count()).toBe(9);
  const list = page.locator('.dock .alarms');
  const scrolled = (): Promise<number> => list.evaluate((element) => element.scrollTop);
  await list.evaluate((element) => element.scrollTo({ top: 9999 }));
  expect(await scrolled()).toBeGreaterThan(0);
  const burns = flood.find(({ alarm }) => alarm === 'scorch-risk')!;
  host.show(calling([{ ...burns, pan: 'p4', title: 'Invented worst call', since: 0 }, ...flood]));
  await page.locator('.alarm-full', { hasText: 'Invented worst call' }).waitFor();
  await expect.poll(scrolled).toBe(0);
});

test.each([
  ['laptop', LAPTOP],
  ['phone', PHONE],
  ['small phone', { width: 360, height: 640 }],
])('while a call is being put aside on a %s, a worse one is seen whole at once', async (_name, size) => {
  const [chosen] = alarms;
  const worse = {
    ...chosen!,
    alarm: 'scorch-risk',
    title: 'About to burn',
    priority: 'high',
    since: 18_000_000,
  } as const;
  const showing = (standing: Now['alarms']) =>
    liveNow(4, { alarms: standing, sound: { priority: 'high', silencedUntil: null } });
  const host = await standIn(await ensureScreenBuilt(), showing([chosen!]));
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, size);
  closing.push(() => page.context().close());
  await page.locator('.alarm-full').waitFor();
  await page.keyboard.press('a');
  const form = page.locator('.aside-form');
  await form.waitFor();
  expect(await page.locator('.dock .alarm').count()).toBe(0);
  host.show(showing([chosen!, worse]));
  const todo = page.locator('.alarm-full', { hasText: 'About to burn' }).locator('.alarm-todo');
  await todo.waitFor();
  const list = await page.locator('.dock .alarms').boundingBox();
  const box = await todo.boundingBox();
  expect((box?.y ?? 0) + (box?.height ?? 9999)).toBeLessThanOrEqual((list?.y ?? 0) + (list?.height ?? 0));
  expect(await form.innerText()).toContain(chosen!.title);
  host.show(showing([{ ...chosen!, condition: 'over' }, worse]));
  await form.waitFor({ state: 'detached' });
});

test('what was seen and still stands is named, so that a count is not taken for what the last press saw', async () => {
  const seen = (alarm: 'scorch-risk' | 'near-finish', title: string) => ({
    ...alarms[1]!,
    alarm,
    title,
    answered: true,
  });
  const standing = [seen('scorch-risk', 'About to burn'), seen('near-finish', 'Nearly syrup')];
  const host = await standIn(await ensureScreenBuilt(), liveNow(2, { alarms: standing }));
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  const row = page.locator('.dock-calm > details > summary');
  await row.waitFor();
  expect(await row.innerText()).toMatch(/^Seen, still there: .+: About to burn, Nearly syrup$/u);
});

test('the shape in the first line and in the title of the page is that of the call', async () => {
  const calling = (priority: 'medium' | 'high') =>
    liveNow(4, {
      alarms: [{ ...alarms[0]!, priority, answered: false }],
      next: { what: 'alarm', pan: alarms[0]!.pan, at: null, low: null, high: null, text: alarms[0]!.alarm },
    });
  const host = await standIn(await ensureScreenBuilt(), calling('medium'));
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  await page.locator('.first .shape-medium').waitFor();
  expect(await page.title()).toMatch(/^◆/);
  host.show(calling('high'));
  await page.locator('.first .shape-high').waitFor();
  expect(await page.title()).toMatch(/^▲/);
});

test('a call is read out once, however long it stands, once more when it gets worse, and not when its numbers change', async () => {
  const calling = (why: string, priority: 'medium' | 'high' = 'medium') =>
    liveNow(4, { alarms: [{ ...alarms[0]!, why, priority }], sound: { priority, silencedUntil: null } });
  const host = await standIn(await ensureScreenBuilt(), liveNow(4));
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  const spoken = page.locator('[role=alert].unseen');
  const changes = spoken.evaluateHandle((region) => {
    const texts: (string | null)[] = [];
    const Watcher = region.ownerDocument.defaultView!.MutationObserver;
    // While nothing calls, each word of the host writes nothing over nothing, of which nobody hears.
    const note = (): void => void (region.textContent !== '' && texts.push(region.textContent));
    new Watcher(note).observe(region, { childList: true, characterData: true, subtree: true });
    return texts;
  });
  const seen = await changes;
  const readOut = () => seen.evaluate((texts) => texts);
  host.show(calling('about 9 min to 66.9 °Bx (7–12)'));
  await expect.poll(() => spoken.innerText()).toContain('Front pot');
  expect(await readOut()).toHaveLength(1);
  host.show(calling('about 8 min to 66.9 °Bx (6–10)'));
  await page.getByText('About 8 min (6–10)', { exact: false }).first().waitFor();
  // Two heartbeats of the host later it is still the one time.
  const { t } = liveNow(4);
  host.show({ ...calling('about 7 min to 66.9 °Bx (5–9)'), t: t + 60_000 });
  await page.getByText('About 7 min (5–9)', { exact: false }).first().waitFor();
  expect(await readOut()).toHaveLength(1);
  host.show(calling('about 7 min to 66.9 °Bx (5–9)', 'high'));
  await expect.poll(() => spoken.innerText()).toContain('Now.');
  expect(await readOut()).toHaveLength(2);
});

test('at the start of a boil it is said what would put the machine to sleep, and a danger has a sign', async () => {
  const sleep = { lid: 'sleeps', idle: 'not-known', warns: true, sentence: 'Closing the lid ends the watch.' } as const;
  const host = await standIn(await ensureScreenBuilt(), liveNow(1, { sleep }));
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  const line = page.getByRole('region', { name: 'Sound check' }).locator('.sleep-line');
  await expect.poll(() => line.innerText()).toBe('▲ Closing the lid ends the watch.');
  host.show(liveNow(1, { sleep: { ...sleep, warns: false, sentence: 'Closing the lid does no harm.' } }));
  await expect.poll(() => line.innerText()).toBe('Closing the lid does no harm.');
});

test('a sentence that was put away stays away while a replay is looked at and after it', async () => {
  const sentence =
    'The same was noted twice within two minutes and counts once. If it happened twice, note it once more.';
  const now = liveNow(1, { notices: [sentence] });
  const host = await standIn(await ensureScreenBuilt(), now);
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  const notice = page.locator('.notices li');
  await notice.getByRole('button').click();
  await notice.waitFor({ state: 'detached' });
  host.show({ ...now, view: 'replay', mode: 'replay', boil: 'tarn-hollow-before', notices: [] });
  await page.evaluate(() => void (location.hash = '#/replay'));
  await page.locator('.pans').waitFor();
  host.show(now);
  await page.evaluate(() => void (location.hash = '#/pans'));
  await page.locator('.app-live .pans').waitFor();
  expect(await notice.count()).toBe(0);
});

test('once all pans are off, ending the boil is offered above them', async () => {
  const { page, host, errors } = await reminded();
  const offer = page.getByRole('region', { name: 'All pans are off the fire.' });
  await page.locator('.card').first().waitFor();
  expect(await offer.count()).toBe(0);
  await host.command({ ref: 'f', mark: { kind: 'draw-off', pan: 'p1', all: true } });
  await offer.waitFor();
  const top = (await page.locator('.cards').boundingBox())?.y ?? 0;
  expect((await offer.boundingBox())?.y ?? 9999).toBeLessThan(top);
  await offer.getByRole('button', { name: 'End this boil' }).click();
  await offer.getByRole('button', { name: 'Yes, end it' }).click();
  await page.getByText('is over and kept in the notebook').waitFor();
  expect(errors).toEqual([]);
});

test.each([
  ['en', 'silent 5–30\u00a0min'],
  ['fr', 'muet 5–30\u00a0min'],
])(
  'in %s the button that puts a call aside says what it does, in no more height than its row has anyway',
  async (...of) => {
    const [language, hint] = of;
    const [first] = alarms;
    const host = await standIn(await ensureScreenBuilt(), liveNow(2, { alarms: [first!] }), { language });
    closing.push(() => host.close());
    const { page } = await openPage(browser, host.url, LAPTOP);
    closing.push(() => page.context().close());
    const button = page.locator('.aside-button');
    await button.getByText(hint).waitFor();
    const shape = await page.locator('.alarm-full .shape').boundingBox();
    expect((await button.boundingBox())!.height).toBeLessThanOrEqual(shape!.height);
  },
);

test('a practice that a call has slowed says so on one line, in French too', async () => {
  const slowed = { mode: 'practice', speed: 10, chosenSpeed: 600 } as const;
  const host = await standIn(await ensureScreenBuilt(), liveNow(2, { alarms: alarms.slice(0, 1), ...slowed }), {
    language: 'fr',
  });
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  const note = page.locator('.band-note');
  await note.getByText('Un appel attend').waitFor();
  const letters = Number.parseFloat(await styleOf(note, 'font-size'));
  expect((await note.boundingBox())!.height).toBeLessThan(2 * letters);
});
