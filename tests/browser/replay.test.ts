// Looking back through the real page: a replay steered by mouse and keys beside a live boil, other choices, comparing, tuning.
import { createReadStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import type { Now } from '../../src/protocol/messages.ts';
import type { ReplayStrip } from '../../src/protocol/replay-messages.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import type { Served } from '../../src/web/serve.ts';
import { LAPTOP, PHONE, openPage, startChromium } from './chromium.ts';
import { PROJECT } from './program.ts';

const MINUTE = 60_000;
/** A busy machine needs a minute to read a whole boil. */
const PATIENCE = { timeout: 110_000 };

let folder: string;
let host: Awaited<ReturnType<typeof createHost>>;
let served: Served;
let browser: Browser;
let page: Page;
let errors: string[];
const ids: string[] = [];
const latest: { live: Now | null; replay: Now | null } = { live: null, replay: null };

async function obeyed<Data>(command: Record<string, unknown>): Promise<Data> {
  const answer = await host.command({ ref: 'r', ...command });
  if (!answer.ok) throw new Error(answer.why);
  return answer.data as Data;
}

const replayT = (): number => latest.replay?.t ?? -1;
const stripOf = (): Promise<ReplayStrip> => obeyed<ReplayStrip>({ replay_strip: { points: 100 } });
const region = (name: string) => page.getByRole('region', { name, exact: true });

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tarn-hollow-'));
  host = await createHost({ folder });
  for (const name of ['three-pots-poured-together', 'birch-one-pan']) {
    const file = join(PROJECT, 'fixtures/recordings', `${name}.boil.jsonl`);
    ids.push((await host.importRecording(createReadStream(file), name)).boil);
  }
  host.subscribe((message) => {
    if (message.kind === 'now') latest[message.view] = message;
  });
  await obeyed({ start: { name: 'Tonight, invented', pans: [{ id: 'p1', name: 'Tonight pot', sap: 'maple' }] } });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  browser = await startChromium();
  ({ page, errors } = await openPage(browser, served.url, LAPTOP));
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await served?.close();
  await host?.close();
  await rm(folder, { recursive: true, force: true });
});

test('a replay is opened from the page of its boil, and says so in a band', async () => {
  await page.getByRole('link', { name: 'Notebook' }).click();
  await page.getByRole('link', { name: 'Three pots', exact: true }).click();
  await page.getByRole('button', { name: 'Replay', exact: true }).click();
  await page.locator('.strip[data-read="whole"]').waitFor(PATIENCE);
  expect(await region('Replay').innerText()).toMatch(/REPLAY\s+not live\s+Three pots/u);
  await page.keyboard.press('Space');
  await expect.poll(() => latest.replay?.replay?.playing).toBe(false);
});

test('the key of a press stands beside its word, also in wide letters', async () => {
  const button = page.locator('.play-button');
  const spills = await button.evaluate((element) => {
    element.style.letterSpacing = '9px';
    const inside = [element, ...element.children].map((part) => part.scrollWidth - part.clientWidth);
    element.style.letterSpacing = '';
    return Math.max(...inside);
  });
  expect(spills).toBeLessThanOrEqual(0);
});

test('the strip is dragged by the mouse, and moved by keys', async () => {
  const strip = page.getByRole('slider', { name: 'Go to a moment of the boil' });
  const box = (await strip.boundingBox())!;
  const { length } = await stripOf();
  await page.mouse.move(box.x + box.width * 0.2, box.y + 70);
  await page.mouse.down();
  for (const share of [0.3, 0.4, 0.5]) await page.mouse.move(box.x + box.width * share, box.y + 70);
  await page.mouse.up();
  // On its way there it shows where it is; there it is to a tenth of a pixel.
  await expect.poll(() => Math.abs(replayT() / length - 0.5), PATIENCE).toBeLessThan(0.0001);
  const before = replayT();
  await strip.press('PageUp');
  await expect.poll(replayT, PATIENCE).toBe(before + 10 * MINUTE);
  // On the strip an arrow is ten seconds, elsewhere a minute.
  await page.getByRole('button', { name: 'Before' }).press('ArrowLeft');
  await expect.poll(replayT, PATIENCE).toBe(before + 9 * MINUTE);
  await page.getByRole('button', { name: '1 min forward' }).click();
  await expect.poll(replayT, PATIENCE).toBe(before + 10 * MINUTE);
  await page.getByRole('button', { name: '1 min back' }).click();
  await expect.poll(replayT, PATIENCE).toBe(before + 9 * MINUTE);
});

test('what the strip shows can be read where its moment passes behind', async () => {
  await page.getByRole('slider', { name: 'Go to a moment of the boil' }).press('Home');
  await expect.poll(replayT).toBe(0);
  // Presses go through both to the strip: for this look they stop at what is seen.
  const parts = page.locator('.strip-caption, .strip-now');
  const stopAt = (events: string) =>
    parts.evaluateAll(
      (all, value) => all.forEach((each) => ((each as HTMLElement).style.pointerEvents = value)),
      events,
    );
  const box = (await page.locator('.strip-caption').boundingBox())!;
  await stopAt('auto');
  const seen = await page.evaluate<string>(
    `document.elementFromPoint(${box.x + 1}, ${box.y + box.height / 2}).className`,
  );
  await stopAt('');
  expect(seen).toBe('strip-caption');
  const strip = (await page.getByRole('slider', { name: 'Go to a moment of the boil' }).boundingBox())!;
  await page.mouse.click(strip.x + strip.width / 2, strip.y + 70);
  await expect.poll(replayT, PATIENCE).toBeGreaterThan(0);
});

test('a step goes to the next and the previous of what was noted or called', async () => {
  const { marks, calls } = await stripOf();
  const moments = [...marks.map(({ t }) => t), ...calls.map(({ raised }) => raised)].sort((a, b) => a - b);
  const from = replayT();
  await page.keyboard.press('n');
  await expect.poll(replayT, PATIENCE).toBe(moments.find((t) => t > from));
  await page.getByLabel('What the keys step to').selectOption('alarm');
  const raised = calls.map((call) => call.raised);
  const there = replayT();
  const next = raised.find((t) => t > there);
  await page.getByRole('button', { name: 'Next' }).click();
  await expect.poll(replayT, PATIENCE).toBe(next);
  await page.getByRole('button', { name: 'Before' }).click();
  await expect.poll(replayT, PATIENCE).toBe(raised.findLast((t) => t < (next ?? 0)));
});

test('it plays as fast as its key says', async () => {
  await page.locator('body').press('p');
  await expect.poll(() => latest.replay?.speed).toBe(600);
  const from = replayT();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect.poll(replayT, PATIENCE).toBeGreaterThan(from + 10 * MINUTE);
  await page.getByRole('button', { name: 'Pause', exact: true }).click();
  await page.locator('body').press('u');
  await expect.poll(() => latest.replay?.speed).toBe(1);
});

test('what was said at a moment stands beside what came later', async () => {
  await obeyed({ replay_control: { seek: 4.5 * 60 * MINUTE } });
  const words = region('Said then, and what came later').getByRole('listitem').filter({ hasText: 'Front pot' });
  await expect
    .poll(() => words.innerText(), PATIENCE)
    .toMatch(/it said 1\d:\d\d, between .* it was 14:\d\d, as an instrument told: .*(sooner|later|half minute)/u);
});

test('a live alarm shows beside a replay, and nothing that steers the replay answers it', async () => {
  await obeyed({ mark: { kind: 'remind', text: 'Skim the foam', seconds: 1 } });
  const dock = region('Calls of the live boil');
  await dock.getByText('Skim the foam').first().waitFor(PATIENCE);
  for (const key of ['n', 'b', 'ArrowRight', 'ArrowLeft', 'i', 'u', 'w', 'w', 'Space', 'Space']) {
    await page.locator('body').press(key);
  }
  await expect.poll(() => latest.replay?.speed).toBe(1);
  expect(latest.live?.alarms.map(({ answered }) => answered)).toEqual([false]);
  expect(await region('Calls at this moment of the replay').getByRole('button').count()).toBe(0);
  await page.locator('body').press('s');
  await expect.poll(() => latest.live?.alarms.filter(({ answered }) => !answered).length, PATIENCE).toBe(0);
});

test('other choices are tried by keys, both calls are told in words, and it goes back as it was', async () => {
  await page.locator('body').press('c');
  const form = page.getByRole('form', { name: 'Other choices' });
  await form.getByLabel('It is done at').selectOption('strength');
  await form.getByLabel('That is').fill('55');
  await form.getByLabel('That is').press('Enter');
  await form.waitFor({ state: 'detached' });
  await expect.poll(() => region('Replay').innerText(), PATIENCE).toContain('with other choices');
  await expect
    .poll(() => page.locator('.choices li').filter({ hasText: 'Front pot' }).allInnerTexts(), PATIENCE)
    .toContainEqual(expect.stringMatching(/\d+\smin sooner, at 1\d:\d\d and not at 14:\d\d/u));
  await expect.poll(() => page.locator('.choices .lines-chart .stroke').count(), PATIENCE).toBe(2);
  expect((await stripOf()).calls.some(({ alarm }) => alarm === 'finish')).toBe(true);
  // On a screen turned narrow the chart of both follows, and holds nothing else wide.
  await page.setViewportSize(PHONE);
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth), PATIENCE).toBe(PHONE.width);
  await page.setViewportSize(LAPTOP);
  await page.getByRole('button', { name: 'As it was' }).click();
  await expect.poll(() => latest.replay?.replay?.choices).toBeNull();
});

test('the page of a boil tells no count of its calls before all of it is read, not even of a replay that stood elsewhere', async () => {
  await page.getByRole('slider', { name: 'Go to a moment of the boil' }).press('Home');
  await expect.poll(replayT, PATIENCE).toBeLessThan(10 * MINUTE);
  const told = await page.evaluateHandle<string[]>(`(() => {
    const told = [];
    const look = () => {
      const words = document.querySelector('main .look-back, main [aria-busy=true]')?.textContent;
      if (words !== undefined && words !== told.at(-1)) told.push(words);
    };
    addEventListener('hashchange', () => new MutationObserver(look).observe(document.body, { subtree: true, childList: true, characterData: true }), { once: true });
    return told;
  })()`);
  await page.getByRole('link', { name: 'Notebook' }).click();
  await page.getByRole('link', { name: 'Three pots', exact: true }).click();
  await page.locator('main .look-back').waitFor(PATIENCE);
  await expect.poll(replayT, PATIENCE).toBe((await stripOf()).length);
  const words = await told.jsonValue();
  expect(words).toEqual([expect.stringContaining('still being read'), expect.stringMatching(/^Calls[1-9]/u)]);
});

test('boils are laid over each other, aligned otherwise by a press, with what differs in words', async () => {
  await page.getByRole('link', { name: 'Notebook' }).click();
  await page.getByRole('link', { name: 'Compare boils', exact: true }).click();
  for (const name of ['Three pots', 'Birch, one pot']) await page.getByRole('checkbox', { name }).check();
  const chart = page.locator('.lines-chart');
  await expect.poll(() => chart.locator('.stroke[d^="M"]').count(), PATIENCE).toBe(2);
  const before = await chart.locator('.stroke').first().getAttribute('d');
  await page.getByRole('button', { name: 'time of day' }).click();
  await expect.poll(() => chart.locator('.stroke').first().getAttribute('d'), PATIENCE).not.toBe(before);
  await expect.poll(() => region('What differs').innerText(), PATIENCE).toMatch(/min (slower|faster) from/u);
  await expect.poll(() => page.locator('.small-curve svg').count(), PATIENCE).toBe(2);
});

test('on a phone no word of the chart runs out of it', async () => {
  await page.getByRole('button', { name: 'Strength', exact: true }).click();
  // Birch is no maple syrup: the line is drawn where all that is shown is maple.
  await page.getByRole('checkbox', { name: 'Birch, one pot' }).uncheck();
  await page.setViewportSize(PHONE);
  const chart = page.locator('.lines-chart');
  await chart.getByText(/maple syrup from/u).waitFor(PATIENCE);
  const words = chart.locator('text, .level-key');
  const beyond = async (): Promise<number> => {
    const { x, width } = (await chart.boundingBox())!;
    const ends = await words.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().right));
    return Math.max(...ends) - x - width;
  };
  // It is drawn anew for the narrow screen a moment after that has come.
  await expect.poll(beyond, PATIENCE).toBeLessThanOrEqual(0);
  await page.setViewportSize(LAPTOP);
});

test('settings are run on past boils, and a boil opens at its worst moment', async () => {
  await page.getByRole('link', { name: '← Notebook' }).click();
  await page.getByRole('link', { name: 'Tune the calls', exact: true }).click();
  await page.getByLabel('“Nearly syrup” is called').selectOption('1800');
  await page.getByRole('button', { name: 'Run the boils again' }).press('Enter');
  const found = region('How they would have done');
  await expect.poll(() => found.innerText(), PATIENCE).toContain('of 2 boils whose finish somebody measured');
  const row = page.getByRole('row').filter({ hasText: 'time before the true finish' });
  const [was, would] = (await row.getByRole('cell').allInnerTexts()).map((text) => Number.parseInt(text, 10));
  expect(would).toBeGreaterThan(was! + 5);
  // On a phone nothing of the table lies beyond its edge, and each figure names its settings.
  await page.setViewportSize(PHONE);
  const side = region('The settings side by side');
  const [shown, whole] = await side.evaluate((table) => [table.clientWidth, table.scrollWidth]);
  expect(whole).toBe(shown);
  expect(
    await side
      .locator('td')
      .first()
      .evaluate((cell) => cell.ownerDocument.defaultView!.getComputedStyle(cell, '::before').content),
  ).toBe('"as it was"');
  await page.setViewportSize(LAPTOP);
  await found.getByRole('listitem').first().getByRole('button').click();
  await page.locator('.strip').waitFor(PATIENCE);
  await expect.poll(() => ids.includes(latest.replay?.boil ?? '')).toBe(true);
});

test('nothing was amiss on the way', () => {
  expect(errors).toEqual([]);
});
