// What the screen promises to the eye and the glove: sizes, no sideways scroll, lost connections said, themes, keyboard.
import type { Browser, Locator, Page } from 'playwright';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, PHONE, goToView, openPage, startChromium, styleOf } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import type { StandIn } from './stand-in-host.ts';
import { alarms, idleNow, liveNow, T } from './tarn-hollow.ts';

const SMALL_PHONE = { width: 360, height: 640 };
/** Width of a pixel of a 14-inch screen of 1366 × 768, mm. */
const PIXEL_MM = (14 * 25.4) / Math.hypot(1366, 768);
/** 20 minutes of arc. */
const leastDigitMm = (metres: number): number => metres * 1000 * Math.tan((20 / 60) * (Math.PI / 180));

let browser: Browser;
let host: StandIn;

beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());
beforeEach(async () => void (host = await standIn(await ensureScreenBuilt(), liveNow(4))));
afterEach(async () => {
  await Promise.all(browser.contexts().map((context) => context.close()));
  await host?.close();
});

const calling = { alarms, sound: { priority: 'high' as const, silencedUntil: null } };

/** Height of the digits on the cards, px, and whether any number is wider than its card. */
function digitsOf(page: Page): Promise<{ height: number; spills: boolean }[]> {
  return page.locator('.card .big').evaluateAll((numbers) =>
    numbers.map((number) => {
      const page = number.ownerDocument;
      const style = page.defaultView?.getComputedStyle(number);
      const pen = page.createElement('canvas').getContext('2d');
      if (pen === null || style === undefined) return { height: 0, spills: true };
      pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
      return { height: pen.measureText('0').actualBoundingBoxAscent, spills: number.scrollWidth > number.clientWidth };
    }),
  );
}

test('the number that matters can be read at 3 m, with four pans side by side', async () => {
  const { page, errors } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').nth(3).waitFor();
  for (const { height, spills } of await digitsOf(page)) {
    expect(height * PIXEL_MM).toBeGreaterThanOrEqual(leastDigitMm(3));
    expect(spills).toBe(false);
  }
  const tops = await page
    .locator('.card')
    .evaluateAll((cards) => cards.map((card) => card.getBoundingClientRect().top));
  expect(new Set(tops).size).toBe(1);
  expect(errors).toEqual([]);
});

test('a number is narrowed at once where its card gets too narrow for it, though nothing new comes', async () => {
  const over = liveNow(3, { ended: true });
  host.show({ ...over, readings: over.readings.map((each) => ({ ...each, stage: 'off', temperature_c: 87.4 })) });
  const { page } = await openPage(browser, host.url, { width: 1900, height: LAPTOP.height });
  await page.locator('.card', { hasText: '87.4' }).nth(2).waitFor();
  await page.keyboard.press('v');
  await page.locator('.cards-big').waitFor();
  expect((await digitsOf(page)).map(({ spills }) => spills)).toEqual([false, false, false]);
  await page.setViewportSize(LAPTOP);
  // Two frames: the first lays the page out anew.
  await page.evaluate('new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))');
  expect((await digitsOf(page)).map(({ spills }) => spills)).toEqual([false, false, false]);
});

test('after the end of a boil nothing that was read has an age, and a pot that was emptied says so', async () => {
  const now = liveNow(2);
  const readings = now.readings.map((each, place) => ({
    ...{ ...each, probe: null, temperature_c: place === 0 ? null : each.temperature_c },
    ...(place === 0 && { stage: 'off' as const, litres: 0 }),
  }));
  const marks = readings.map(({ pan }) => ({
    ...{ t: now.t - 50_000, at: now.t - 50_000, withdrawn: false, questioned: false, doubt: null },
    ...{ corrections: [], cameTo: null, takenC: null, mark: { kind: 'reading' as const, pan, celsius: 98.9 } },
  }));
  host.show({ ...now, readings, marks, probes: [], ended: true, endedAt: now.t, t: now.t + 300_000 });
  const { page } = await openPage(browser, host.url, LAPTOP);
  const [emptied, boiled] = [page.locator('.card[data-pan=p1]'), page.locator('.card[data-pan=p2]')];
  // When it was read, and no age: that would stand still.
  await expect.poll(() => boiled.locator('.probe').innerText()).toMatch(/Read \d\d:\d\d/u);
  expect(await boiled.innerText()).not.toContain('ago');
  expect(await emptied.locator('.caption').innerText()).toBe('Empty');
  expect(await emptied.innerText()).not.toContain('ago');
});

test('where a machine has only wide letters, the number keeps its height and stays in its card', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').nth(3).waitFor();
  await page.locator('html').evaluate((html) => html.style.setProperty('--face', "'DejaVu Sans', monospace"));
  await page.setViewportSize({ ...LAPTOP, height: LAPTOP.height - 1 });
  await expect.poll(async () => (await digitsOf(page)).some(({ spills }) => spills)).toBe(false);
  for (const { height } of await digitsOf(page)) {
    expect(height * PIXEL_MM).toBeGreaterThanOrEqual(leastDigitMm(3));
  }
});

/** Opens the big view of so many pans; its digits can be read at 5 m, and its last card ends above what stands at the foot. */
async function bigViewStands(pans: number, foot: string): Promise<Page> {
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page
    .locator('.card')
    .nth(pans - 1)
    .waitFor();
  await page.keyboard.press('v');
  await page.locator('.cards-big').waitFor();
  for (const { height, spills } of await digitsOf(page)) {
    expect(height * PIXEL_MM).toBeGreaterThanOrEqual(leastDigitMm(5));
    expect(spills).toBe(false);
  }
  const last = (await page.locator('.card').last().boundingBox())!;
  expect(last.y + last.height).toBeLessThanOrEqual((await page.locator(foot).boundingBox())!.y);
  return page;
}

test('the big view can be read at 5 m, with four pans on one screen', async () => {
  const page = await bigViewStands(4, '.nav');
  await page.screenshot({ path: 'test-results/big-1366x768.png' });
});

test('the big view shows three pans whole while one of them calls', async () => {
  host.show(liveNow(3, calling));
  await bigViewStands(3, '.bottom');
});

test('while nothing calls, three pans in the big view take the room that is there, in larger numbers', async () => {
  host.show(liveNow(3));
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').nth(2).waitFor();
  await page.keyboard.press('v');
  await page.locator('.cards-big').waitFor();
  const top = (await page.locator('main').boundingBox())?.y ?? 0;
  const foot = (await page.locator('.bottom').boundingBox())?.y ?? 0;
  const card = (await page.locator('.card').first().boundingBox())!;
  expect(card.height).toBeGreaterThan(0.9 * (foot - top));
  expect(card.y + card.height).toBeLessThanOrEqual(foot);
  for (const { height } of await digitsOf(page)) expect(height * PIXEL_MM).toBeGreaterThan(1.2 * leastDigitMm(5));
});

test('on a phone the notes of the chosen pan are one press away, wherever the page stands', async () => {
  const { page } = await openPage(browser, host.url, PHONE);
  await page.locator('.card-name').nth(1).click();
  await page.getByRole('button', { name: 'Note for Back pot' }).click();
  const notes = (await page.locator('.mark-kinds').boundingBox())!;
  const foot = (await page.locator('.bottom').boundingBox())!;
  expect(notes.y).toBeGreaterThan(0);
  expect(notes.y + notes.height).toBeLessThanOrEqual(foot.y);
  await page.locator('.mark-kinds').getByText('Filling', { exact: true }).click();
  await page.locator('.mark-form').waitFor();
  expect(await page.locator('.note-door').count()).toBe(0);
});

test('the two buttons used in a hurry are 20 mm with 5 mm between', async () => {
  host.show(liveNow(4, calling));
  const { page } = await openPage(browser, host.url, LAPTOP);
  const seen = await page.locator('.hurry-seen').boundingBox();
  const quiet = await page.locator('.hurry-quiet').boundingBox();
  if (seen === null || quiet === null) throw new Error('The buttons are not shown.');
  for (const box of [seen, quiet]) expect(Math.min(box.width, box.height) * PIXEL_MM).toBeGreaterThanOrEqual(19.9);
  expect((quiet.x - seen.x - seen.width) * PIXEL_MM).toBeGreaterThanOrEqual(4.9);
});

test.each([
  ['laptop', LAPTOP],
  ['phone', PHONE],
])('on a %s no view scrolls sideways, and every button can be hit', async (_name, size) => {
  host.show(liveNow(4, calling));
  const { page } = await openPage(browser, host.url, size);
  await page.locator('.card').first().waitFor();
  for (const view of ['pans', 'notebook', 'probes', 'settings', 'start', 'change']) {
    await goToView(page, view);
    const sideways = await page.locator('html').evaluate((root) => root.scrollWidth - root.clientWidth);
    expect(`${view} ${sideways}`).toBe(`${view} 0`);
    const small = await page
      .locator('button:visible, a:visible, input:visible, select:visible')
      .evaluateAll((targets) =>
        targets.flatMap((target) => {
          const { width, height } = target.getBoundingClientRect();
          return width < 24 || height < 24 ? [`${target.outerHTML.slice(0, 80)} ${width}x${height}`] : [];
        }),
      );
    expect(small).toEqual([]);
  }
});

test('in Settings what stands in a row is level', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  await goToView(page, 'settings');
  await page.locator('[aria-labelledby=when-called] select').first().waitFor();
  const tops = (of: string): Promise<number[]> =>
    page.locator(of).evaluateAll((all) => all.map((each) => Math.round(each.getBoundingClientRect().top)));
  expect(new Set(await tops('fieldset.choice')).size).toBe(1);
  expect(new Set(await tops('[aria-labelledby=when-called] select')).size).toBe(1);
});

test('on a phone pans stand in one column', async () => {
  const { page } = await openPage(browser, host.url, PHONE);
  await page.locator('.card').nth(3).waitFor();
  const lefts = await page
    .locator('.card')
    .evaluateAll((cards) => cards.map((card) => card.getBoundingClientRect().left));
  expect(new Set(lefts).size).toBe(1);
});

test('a host that falls silent is said in large letters, and seen again when it speaks', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').first().waitFor();
  expect(await page.locator('.band-lost').count()).toBe(0);
  host.fallSilent(true);
  await page.getByText('Connection lost').waitFor();
  await page.getByText(/Numbers are \d+\ss old/).waitFor();
  host.fallSilent(false);
  await page.locator('.band-lost').waitFor({ state: 'detached' });
});

test('a connection that broke is made again', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').first().waitFor();
  host.hangUp();
  host.show(liveNow(2));
  await expect.poll(() => page.locator('.card').count()).toBe(2);
});

test('an alarm is spoken, stands in the title, and is told apart without colour', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  const spoken = page.locator('[role=alert].unseen');
  await spoken.waitFor({ state: 'attached' });
  expect(await spoken.innerText()).toBe('');
  host.show(liveNow(4, calling));
  await expect.poll(() => spoken.innerText()).toContain('Side pan: Probe lost');
  expect(await page.title()).toContain('Side pan: Probe lost');
  const words = page.locator('.alarm-word');
  // What is over does not take the pans' room while something calls.
  expect(await words.allInnerTexts()).toEqual(['Now', 'Soon']);
  await page.getByText('1 more').click();
  await expect.poll(() => words.allInnerTexts()).toEqual(['Now', 'Soon', 'Over']);
  const shapes = await page
    .locator('.alarm .shape path')
    .evaluateAll((paths) => paths.map((path) => path.getAttribute('d')));
  expect(new Set(shapes).size).toBe(3);
});

test('whether to end a practice is asked of that one: the next has its speeds again', async () => {
  host.show(liveNow(2, { mode: 'practice', boil: 'first' }));
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.getByRole('button', { name: 'End practice' }).click();
  await page.locator('.confirm').waitFor();
  host.show(liveNow(2, { mode: 'practice', boil: 'first', ended: true }));
  await page.locator('.confirm').waitFor({ state: 'detached' });
  host.show(liveNow(2, { mode: 'practice', boil: 'second' }));
  await page.locator('.speeds').waitFor();
  expect(await page.locator('.confirm').count()).toBe(0);
});

test('a second press of quiet brings the sound back, by the first line too once all was seen', async () => {
  host.show(liveNow(4, calling));
  const { page } = await openPage(browser, host.url, LAPTOP);
  const answers = () => host.heard.flatMap((command) => ('answer' in command ? [command.answer] : []));
  await page.getByRole('button', { name: 'Quiet for 2 min' }).click();
  await expect.poll(answers).toEqual([{ silence: { seconds: 120 } }]);
  const quiet = { priority: 'high' as const, silencedUntil: T + 120_000 };
  host.show(liveNow(4, { ...calling, sound: quiet }));
  await page.locator('.hurry-quiet', { hasText: 'Sound on again' }).waitFor();
  await page.keyboard.press('q');
  await expect.poll(answers).toEqual([{ silence: { seconds: 120 } }, { silence: { seconds: 0 } }]);
  host.show(liveNow(4, { alarms: [], sound: { ...quiet, priority: null } }));
  await page.locator('.hurry-quiet').waitFor({ state: 'detached' });
  await page.locator('.first-side').getByRole('button', { name: 'Sound on again' }).click();
  await expect.poll(() => answers().length).toBe(3);
});

test('the foremost alarm is the one that a press answers; silence is another command', async () => {
  host.show(liveNow(4, calling));
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.hurry-seen').waitFor();
  await page.keyboard.press('s');
  await page.keyboard.press('q');
  await expect
    .poll(() => host.heard.flatMap((command) => ('answer' in command ? [command.answer] : [])))
    .toEqual([{ acknowledge: { pan: 'p4', alarm: 'probe-lost' } }, { silence: { seconds: 120 } }]);
});

/** How much of a part, px of its height, lies under the first line or what stays at the foot; all of the page where it is not there. */
async function covered(page: Page, part: Locator): Promise<number> {
  const [box, top, foot] = await Promise.all(
    [part, page.locator('.top'), page.locator('.bottom')].map((each) => each.boundingBox()),
  );
  if (!box || !top || !foot) return page.viewportSize()?.height ?? Infinity;
  return Math.max(0, top.y + top.height - box.y) + Math.max(0, box.y + box.height - foot.y);
}

test('a form that is opened is clear of the calls below it', async () => {
  host.show(liveNow(4, calling));
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.dock').waitFor();
  await page.keyboard.press('t');
  const form = page.locator('.mark-form');
  await form.waitFor();
  await expect.poll(() => covered(page, form)).toBe(0);
});

test('on a screen so low that the bars go with the page, a form that a key opens is brought into sight', async () => {
  const { page } = await openPage(browser, host.url, { width: 683, height: 384 });
  await page.locator('.card').nth(3).waitFor();
  await page.keyboard.press('r');
  const field = page.locator('.mark-form .typed input').first();
  await expect
    .poll(async () => {
      const { y, height } = (await field.boundingBox())!;
      return y >= 0 && y + height <= 384;
    })
    .toBe(true);
});

test('at twice the size the line that says which pan calls stays in sight, however far the page is scrolled', async () => {
  const next = { what: 'alarm', pan: 'p4', at: null, low: null, high: null, text: 'probe-lost' } as const;
  host.show(liveNow(4, { ...calling, next }));
  const { page } = await openPage(browser, host.url, { width: 683, height: 384 });
  const line = page.locator('.first-what');
  await line.getByText('Side pan:').waitFor();
  for (const place of [0, 150, 600, 5000]) {
    await page.evaluate(`scrollTo(0, ${place})`);
    const { y, height } = (await line.boundingBox())!;
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y + height).toBeLessThanOrEqual(100);
    // Nothing is drawn over it.
    const [top] = await page.evaluate<[string]>(
      `[document.elementFromPoint(200, ${y + height / 2})?.closest('.first-what')?.className ?? 'another']`,
    );
    expect(top).toBe('first-what');
  }
});

test.each([
  ['a small phone', SMALL_PHONE],
  ['a phone', PHONE],
])('on %s the sentence of a refused note is seen whole each time it is refused', async (_name, size) => {
  host.show(liveNow(4, calling));
  const { page } = await openPage(browser, host.url, size);
  await page.locator('.dock').waitFor();
  await page.keyboard.press('t');
  const form = page.locator('.mark-form');
  const input = form.locator('.typed input').first();
  await input.fill('much');
  await input.press('Enter');
  const problem = form.locator('.problem');
  await expect.poll(() => covered(page, problem)).toBe(0);
  await page.evaluate('scrollTo(0, 0)');
  expect(await covered(page, problem)).toBeGreaterThan(0);
  // Pressed where it stands, so that no scrolling to the field brings the sentence along.
  await form.locator('form').evaluate((element: HTMLFormElement) => element.requestSubmit());
  await expect.poll(() => covered(page, problem)).toBe(0);
});

test('on a phone the practice band is one line, and a call has no more of the height than its words need', async () => {
  host.show(liveNow(4, { ...calling, mode: 'practice' }));
  const { page } = await openPage(browser, host.url, PHONE);
  await page.locator('.dock').waitFor();
  expect((await page.locator('.bottom').boundingBox())?.height ?? 999).toBeLessThanOrEqual(0.5 * PHONE.height);
  const top = async (of: string): Promise<number> => (await page.locator(of).boundingBox())?.y ?? -1;
  expect(await top('.dock .alarms')).toBeGreaterThanOrEqual(await top('.dock'));
  // What to do stands there whole, above the buttons.
  const todo = (await page.locator('.alarm-full .alarm-todo').boundingBox())!;
  expect(todo.y + todo.height).toBeLessThanOrEqual((await top('.dock-doors')) + 1);
  const band = page.locator('.band-practice');
  expect((await band.boundingBox())?.height ?? 999).toBeLessThan(60);
  expect(await band.evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0);
});

test('a temperature read by hand has its age on the card', async () => {
  const now = liveNow(1);
  const [first] = now.readings;
  if (first === undefined) throw new Error('no pan');
  const mark = { kind: 'reading' as const, pan: 'p1', celsius: 100.5, id: 'm9' };
  const marks = [
    {
      t: now.t - 180_000,
      at: now.t - 180_000,
      mark,
      withdrawn: false,
      questioned: false,
      doubt: null,
      corrections: [],
      cameTo: null,
      takenC: null,
    },
  ];
  host.show({ ...now, marks, readings: [{ ...first, probe: null }] });
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card .probe', { hasText: 'Read 12:39, 3 min ago' }).waitFor();
  await page.locator('.chart').scrollIntoViewIfNeeded();
  await page.locator('.chart').screenshot({ path: 'test-results/hand-reading.png' });
});

test('symbols stand still with reduced motion', async () => {
  host.show(liveNow(4, calling));
  const { page } = await openPage(browser, host.url, LAPTOP);
  const flashing = page.locator('.alarm .shape-flashes').first();
  await flashing.waitFor();
  const animation = () => styleOf(flashing, 'animation-name');
  expect(await animation()).toBe('flash');
  await page.emulateMedia({ reducedMotion: 'reduce' });
  expect(await animation()).toBe('none');
});

test('sound has to be allowed by a first press, and says so until then', async () => {
  host.show(idleNow());
  const { page } = await openPage(browser, host.url, LAPTOP);
  const ask = page.getByRole('button', { name: 'Tap to allow sound' });
  await ask.click();
  await page.getByRole('button', { name: 'Try the sound' }).waitFor();
});

test('every press shows where the keyboard is', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  await page.locator('.card').first().waitFor();
  for (let presses = 0; presses < 25; presses += 1) {
    await page.keyboard.press('Tab');
    const focused = page.locator(':focus');
    const outline =
      (await styleOf(focused, 'outline-style')) === 'none' ? '0' : await styleOf(focused, 'outline-width');
    expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(3);
  }
});

test('what is over is shown as soon as what still stands was seen', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  const standing = alarms.find(({ condition }) => condition === 'active')!;
  const over = alarms.filter(({ condition }) => condition === 'over');
  host.show(liveNow(4, { alarms: [{ ...standing, answered: true }, ...over] }));
  await expect.poll(() => page.locator('.dock .alarm').count()).toBe(2);
  expect(await page.locator('.dock').innerText()).toMatch(/over, not yet seen/i);
});

test('while a call says to take a pan off, its card does not say to pour into it', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  const card = page.locator('[data-pan=p2]');
  await expect.poll(() => card.innerText()).toContain('Top it up');
  expect(await card.innerText()).toContain('Top up by');
  const call = { ...alarms[0]!, alarm: 'past-finish' as const, pan: 'p2', title: 'Past its finish' };
  host.show(liveNow(4, { alarms: [call] }));
  await expect.poll(() => card.innerText()).toContain('Past its finish');
  expect(await card.innerText()).not.toMatch(/Top it up|Top up by/u);
});

test('a call that comes moves nothing that is being read on the cards', async () => {
  host.show(liveNow(4));
  const { page } = await openPage(browser, host.url, LAPTOP);
  const places = () =>
    page
      .locator('.card :is(.big, .bar-track, .forecast, .facts)')
      .evaluateAll((parts) => parts.map((part) => Math.round(part.getBoundingClientRect().top)));
  await page.locator('.card .facts').first().waitFor();
  const before = await places();
  host.show(liveNow(4, calling));
  await page.locator('.dock').waitFor();
  await expect.poll(() => page.locator('.card-alarm:not(:empty)').count()).toBeGreaterThan(0);
  expect(await places()).toEqual(before);
});

test('a field that gets the keyboard under the bar of the start form is moved clear of it', async () => {
  host.show(idleNow());
  const { page } = await openPage(browser, host.url, LAPTOP);
  await goToView(page, 'start');
  const [field, bar] = [page.getByLabel('Height of the place over the sea'), page.locator('.start-bar')];
  await bar.waitFor();
  const under = async (): Promise<number> => {
    const [typed, foot] = await Promise.all([field, bar].map((each) => each.boundingBox()));
    return typed!.y + typed!.height - foot!.y;
  };
  const foot = (await bar.boundingBox())!;
  await field.evaluate(
    (input, end) => input.ownerDocument.defaultView!.scrollBy(0, input.getBoundingClientRect().bottom - end),
    foot.y + foot.height,
  );
  expect(await under()).toBeGreaterThan(0);
  await field.evaluate((input) => input.focus({ preventScroll: true }));
  await expect.poll(under).toBeLessThanOrEqual(0);
});

test('the words under a bar stand under their marks, however wide the card, and touch neither each other nor its edge', async () => {
  const { page } = await openPage(browser, host.url, LAPTOP);
  for (const [pans, size] of [
    [1, LAPTOP],
    [2, LAPTOP],
    [4, LAPTOP],
    [4, PHONE],
    [4, { width: 320, height: 700 }],
  ] as const) {
    host.show(liveNow(pans));
    await page.setViewportSize(size);
    await expect.poll(() => page.locator('.card').count()).toBe(pans);
    const bars = await page.locator('.bar').evaluateAll((each) =>
      each.map((bar) => {
        const box = (name: string) => bar.querySelector(name)?.getBoundingClientRect();
        const track = box('.bar-track');
        const marks = [box('.bar-cold')?.right, box('.bar-done')?.left, box('.bar-burns')?.left];
        const words = [...bar.querySelectorAll('.bar-label')].map((label) => label.getBoundingClientRect());
        return {
          off: words.map(({ left, right }, i) => Math.abs((left + right) / 2 - (marks[i] ?? Number.NaN))),
          gaps: words.slice(1).map(({ left }, i) => left - (words[i]?.right ?? Number.NaN)),
          room: (track?.right ?? Number.NaN) - (words.at(-1)?.right ?? Number.NaN),
        };
      }),
    );
    for (const { off, gaps, room } of bars) {
      expect(Math.max(...off), `${pans} pans, ${size.width} px`).toBeLessThanOrEqual(5);
      expect(Math.min(...gaps)).toBeGreaterThanOrEqual(6);
      expect(room).toBeGreaterThanOrEqual(0);
    }
  }
});
