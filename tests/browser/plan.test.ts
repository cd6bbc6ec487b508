// The Plan screen through the real page: typed by hand, another plan beside it, made the boil, and what is left of it while it runs.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import type { Now } from '../../src/protocol/messages.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { serveHost } from '../../src/web/serve.ts';
import type { Served } from '../../src/web/serve.ts';
import { LAPTOP, PHONE, openPage, startChromium } from './chromium.ts';

let folder: string;
let host: Awaited<ReturnType<typeof createHost>>;
let served: Served;
let browser: Browser;
let page: Page;
let errors: string[];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tarn-hollow-'));
  host = await createHost({ folder });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  browser = await startChromium();
  ({ page, errors } = await openPage(browser, served.url, LAPTOP));
  page.setDefaultTimeout(10_000);
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await served?.close();
  await host?.close();
  await rm(folder, { recursive: true, force: true });
});

const results = () => page.getByRole('region', { name: 'What to expect' });

async function fillPot(index: number, name: string, diameter: string, power: string): Promise<void> {
  const pot = page.locator('.pan-fields').nth(index);
  await pot.getByLabel('What you call it').fill(name);
  await pot.getByLabel('Vessel').selectOption('round');
  await pot.getByLabel('Width across').fill(diameter);
  await pot.getByLabel('Fire').selectOption('propane');
  await pot.getByLabel('Burner power').fill(power);
}

const howMuch = () => page.getByLabel('How much sap');

test('a size that is still to be typed is asked for quietly while the plan goes on without it, and a wrong one refused once it is left', async () => {
  const loud = page.locator('.plan-problem');
  const quiet = page.locator('.plan-ask');
  const pot = page.locator('.pan-fields').first();
  await page.getByRole('link', { name: 'Plan' }).click();
  await howMuch().fill('9');
  await pot.getByLabel('Vessel').selectOption('round');
  await expect
    .poll(() => quiet.allTextContents())
    .toEqual([expect.stringMatching(/^Pan 1 still wants its sizes, or a burner’s power: /)]);
  await expect.poll(() => results().textContent()).toMatch(/L of syrup/);
  expect(await page.locator('.plan-old').count()).toBe(0);
  await pot.getByLabel('Width across').fill('4');
  const sentence = 'Pan 1, width across: 4 is outside of 50 to 5000\u00a0mm.';
  await expect.poll(() => quiet.allTextContents()).toEqual([sentence]);
  expect(await loud.count()).toBe(0);
  const across = pot.getByLabel('Width across');
  expect(await across.getAttribute('aria-invalid')).toBeNull();
  await page.keyboard.press('Tab');
  await expect.poll(() => loud.allTextContents()).toEqual([`✕ ${sentence}`]);
  // It is said at the field, too, and what still stands of the plan is said to be of other numbers wherever it is read.
  expect(await across.getAttribute('aria-invalid')).toBe('true');
  const told = await across.evaluate(
    (field) => field.ownerDocument.getElementById(field.getAttribute('aria-describedby') ?? '')?.textContent,
  );
  expect(told).toBe('✕ Width across: 4 is outside of 50 to 5000\u00a0mm.');
  expect(await page.locator('.plan-old').getByText('The plan as it was before that:').count()).toBe(2);
});

test('a plan is gone only once somebody clears it, and can be taken back', async () => {
  await page.getByRole('button', { name: 'Clear this plan' }).click();
  await expect.poll(() => howMuch().inputValue()).toBe('');
  await page.getByRole('button', { name: 'Take back' }).click();
  await expect.poll(() => howMuch().inputValue()).toBe('9');
  await page.getByRole('button', { name: 'Clear this plan' }).click();
  await expect.poll(() => howMuch().inputValue()).toBe('');
  await page.reload();
  await expect.poll(() => howMuch().inputValue()).toBe('');
});

test('the day of Tarn Hollow, invented, is planned by what is typed', async () => {
  await page.getByRole('link', { name: 'Plan' }).click();
  await expect.poll(() => page.getByText('How much sap: type how many L there are').count()).toBe(1);
  await page.getByLabel('How much sap').fill('140');
  await page.getByRole('combobox', { name: /^Sap/ }).selectOption('birch');
  await page.getByLabel('How strong, if measured').fill('0.9');
  await page.getByLabel('Height over the sea').fill('640');
  await page.getByLabel('Fire lit').fill('2027-04-18T07:30');
  // Who hears the page is told the day in the words that stand below.
  const told = await page
    .getByLabel('Fire lit')
    .evaluate((field) => field.ownerDocument.getElementById(field.getAttribute('aria-describedby') ?? '')?.textContent);
  expect(told).toBe('Sunday 18 April 2027, 07:30');
  // The browser writes 4/18 or 18/4 as its own language does; which day was meant stands beside it in words.
  await page
    .locator('label', { hasText: 'Fire lit' })
    .getByText('Sunday 18 April 2027, 07:30', { exact: true })
    .waitFor();
  await fillPot(0, 'Back pot', '400', '16');
  await page.getByRole('button', { name: '+ Another pan' }).click();
  await fillPot(1, 'Middle pot', '360', '12');
  await page.getByRole('button', { name: '+ Another pan' }).click();
  await fillPot(2, 'Front pot', '220', '5');
  // What is said of two pots only stands there until the host has planned the third.
  await expect.poll(() => results().textContent()).toMatch(/Pour (Back pot and )?Middle pot into Front pot/);
  expect(await results().textContent()).toMatch(/1\.4\sL of syrup/);
  // Water boils at 97.85 °C at 640 m (ISO 2533 and IAPWS-IF97), and birch of 67 °Bx about 6.2 °C over it.
  expect(await results().textContent()).toMatch(/104\.\d\s°C on the thermometeror 219\.\d\s°F/);
  await expect.poll(() => results().textContent()).toMatch(/Done about 1\d:\d\d/);
});

test.each([LAPTOP, PHONE])('syrup, hours and fuel stay in sight while the last pan is typed', async (size) => {
  await page.setViewportSize(size);
  const last = page.locator('.pan-fields').last().getByLabel('Burner power');
  await last.focus();
  await last.evaluate((field) => field.scrollIntoView({ block: 'center' }));
  for (const words of [/\d\sL of syrup/, /Done about/, /kg of propane/]) {
    const figure = results().locator('.plan-top .plan-main').filter({ hasText: words });
    const box = (await figure.boundingBox())!;
    expect(box.y).toBeGreaterThan(50);
    expect(box.y + box.height).toBeLessThan(size.height - 40);
    const covered = await figure.evaluate((element) => {
      const { left, top, height } = element.getBoundingClientRect();
      return document.elementFromPoint(left + 4, top + height / 2) !== element;
    });
    expect(covered).toBe(false);
  }
  await page.setViewportSize(LAPTOP);
});

test('what a plan gives stays where it is while the pans beside it are typed, and the end of it is clear of the figures', async () => {
  const steps = results().locator('.plan-steps');
  // Past the heading, which goes with the page.
  await page.evaluate(() => scrollTo(0, 120));
  const before = (await steps.boundingBox())!;
  await page
    .locator('.pan-fields')
    .last()
    .getByLabel('Burner power')
    .evaluate((field) => field.scrollIntoView({ block: 'center' }));
  expect(await page.evaluate(() => scrollY)).toBeGreaterThan(300);
  expect(Math.abs((await steps.boundingBox())!.y - before.y)).toBeLessThan(2);
  const keep = page.getByRole('button', { name: 'Keep this plan', exact: true });
  await keep.scrollIntoViewIfNeeded();
  const isCovered = await keep.evaluate((button) => {
    const { left, top } = button.getBoundingClientRect();
    return !button.contains(document.elementFromPoint(left + 8, top + 3));
  });
  expect(isCovered).toBe(false);
});

test('what is typed outlives a reload', async () => {
  await page.reload();
  await expect.poll(() => results().textContent()).toMatch(/1\.4\sL of syrup/);
  expect(await page.locator('.pan-fields').count()).toBe(3);
});

test('another plan beside it says what it changes: a burner less takes longer', async () => {
  await page.getByRole('button', { name: 'Keep this plan', exact: true }).click();
  // One is kept at a time: a second press would replace it, and says so.
  await page.getByRole('button', { name: 'Keep this plan instead' }).waitFor();
  await page.locator('.pan-fields').nth(1).getByRole('button', { name: 'Remove this pan' }).click();
  await expect.poll(() => results().textContent()).toMatch(/Beside the plan you kept: \d\sh\s\d\d\smin longer/);
  expect(await results().textContent()).toMatch(/The kept plan: Done about 1\d:\d\d/);
  await page.getByRole('button', { name: 'Go back to the kept plan' }).click();
  await expect.poll(() => page.locator('.pan-fields').count()).toBe(3);
  await expect.poll(() => results().textContent()).toMatch(/Beside the plan you kept: \d\sh\s\d\d\smin sooner/);
});

test('what is typed and what was kept are there the next morning, at the port of another start', async () => {
  await served.close();
  await host.close();
  await page.close();
  host = await createHost({ folder });
  served = await serveHost(host, { port: 0, folder: await ensureScreenBuilt(), nowMs: () => performance.now() });
  ({ page, errors } = await openPage(browser, served.url, LAPTOP));
  page.setDefaultTimeout(10_000);
  await page.getByRole('link', { name: 'Plan' }).click();
  await expect.poll(() => howMuch().inputValue()).toBe('140');
  expect(await page.locator('.pan-fields').count()).toBe(3);
  await expect.poll(() => results().textContent()).toMatch(/Beside the plan you kept: \d\sh\s\d\d\smin sooner/);
  await page.getByRole('button', { name: 'Put the kept plan away' }).click();
  await page.getByRole('button', { name: 'Keep this plan', exact: true }).click();
  await page.getByText('Kept: it is here tomorrow, too.').waitFor();
  await page.getByRole('button', { name: 'Put the kept plan away' }).click();
});

test('in other units it is the same plan', async () => {
  const choose = async (units: string): Promise<void> => {
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('button', { name: units, exact: true }).click();
    await page.getByRole('link', { name: 'Plan' }).click();
  };
  await choose('US');
  await expect.poll(() => page.getByLabel('How much sap').inputValue()).toBe('36.98');
  await expect.poll(() => results().textContent()).toMatch(/0\.37\sUS gal of syrup/);
  await choose('Metric');
  await expect.poll(() => page.getByLabel('How much sap').inputValue()).toBe('140');
  await expect.poll(() => results().textContent()).toMatch(/1\.4\sL of syrup/);
});

test.each([LAPTOP, PHONE])(
  'what is usual is read whole in an empty field, in either tongue and each unit',
  async (size) => {
    await page.setViewportSize(size);
    const field = page.locator('.plan-page input[placeholder*="1"]').first();
    for (const language of ['fr', 'en'] as const)
      for (const strength of ['sg', 'brix'] as const) {
        await host.command({ ref: 'r', settings: { language, strength } });
        await expect
          .poll(() => field.getAttribute('placeholder'))
          .toMatch(strength === 'sg' ? /1[.,]\d{3}$/u : /\d[.,]\d$/u);
        await expect
          .poll(() => field.getAttribute('placeholder'))
          .toMatch(language === 'fr' ? /^habituel/u : /^usual/u);
        const cut = await page.locator('.plan-page input.number').evaluateAll((fields) =>
          (fields as HTMLInputElement[]).flatMap((one) => {
            const { paddingLeft, paddingRight } = getComputedStyle(one);
            const { fontStyle, fontWeight, fontSize, fontFamily } = getComputedStyle(one, '::placeholder');
            const pen = document.createElement('canvas').getContext('2d')!;
            pen.font = `${fontStyle} ${fontWeight} ${fontSize} ${fontFamily}`;
            const room = one.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight);
            return pen.measureText(one.placeholder).width > room ? [`${one.placeholder}: ${room}`] : [];
          }),
        );
        expect(cut).toEqual([]);
      }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(size.width);
    await page.setViewportSize(LAPTOP);
  },
);

test('who leaves early is told what to keep for another day', async () => {
  await page.getByLabel('I have to leave').fill('2027-04-18T13:00');
  await expect.poll(() => results().textContent()).toMatch(/Boil \d+\sL, keep \d+\sL for another day/);
  const [, boil, keep] = /Boil (\d+)\sL, keep (\d+)\sL/u.exec((await results().textContent())!)!;
  // The amounts add up, and all other figures are of what is boiled.
  expect(Number(boil) + Number(keep)).toBe(140);
  expect(await results().textContent()).toMatch(new RegExp(`all figures are of ${boil}\\sL of the 140\\sL`, 'u'));
  expect(await results().textContent()).toMatch(/nine times in ten; \d+\sL only one time in two/);
  // What is kept for another day is no sap of the boil that is made of it.
  await page.getByRole('button', { name: 'Make this the boil' }).click();
  await page.getByText(new RegExp(`Begins from your plan: ${boil}(\\.0)?\\sL of sap`, 'u')).waitFor();
  await page.getByRole('link', { name: 'Plan', exact: true }).click();
  // Pressed before the host has planned anew, it is the boil of what stands in the form.
  await expect.poll(() => results().textContent()).toMatch(/keep \d+\sL for another day/);
  const answer = host.command.bind(host);
  const held = Promise.withResolvers<void>();
  host.command = async (command) => {
    if ('plan' in (command as object)) await held.promise;
    return answer(command);
  };
  await page.getByLabel('I have to leave').fill('');
  await page.getByRole('button', { name: 'Make this the boil' }).click();
  held.resolve();
  await page.getByText(/Begins from your plan: 140(\.0)?\sL of sap/u).waitFor();
  host.command = answer;
  await page.getByRole('link', { name: 'Plan', exact: true }).click();
  await page.getByLabel('I have to leave').fill('2027-04-18T07:00');
  await expect.poll(() => page.getByText('You leave before the fire is lit').count()).toBe(1);
  await page.getByLabel('I have to leave').fill('');
});

test('it fits a phone without scrolling sideways, and the letters of its picture stay as large as they are', async () => {
  await page.setViewportSize(PHONE);
  const letters = page.locator('.plan-timeline :is(text, .plan-pan span)');
  await expect.poll(async () => (await page.locator('.plan-timeline').boundingBox())?.width).toBeLessThan(PHONE.width);
  const heights = await letters.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
  expect(Math.min(...heights)).toBeGreaterThan(13);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
  await page.setViewportSize(LAPTOP);
});

test('made the boil it fills in the form and notes its pressure, and while it runs says what is left and which pan lacks what', async () => {
  let noted: Now['marks'] = [];
  const stop = host.subscribe((message) => void (noted = message.kind === 'now' ? message.marks : noted));
  await page.getByLabel('Today’s pressure').fill('939');
  await expect.poll(() => page.getByLabel('That figure is').inputValue()).toBe('station');
  await page.locator('.pan-fields').nth(2).getByLabel('Lit').selectOption('end');
  await expect.poll(() => results().textContent()).toMatch(/light the fire under Back pot and Middle pot\./);
  expect(await results().textContent()).toMatch(/into Front pot and light the fire under it/);
  await page.getByRole('button', { name: 'Make this the boil' }).click();
  expect(await page.getByText(/Begins from your plan: /).textContent()).toMatch(/ 140\sL of sap at 0\.9\s°Bx/);
  expect(await page.getByLabel('What you call it').first().inputValue()).toBe('Back pot');
  expect(await page.getByText(/Front pot stands empty until what is left is poured in/).count()).toBe(1);
  expect(await page.getByText(/The plan’s pressure, 939\shPa, is noted/).count()).toBe(1);
  await page.getByRole('button', { name: 'Start the boil' }).click();
  await expect.poll(() => host.running?.boil).toBeDefined();
  await expect
    .poll(() => noted.map(({ mark }) => mark))
    .toContainEqual(expect.objectContaining({ kind: 'pressure', hpa: 939, at: 'station' }));
  await expect
    .poll(() => noted.map(({ mark }) => mark))
    .toContainEqual(expect.objectContaining({ kind: 'depth', pan: 'p3', mm: 0 }));
  stop();
  // The form leads to the pans once the host has answered all that it sent.
  await page.locator('.card').first().waitFor();
  // A pot that waits for the end does not make it look as if the boil was over.
  await expect.poll(() => page.locator('.card').last().textContent()).toMatch(/Off the fire/);
  expect(await page.getByRole('region', { name: 'All pans are off the fire.' }).count()).toBe(0);
  await host.command({ ref: 'r', mark: { kind: 'top-up', pan: 'p1', litres: 20, brix: 0.9 } });
  await page.getByRole('link', { name: 'Plan' }).click();
  const left = page.getByRole('region', { name: 'What is left of this boil' });
  await expect.poll(() => left.textContent()).toMatch(/20\sL of sap are noted as poured in, 120\sL of the plan/);
  await expect.poll(() => left.textContent()).toMatch(/told: Middle pot: how much is in it\./);
  // What is planned for another day tells no other time beside it until somebody asks for it.
  expect(await page.getByLabel('How much sap').isVisible()).toBe(false);
  await page.getByText('Plan another boil, for after this one').click();
  await page.getByLabel('How much sap').waitFor();
  expect(errors).toEqual([]);
});

test('a boil that is planned after it is called by the last name and the next number', async () => {
  await host.command({ ref: 'r', end: true });
  await page.getByRole('button', { name: 'Clear this plan' }).click();
  await howMuch().fill('60');
  await page.getByRole('button', { name: 'Make this the boil' }).click();
  await expect.poll(() => page.getByLabel('Name of this boil').inputValue()).toMatch(/\S 2$/);
});
