// The big view on a laptop: numbers at one height, nothing at a card's very edge, and six long names above the foot of the screen.
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ALARM_WORDS } from '../../src/core/alarms/words.ts';
import type { Now, Settings } from '../../src/protocol/messages.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, startChromium, styleOf } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { alarms, liveNow } from './tarn-hollow.ts';

let browser: Browser;
beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());

async function bigView(now: Now, chosen: Partial<Settings> = {}) {
  const host = await standIn(await ensureScreenBuilt(), now, chosen);
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.big-view-button').click();
  await page.locator('.cards-big').waitFor();
  const close = async (): Promise<void> => {
    await page.context().close();
    await host.close();
  };
  return { page, close };
}

test('the numbers of two pans stand at one height, though one says more beneath', async () => {
  const now = liveNow(2);
  const { page, close } = await bigView(now);
  // The second one's forecast takes two lines.
  const heights = await page.locator('.forecast').evaluateAll((all) => all.map((each) => each.clientHeight));
  expect(heights[1]).toBeGreaterThan(heights[0]! + 10);
  const tops = await page.locator('.big').evaluateAll((all) => all.map((each) => each.getBoundingClientRect().top));
  expect(tops[0]).toBeCloseTo(tops[1]!, 0);
  await close();
});

test('with calls that take half of the screen, what is said last stands clear of the edge of its card', async () => {
  const calls = (['scorch-risk', 'low-level', 'probe-suspect'] as const).map((alarm, place) => ({
    ...alarms[0]!,
    alarm,
    pan: place === 1 ? 'p2' : 'p1',
    since: alarms[0]!.since - place,
  }));
  const over = alarms.filter(({ condition }) => condition === 'over');
  const notices = ['Back pot: invented notice.'];
  const now = liveNow(2, { alarms: [...calls, ...over], sound: { priority: 'medium', silencedUntil: null }, notices });
  const { page, close } = await bigView(now);
  await page.locator('.dock .alarm-title').first().waitFor();
  const room = await page
    .locator('.card')
    .evaluateAll((cards) =>
      cards.map(
        (card) =>
          card.getBoundingClientRect().bottom -
          Math.max(...[...card.children].map((part) => part.getBoundingClientRect().bottom)),
      ),
    );
  for (const each of room) expect(each).toBeGreaterThanOrEqual(5);
  await close();
});

test.each([
  [6, 'en', 130],
  [8, 'en', 110],
  [8, 'fr', 110],
])('%i pans with long names stand whole above the foot of the screen (%s)', async (count, language, digits) => {
  const now = liveNow(4);
  const ids = Array.from({ length: count }, (_, place) => `e${place}`);
  const pans = ids.map((id) => ({
    ...now.header!.pans![0]!,
    id,
    name: 'Chaudron de finition près de la porte de l’érablière',
  }));
  const shown = {
    ...now,
    header: { ...now.header!, pans },
    readings: ids.map((pan) => ({ ...now.readings[0]!, pan })),
    limits: ids.map((pan) => ({ ...now.limits[0]!, pan })),
  };
  const { page, close } = await bigView(shown, { language });
  const foot = (await page.locator('.bottom').boundingBox())!.y;
  const last = (await page.locator('.card').last().boundingBox())!;
  expect(last.y + last.height).toBeLessThanOrEqual(foot);
  // Capitals and digits of this face are 0.716 of its size.
  const size = Number.parseFloat(await styleOf(page.locator('.card .big').last(), 'font-size'));
  expect(0.716 * size).toBeGreaterThanOrEqual(digits);
  await close();
});

test.each([
  [6, 'en'],
  [8, 'en'],
  [8, 'fr'],
])(
  '%i pans stay whole above the foot while three of them call, with digits that are read from afar (%s)',
  async (count, language) => {
    const now = liveNow(4);
    const ids = Array.from({ length: count }, (_, place) => `e${place}`);
    const called = (['scorch-risk', 'low-level', 'near-finish'] as const).map((alarm, place) => ({
      ...{ ...alarms[0]!, ...ALARM_WORDS[alarm], alarm, pan: ids[place]! },
      since: alarms[0]!.since - place,
    }));
    const shown = {
      ...now,
      alarms: called,
      sound: { priority: 'high' as const, silencedUntil: null },
      header: { ...now.header!, pans: ids.map((id) => ({ ...now.header!.pans![0]!, id, name: `Pan ${id}` })) },
      readings: ids.map((pan) => ({ ...now.readings[0]!, pan })),
      limits: ids.map((pan) => ({ ...now.limits[0]!, pan })),
    };
    const { page, close } = await bigView(shown, { language });
    await page.locator('.alarm-todo').first().waitFor();
    const bottomOf = async (name: string): Promise<number> => {
      const box = (await page.locator(name).last().boundingBox())!;
      return box.y + box.height;
    };
    const foot = (await page.locator('.bottom').boundingBox())!.y;
    await expect.poll(() => bottomOf('.card')).toBeLessThanOrEqual(foot);
    // A part of a px at each edge is rounded up.
    expect(await page.evaluate('document.documentElement.scrollHeight')).toBeLessThanOrEqual(LAPTOP.height + 1);
    expect(await bottomOf('.alarm-todo')).toBeLessThanOrEqual(await bottomOf('.dock'));
    const size = Number.parseFloat(await styleOf(page.locator('.card .big').last(), 'font-size'));
    expect(0.716 * size).toBeGreaterThanOrEqual(100);
    await page.screenshot({ path: `test-results/big-${count}-${language}-calls.png` });
    await close();
  },
);

test('a pan that burns says so on its card, where another says when it is done', async () => {
  const call = { ...alarms[0]!, alarm: 'scorch-risk' as const, title: 'About to burn', pan: 'p1' };
  const now = liveNow(2, { alarms: [call], sound: { priority: 'high', silencedUntil: null } });
  const { page, close } = await bigView(now);
  await page.locator('.dock .alarm-title').first().waitFor();
  const said = page.locator('.card-alarm');
  expect(await said.evaluateAll((all) => all.map((each) => each.checkVisibility()))).toEqual([true, false]);
  expect(await said.first().innerText()).toBe('About to burn');
  expect(Number.parseFloat(await styleOf(said.first(), 'font-size'))).toBeGreaterThanOrEqual(25);
  await page.screenshot({ path: 'test-results/big-burns.png' });
  await close();
});

test('a pan that is called says what for beside when it is done, and no range of that', async () => {
  const call = { ...alarms[0]!, ...ALARM_WORDS['low-level'], alarm: 'low-level' as const, pan: 'p1' };
  const now = liveNow(3, { alarms: [call], sound: { priority: 'medium', silencedUntil: null } });
  const { page, close } = await bigView(now);
  await page.locator('.dock .alarm-title').first().waitFor();
  const said = page.locator('.card[data-pan=p1] .forecast');
  expect((await said.innerText()).replace(/\s+/gu, ' ')).toBe('Running low Done about 12:51');
  // The point between them is drawn where they share a line, and not before what begins one.
  const pointAt = (): Promise<{ shareLine: boolean; isSeen: boolean }> =>
    said.evaluate((element) => {
      const [first, second] = [...element.children].map((part) => part.getBoundingClientRect());
      const cut = element.getBoundingClientRect().left + 0.7 * Number.parseFloat(getComputedStyle(element).fontSize);
      return { shareLine: first!.top === second!.top, isSeen: second!.left >= cut };
    });
  await said.evaluate((element) => void (element.style.width = '900px'));
  expect(await pointAt()).toEqual({ shareLine: true, isSeen: true });
  await said.evaluate((element) => void (element.style.width = '200px'));
  expect(await pointAt()).toEqual({ shareLine: false, isSeen: false });
  await said.evaluate((element) => void (element.style.width = ''));
  expect(Number.parseFloat(await styleOf(said, 'font-size'))).toBeGreaterThanOrEqual(22);
  await page.keyboard.press('v');
  await page.locator('.cards-big').waitFor({ state: 'detached' });
  expect((await said.innerText()).replace(/\s+/gu, ' ')).toMatch(/^Done about 12:51 12:\d\d–12:\d\d$/u);
  await close();
});

test('the letter of the degrees stands under their ring, and takes no width from the digits', async () => {
  const { page, close } = await bigView(liveNow(3));
  const unit = page.locator('.big small', { has: page.locator('small') }).first();
  const letter = (await unit.locator('small').boundingBox())!;
  const [ring, number] = [(await unit.boundingBox())!, (await page.locator('.big').first().boundingBox())!];
  expect(letter.height).toBeGreaterThan(20);
  expect(letter.y).toBeGreaterThan(ring.y);
  expect(letter.x + letter.width).toBeLessThanOrEqual(number.x + number.width + 1);
  expect(letter.y + letter.height).toBeLessThanOrEqual(number.y + number.height);
  await close();
});

test('how old a reading by hand is stands readable beside it, and near by in one place only', async () => {
  const now = liveNow(2);
  const read = { ...now.readings[0]!, probe: null, temperature_c: 6.5, rise_c: null, stage: 'warming' as const };
  const note = { ...now.marks[0]!, at: now.t - 8 * 60_000, withdrawn: false, questioned: false };
  const mark = { kind: 'reading' as const, pan: read.pan, celsius: 6.5 };
  const { page, close } = await bigView({
    ...now,
    readings: [read, now.readings[1]!],
    marks: [{ ...note, mark }],
    alarms: [],
  });
  const age = page.locator('.read-ago');
  await expect.poll(() => age.innerText()).toMatch(/read 8\smin ago/u);
  expect(await age.isVisible()).toBe(true);
  expect(Number.parseFloat(await styleOf(age, 'font-size'))).toBeGreaterThanOrEqual(24);
  await page.keyboard.press('Escape');
  await expect.poll(() => age.isVisible()).toBe(false);
  await close();
});
