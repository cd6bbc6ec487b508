// A person sets two probes up with a real page, a real host and a board on a pseudo terminal, in under five minutes of its time.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { stationPressureFromAltitudeHpa } from '../../src/core/physics/station-pressure.ts';
import { saturationTemperatureCelsius } from '../../src/core/physics/water-point.ts';
import type { MachineClock } from '../../src/host/clock.ts';
import { createHost } from '../../src/host/create-host.ts';
import type { Header } from '../../src/core/boil/entries.ts';
import type { KeptProbes } from '../../src/protocol/messages.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import { pretendBoard } from '../ingest/pretend-board.ts';
import { LAPTOP, openPage, PHONE, startChromium } from './chromium.ts';

/** The host's time and the board's go so many times as fast as this test's. */
const FASTER = 10;
const ALTITUDE_M = 640;
/** What water boils at there, by the standard atmosphere (ISO 2533) and IAPWS-IF97. */
const WATER_C = saturationTemperatureCelsius(stationPressureFromAltitudeHpa(ALTITUDE_M)!)!;
/** T1 shows so much too much, T2 too little; both lag by so many seconds. */
const TOO_MUCH = { T1: 0.4, T2: -0.3 };
const LAG_S = 4;

const startedMs = performance.now();
const simulatedMs = (): number => (performance.now() - startedMs) * FASTER;
const machine: MachineClock = {
  wallMs: () => Date.parse('2027-04-18T14:30:00Z') + simulatedMs(),
  monotonicMs: simulatedMs,
  after(milliseconds, call) {
    const timer = setTimeout(call, milliseconds / FASTER);
    return () => clearTimeout(timer);
  },
};

const board = pretendBoard();
const folder = mkdtempSync(join(tmpdir(), 'tarn-hollow-'));
/** Where each tip is now, °C. */
const around = { T1: 12, T2: 12 };
const tips = { T1: 12, T2: 12 };
let feeder: ReturnType<typeof setInterval>;
let saidAtMs = 0;
/** It prints bare degrees Fahrenheit. */
let inFahrenheit = false;
let host: Awaited<ReturnType<typeof createHost>>;
let served: Awaited<ReturnType<typeof serveHost>>;
let browser: Browser;
let page: Page;

/** A line a second of its time; the tips follow what is around them. */
async function say(): Promise<void> {
  const nowMs = simulatedMs();
  const share = 1 - Math.exp(-(nowMs - saidAtMs) / 1000 / LAG_S);
  saidAtMs = nowMs;
  for (const tip of ['T1', 'T2'] as const) tips[tip] += share * (around[tip] - tips[tip]);
  const shown = (tip: 'T1' | 'T2'): string => (tips[tip] + TOO_MUCH[tip]).toFixed(2);
  const bare = (tip: 'T1' | 'T2'): string => ((tips[tip] + TOO_MUCH[tip]) * 1.8 + 32).toFixed(1);
  if (inFahrenheit) return board.send(`T1=${bare('T1')} T2=${bare('T2')}\n`);
  await board.send(`T1=${shown('T1')}C T2=${shown('T2')}C\n`);
}

beforeAll(async () => {
  await board.plugIn();
  feeder = setInterval(() => void say(), 1000 / FASTER);
  host = await createHost({ folder, machine });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  browser = await startChromium();
  ({ page } = await openPage(browser, served.url, LAPTOP));
});

afterAll(async () => {
  clearInterval(feeder);
  await browser?.close();
  await served?.close();
  await host?.close();
  await board.remove();
  rmSync(folder, { recursive: true, force: true });
});

const button = (name: string) => page.getByRole('button', { name, exact: true });
const kept = async () =>
  ((await host.command({ ref: 'k', probes_kept: true })) as unknown as { data: KeptProbes }).data;

/** Chooses the board by its path. */
async function openLines(): Promise<void> {
  await page.evaluate("location.hash = '#/probes/setup'");
  await page.getByLabel('Not in the list?').fill(board.path);
  await button('Use it').click();
}

/** Chooses the board by its path, and confirms what is read in its lines. */
async function readLines(): Promise<void> {
  await openLines();
  await button('Yes, read them like this').click({ timeout: 30_000 });
}

/** In one theme: in the others the same boxes have other colours, which tests/browser/contrast.test.ts holds to. */
async function pictures(step: string): Promise<void> {
  for (const size of [LAPTOP, PHONE]) {
    await page.setViewportSize(size);
    await page.screenshot({ path: `test-results/setup-${step}-${size.width}.png`, fullPage: true });
    expect(await page.locator('html').evaluate((root) => root.scrollWidth - root.clientWidth)).toBe(0);
  }
  await page.setViewportSize(LAPTOP);
}

test('from plugging in to two checked probes, in under five minutes; nothing is kept before the end', async () => {
  const beganMs = simulatedMs();
  let pausedMs = 0;
  const look = async (step: string): Promise<void> => {
    const before = simulatedMs();
    await pictures(step);
    pausedMs += simulatedMs() - before;
  };
  await page.evaluate("location.hash = '#/probes/setup'");
  await page.getByText('Plug the board in').waitFor();
  await look('1-board');
  await page.getByLabel('Not in the list?').fill(board.path);
  await page.keyboard.press('Enter');

  await button('Yes, read them like this').waitFor({ timeout: 30_000 });
  expect(await page.getByRole('list', { name: 'What the board sends' }).innerText()).toContain('T1 is 12.40 °C');
  await look('2-lines');
  await button('Yes, read them like this').press('Enter');

  await page.getByText('None rises yet').waitFor({ timeout: 30_000 });
  around.T2 = 33;
  await page.getByText('T2 rises: that is the one in your hand.').waitFor({ timeout: 30_000 });
  await page.getByLabel('Name of T2').fill('Back pot');
  await page.getByLabel('Name of T1').fill('Front pot');
  await look('3-hand');
  await button('On to boiling water').press('Enter');

  await page.getByLabel('Height of the place over the sea').fill(String(ALTITUDE_M));
  around.T1 = around.T2 = WATER_C;
  expect(await button('Note Back pot').isDisabled()).toBe(true);
  for (const name of ['Back pot', 'Front pot']) {
    // A tip that moved between the look and the press is refused, and the press is made again.
    const noted = async (): Promise<number> => {
      if (await button(`Note ${name}`).isEnabled()) await button(`Note ${name}`).press('Enter');
      return page.locator('.channel', { hasText: name }).getByText('Noted').count();
    };
    await expect.poll(noted, { timeout: 60_000, interval: 500 }).toBe(1);
  }
  await look('4-boil');
  expect((await kept()).probes).toEqual([]);
  await button('On to ice water').press('Enter');
  await page.getByText('This is no ice water yet').first().waitFor();
  expect(await button('Note Back pot').isDisabled()).toBe(true);
  await look('5-ice');
  await button('Leave ice water out').press('Enter');

  await page.getByText('shows 0.40 °C too much').waitFor();
  await page.getByText('shows 0.30 °C too little').waitFor();
  await look('6-keep');
  expect((await kept()).probes).toEqual([]);
  await button('Keep these probes').press('Enter');
  await page.getByText('The probes are set up.').waitFor();
  // It is listened to on, as any board is until somebody stops it.
  expect(await host.command({ ref: 'h', heard_port: { path: board.path } })).toMatchObject({ ok: true });
  await button('Stop listening').waitFor();
  const row = page.getByRole('row', { name: /Back pot \(T2\)/ });
  await row.getByText(`${(WATER_C + TOO_MUCH.T2).toFixed(1)} °C`).waitFor();
  expect((simulatedMs() - beganMs - pausedMs) / 60_000).toBeLessThan(5);

  // The number is put right by the check, and what came stands beneath it.
  await row.getByText(/as it comes: \d/).waitFor();
  await page.evaluate("location.hash = '#/plan'");
  await expect.poll(() => page.getByLabel('Height over the sea').inputValue()).toBe(String(ALTITUDE_M));
  // Set up again, the board that is heard is offered; a place that was typed wrongly is let go with Back and can be put right.
  await page.evaluate("location.hash = '#/probes/setup'");
  await button(`Use the board on ${board.path}`).waitFor();
  await page.getByLabel('Not in the list?').fill('/dev/inventde-0');
  await button('Use it').click();
  await button('Back').click();
  expect(await page.getByLabel('Not in the list?').inputValue()).toBe('/dev/inventde-0');
  await button('Leave; keep nothing').click();
  await page.getByRole('heading', { name: 'Probes', exact: true }).waitFor();
  await expect.poll(() => page.getByText('inventde-0').count()).toBe(0);

  const { probes, place, due } = await kept();
  expect(place).toEqual({ altitude_m: ALTITUDE_M });
  expect(due).toBeNull();
  expect(probes.map(({ name, channel }) => [channel, name])).toEqual([
    ['T1', 'Front pot'],
    ['T2', 'Back pot'],
  ]);
  for (const { channel, error, checks } of probes) {
    expect(error?.tooHighC).toBeCloseTo(TOO_MUCH[channel as 'T1' | 'T2'], 1);
    // The weather about the standard atmosphere: 0.3 °C of water point (issue: ± 0.6 at 95 %).
    expect(error?.sigmaC).toBeGreaterThan(0.3);
    expect(checks[0]?.at).toMatch(/^2027-04-18T/);
  }
});

test('left in the middle, a board that was listened to before goes on being listened to', async () => {
  await readLines();
  await button('Leave; keep nothing').click();
  await page.getByRole('heading', { name: 'Probes', exact: true }).waitFor();
  await page.getByText('Hearing Front pot (T1), Back pot (T2)').waitFor({ timeout: 30_000 });
  await button('Stop listening').click();
  await page.getByText('Boards in use').waitFor({ state: 'detached' });
});

test('left in the middle, nothing is kept of it, and a board that was not listened to is let go', async () => {
  await readLines();
  await page.getByLabel('Name of T1').fill('Left');
  await button('Leave; keep nothing').click();
  await page.getByRole('heading', { name: 'Probes' }).waitFor();
  expect((await kept()).probes.map(({ name }) => name)).toEqual(['Front pot', 'Back pot']);
  // It is let go after the page has left.
  await expect.poll(() => host.command({ ref: 'h', heard_port: { path: board.path } })).toMatchObject({ ok: false });
});

test('left for another view, no board is waited for; back again, it goes on where it was', async () => {
  await readLines();
  await page.getByLabel('Name of T1').fill('Half way');
  await page.evaluate("location.hash = '#/probes'");
  await page.getByRole('heading', { name: 'Probes', exact: true }).waitFor();
  await page.getByText('Boards in use').waitFor({ state: 'detached' });
  const heard = () => host.command({ ref: 'h', heard_port: { path: board.path } });
  await expect.poll(heard).toMatchObject({ ok: false });
  await page.evaluate("location.hash = '#/probes/setup'");
  await page.getByText('None rises yet').waitFor({ timeout: 30_000 });
  expect(await page.getByLabel('Name of T1').inputValue()).toBe('Half way');
  await page.reload();
  await expect.poll(heard).toMatchObject({ ok: false });
  await page.getByText('Plug the board in').waitFor();
});

test('what a page that is gone had listened to can be stopped by the next', async () => {
  await page.evaluate("location.hash = '#/probes'");
  await page.getByLabel('Not in the list?').fill(board.path);
  await button('Listen').last().click();
  await page.getByText('Boards in use').waitFor();
  await page.reload();
  await button('Stop listening').click();
  await page.getByText('Boards in use').waitFor({ state: 'detached' });
});

test('the form of a boil names the pan as its probe was named, with nothing typed again', async () => {
  await page.evaluate("location.hash = '#/start'");
  await page.getByLabel('Not in the list?').fill(board.path);
  await page.locator('.typed-port').getByRole('button', { name: 'Listen' }).click();
  const choice = page.getByRole('combobox', { name: 'Probe' });
  await expect.poll(() => choice.locator('option').count(), { timeout: 30_000 }).toBe(3);
  const second = await choice.locator('option', { hasText: 'Back pot (T2) on' }).getAttribute('value');
  await choice.selectOption(second);
  expect(await page.getByLabel('What you call it').inputValue()).toBe('Back pot');
  await page.getByLabel('Name of this boil').fill('First run');
  // A look away, and a reload, lose nothing of what was typed and chosen.
  await page.evaluate("location.hash = '#/probes'");
  await page.getByRole('heading', { name: 'Probes', exact: true }).waitFor();
  await page.evaluate("location.hash = '#/start'");
  await expect.poll(() => page.getByLabel('Name of this boil').inputValue()).toBe('First run');
  await expect.poll(() => choice.locator('option:checked').innerText()).toContain('Back pot (T2)');
  // Without its board the chosen probe is not known: it is said, and the pan stands as the host has it.
  await button('Stop listening').click();
  // The host has told the page that nothing is heard any more.
  await button('Stop listening').waitFor({ state: 'detached' });
  await page.evaluate("location.hash = '#/probes'");
  await page.getByRole('heading', { name: 'Probes', exact: true }).waitFor();
  await page.evaluate("location.hash = '#/start'");
  await page.getByText('The probe that was chosen for Pan 1 is not known any more').waitFor();
  expect(await choice.inputValue()).toBe('');
  expect(await page.getByLabel('Name of this boil').inputValue()).toBe('First run');
  await button('Clear what I typed').click();
  expect(await page.getByLabel('Name of this boil').inputValue()).toBe('');
  await page.getByLabel('Name of this boil').fill('Second run');
  await page.getByLabel('Not in the list?').fill(board.path);
  await page.locator('.typed-port').getByRole('button', { name: 'Listen' }).click();
  await choice.locator('option', { hasText: 'Back pot (T2) on' }).waitFor({ state: 'attached', timeout: 30_000 });
  await choice.selectOption(await choice.locator('option', { hasText: 'Back pot (T2) on' }).getAttribute('value'));
  await page.evaluate("location.hash = '#/probes'");
});

test('a board whose lines do not say their unit is read in the one that was chosen, there and in the boil', async () => {
  inFahrenheit = true;
  around.T1 = around.T2 = WATER_C;
  // 208 without a unit is taken for Fahrenheit, and the person is asked.
  await openLines();
  await button('No. The numbers without a unit are degrees Celsius.').waitFor({ timeout: 30_000 });
  const sent = page.getByRole('list', { name: 'What the board sends' });
  expect(await sent.innerText()).toMatch(/T1 is \d+\.\d\s°F/);
  for (const size of [PHONE, LAPTOP]) {
    await page.setViewportSize(size);
    await page.screenshot({ path: `test-results/setup-2-unsure-${size.width}.png`, fullPage: true });
    const boxes = await Promise.all(
      (await page.locator('.setup-choices button').all()).map((one) => one.boundingBox()),
    );
    expect(boxes).toHaveLength(3);
    const [first, second, third] = boxes.map((box) => box!);
    expect(second!.y - first!.y - first!.height).toBeGreaterThanOrEqual(8);
    expect(third!.y - second!.y - second!.height).toBeGreaterThanOrEqual(8);
    expect(await page.locator('.setup-choices .main-button').allInnerTexts()).toEqual(['Yes, read them like this']);
  }
  await button('Yes, read them like this').click();
  await page.getByLabel('Name of T1').fill('Kettle');
  await button('On to boiling water').click();
  await page.getByLabel('Height of the place over the sea').fill(String(ALTITUDE_M));
  // A tip that just came to rest may be found moving again at the press: it is noted at the next.
  const noted = page.locator('.channel', { hasText: 'Kettle' }).getByText('Noted');
  const press = async (): Promise<number> => {
    const note = button('Note Kettle');
    if ((await noted.count()) === 0 && (await note.isEnabled())) await note.click();
    return noted.count();
  };
  await expect.poll(press, { timeout: 60_000, interval: 500 }).toBe(1);
  await button('On to ice water').click();
  await button('Leave ice water out').click();
  await button('Keep them and start a boil').click();
  const height = page.getByLabel('Height of the place over the sea');
  await expect.poll(() => height.inputValue()).toBe(String(ALTITUDE_M));
  const choice = page.getByRole('combobox', { name: 'Probe' });
  await expect.poll(() => choice.locator('option').count(), { timeout: 30_000 }).toBe(3);
  await choice.selectOption(await choice.locator('option', { hasText: 'Kettle (T1) on' }).getAttribute('value'));
  await button('Start the boil').click();
  await page.locator('.card', { hasText: 'Kettle' }).waitFor();
  await expect
    .poll(() => page.locator('.card .caption').innerText(), { timeout: 30_000 })
    .toMatch(/boiling water\s9[78]\.\d\s°C/);
  const [header] = [...host.recordingOf(host.running?.boil ?? '')].map((line) => JSON.parse(line) as Header);
  expect(header?.probes).toMatchObject([{ channel: 'T1', sensor: { kind: 'temperature', unit: 'F' } }]);
  await host.command({ ref: 'e', end: true });
  inFahrenheit = false;
  await page.evaluate("location.hash = '#/probes'");
});

test('a boil with such a probe begins with what the check told', async () => {
  const setup = {
    site: { altitude_m: ALTITUDE_M },
    ports: [{ id: 'A', path: board.path }],
    probes: [{ id: 'A/T1', port: 'A', channel: 'T1' }],
    pans: [{ id: 'p1', probe: 'A/T1' }],
  };
  expect(await host.command({ ref: 's', start: setup })).toMatchObject({ ok: true });
  const running = host.running?.boil ?? '';
  const [header] = [...host.recordingOf(running)].map((line) => JSON.parse(line) as { learnt?: unknown });
  expect(header?.learnt).toMatchObject({ names: expect.arrayContaining(['probe A/T1']) as unknown });
  await host.command({ ref: 'e', end: true });
});

test('set up again, the names are offered again, though the page is new and nothing tells the board from others', async () => {
  await page.evaluate("location.hash = '#/probes/setup'");
  await page.reload();
  await readLines();
  const name = page.getByLabel('Name of T1');
  await name.waitFor({ timeout: 30_000 });
  expect(await name.inputValue()).toBe('Kettle');
  expect(await page.getByLabel('Name of T2').inputValue()).toBe('Back pot');
  await button('Leave; keep nothing').click();
});

test('a probe named after a pan of the last boil is given to it, and a pan that none watches is told', async () => {
  const setup = {
    pans: [
      { id: 'p1', name: 'Kettle' },
      { id: 'p2', name: 'Side pot' },
    ],
  };
  expect(await host.command({ ref: 's', start: setup })).toMatchObject({ ok: true });
  await host.command({ ref: 'e', end: true });
  await page.evaluate("location.hash = '#/start'");
  const choices = page.getByRole('combobox', { name: 'Probe' });
  await expect.poll(() => choices.count()).toBe(2);
  await page.getByLabel('Not in the list?').fill(board.path);
  await page.locator('.typed-port').getByRole('button', { name: 'Listen' }).click();
  const given = () => choices.first().locator('option:checked').innerText();
  await expect.poll(given, { timeout: 30_000 }).toContain('Kettle (T1)');
  expect(await choices.nth(1).inputValue()).toBe('');
  await page.getByText('No probe watches Side pot, though Back pot (T2) is heard.').waitFor();
  await page.getByText('Hearing Kettle (T1), Back pot (T2)').waitFor();
  await page.screenshot({ path: 'test-results/start-named.png', fullPage: true });
  await page.evaluate("location.hash = '#/probes'");
  await page.getByRole('rowheader', { name: 'Kettle (T1)' }).waitFor();
  await page.screenshot({ path: 'test-results/probes-named.png', fullPage: true });
});
