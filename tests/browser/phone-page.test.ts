// What a phone shows of the calls and of each pan: what still calls first, what is over in one line, and a pan off the fire as such.
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ALARM_WORDS } from '../../src/core/alarms/words.ts';
import type { Now } from '../../src/protocol/messages.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, PHONE, openPage, startChromium } from './chromium.ts';
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
  await page.getByText(/Ended at 12:30, after 5\sh\./).waitFor();
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

test('a silence that runs on is shown after all was seen, and can be ended where the phone may answer', async () => {
  const now = liveNow(2);
  const { page, host, close } = await phoneOn({ ...now, sound: { priority: null, silencedUntil: now.t + 60_000 } });
  const line = page.locator('.phone-quiet');
  await line.getByText('Quiet until').waitFor();
  expect(await line.getByRole('button').count()).toBe(0);
  host.show({ kind: 'phone', name: 'Shelf', may_answer: true } as never);
  host.show({ ...now, sound: { priority: null, silencedUntil: now.t + 60_000 } });
  await line.getByRole('button', { name: 'Sound on again' }).click();
  await expect.poll(() => host.heard.at(-1)).toMatchObject({ answer: { silence: { seconds: 0 } } });
  host.show(now);
  await line.waitFor({ state: 'detached' });
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
  expect(await off.innerText()).toContain('at the probe');
  expect(await on.locator('.phone-big').innerText()).toMatch(/^[+−]?\d+(\.\d)?°C$/);
  expect(await on.locator('.phone-bar-words').innerText()).toMatch(/water[\s\S]*done[\s\S]*burns/);
  await close();
});

test('the words under a bar stand under their marks', async () => {
  const { page, close } = await phoneOn(liveNow(1));
  await page.locator('.phone-bar-words span').nth(2).waitFor();
  const off = await page.evaluate<number[]>(`(() => {
    const box = (element) => element.getBoundingClientRect();
    const of = (name) => box(document.querySelector('.phone-bar-' + name));
    const marks = [of('cold').right, of('done').left, of('burns').left];
    return [...document.querySelectorAll('.phone-bar-words span')].map((word, place) => {
      const { left, right } = box(word);
      return Math.abs((left + right) / 2 - marks[place]);
    });
  })()`);
  expect(Math.max(...off)).toBeLessThanOrEqual(2);
  await close();
});

test('of a pan off the fire that was read by hand the number of then is not shown as that of now, as on its card', async () => {
  const now = liveNow(2);
  const readings = now.readings.map((reading) => ({ ...reading, stage: 'off' as const, probe: null }));
  const { page, close } = await phoneOn({ ...now, readings });
  await page.locator('.phone-pan').nth(1).waitFor();
  expect(await page.locator('.phone-big, .phone-bar').count()).toBe(0);
  await close();
});

test('a pan that was emptied says that it is empty, also on the wall', async () => {
  const now = liveNow(2);
  const [first, second] = now.readings;
  const emptied = { ...first!, stage: 'off' as const, probe: null, litres: 0, depth_mm: 0 };
  const { page, close } = await phoneOn({ ...now, readings: [emptied, second!] });
  const stage = page.locator('.phone-pan').first().locator('.phone-stage');
  expect(await stage.innerText()).toBe('Empty, off the fire');
  await page.getByRole('button', { name: 'Wall view' }).click();
  await page.locator('.phone-wall').waitFor();
  expect(await stage.innerText()).toBe('Empty, off the fire');
  await close();
});

test('the pan that calls stands first, and on the wall, where all are in sight, in its place', async () => {
  const call = { ...alarms[0]!, ...ALARM_WORDS['low-level'], alarm: 'low-level' as const, pan: 'p3' };
  const { page, close } = await phoneOn(liveNow(4, { alarms: [call] }));
  const names = page.locator('.phone-pan .phone-name');
  await names.nth(3).waitFor();
  expect(await names.allInnerTexts()).toEqual(['Warming pan', 'Front pot', 'Back pot', 'Side pan']);
  await page.getByRole('button', { name: 'Wall view' }).click();
  await page.locator('.phone-wall').waitFor();
  expect(await names.allInnerTexts()).toEqual(['Front pot', 'Back pot', 'Warming pan', 'Side pan']);
  await close();
});

test('a pan that only warms up shows its temperature, and how far that is from a boil without a sign', async () => {
  const { page, host, close } = await phoneOn(liveNow(3));
  const warming = page.locator('.phone-pan').nth(2);
  expect(await warming.locator('.phone-big').innerText()).toBe('41.6°C');
  expect((await warming.locator('.phone-caption').innerText()).replaceAll('\u00a0', ' ')).toMatch(
    /^56(\.3)? °C under boiling water/,
  );
  const desk = (await openPage(browser, host.url, LAPTOP)).page;
  const card = desk.locator('[data-pan="p3"]');
  expect(await card.locator('.big').innerText()).toMatch(/^41\.6\s*°\s*C$/);
  expect(await card.locator('.caption').innerText()).toMatch(/^56(\.3)?\s°C under boiling water/);
  await desk.context().close();
  await close();
});

const [panOne, panTwo] = [liveNow(4).readings[0]!, liveNow(4).readings[1]!];
/** Eight pans that boil. */
const eight = (): Now => {
  const now = liveNow(4);
  const ids = Array.from({ length: 8 }, (_, place) => `e${place}`);
  const { header } = now;
  return {
    ...now,
    header: header && { ...header, pans: ids.map((id) => ({ ...header.pans![0]!, id, name: `Pan ${id}` })) },
    readings: ids.map((pan, place) => ({ ...(place % 2 === 0 ? panOne : panTwo), pan })),
    limits: ids.map((pan) => ({ ...now.limits[0]!, pan })),
  };
};

test('of eight pans six are seen at once, whole', async () => {
  const { page, close } = await phoneOn(eight());
  await page.locator('.phone-pan').nth(7).waitFor();
  const sixth = (await page.locator('.phone-pan').nth(5).boundingBox())!;
  const foot = (await page.locator('.phone-foot').boundingBox())!;
  expect(sixth.y + sixth.height).toBeLessThanOrEqual(foot.y);
  await close();
});

test.each([
  [390, 844],
  [360, 640],
])('at %i x %i a phone that may answer sees both buttons whole, and they do what they say', async (width, height) => {
  const three = ['p1', 'p2', 'p3'].map((pan) => ({ ...calling!, pan }));
  const now = liveNow(3, { alarms: three, sound: { priority: 'high', silencedUntil: null } });
  const { page, host, close } = await phoneOn(now);
  await page.setViewportSize({ width, height });
  // As the phones' own server tells it once to a phone.
  host.show({ kind: 'phone', name: 'Shelf', may_answer: true } as never);
  await page.locator('.phone-answers').waitFor();
  host.show(now);
  const foot = (await page.locator('.phone-foot').boundingBox())!;
  for (const name of [/^I have seen/, /^Quiet/]) {
    const button = page.locator('.phone-answers').getByRole('button', { name });
    const { x, y, width: wide, height: high } = (await button.boundingBox())!;
    expect(y + high).toBeLessThanOrEqual(foot.y);
    expect(x + wide).toBeLessThanOrEqual(width);
    expect(await button.evaluate((each) => each.scrollWidth <= each.clientWidth)).toBe(true);
    await button.click();
  }
  await expect
    .poll(() => host.heard.filter((command) => 'answer' in command))
    .toMatchObject([{ answer: { acknowledge: { alarm: calling!.alarm } } }, { answer: { silence: { seconds: 120 } } }]);
  await close();
});

test('a call says how urgent it is and its numbers, and its pan how deep it stands', async () => {
  const { page, close } = await phoneOn(liveNow(2, { alarms: [calling!] }));
  const words = await page.locator('.phone-call').innerText();
  expect(words).toMatch(/^!?\s*(Now|Soon|When you can) Front pot/);
  expect(words).toMatch(/\d/);
  expect(await page.locator('.phone-pan').first().innerText()).toMatch(/\d\smm deep/);
  await close();
});

test('of a pan that nobody has read yet it says so quietly; what was known once stays large', async () => {
  const now = liveNow(2);
  const readings = now.readings.map((reading) => ({ ...reading, temperature_c: null, rise_c: null, probe: null }));
  const lastHeats = [{ pan: 'p2', celsius: 101, at: now.t - 600_000 }];
  const { page, close } = await phoneOn({ ...now, readings, lastHeats });
  const [unread, read] = [page.locator('.phone-pan').nth(0), page.locator('.phone-pan').nth(1)];
  const words = unread.getByText('not read yet');
  await words.waitFor();
  expect(await unread.locator('.phone-big').count()).toBe(0);
  expect(await words.evaluate((place) => Number.parseFloat(getComputedStyle(place).fontSize))).toBeLessThan(20);
  expect(await read.locator('.phone-big').innerText()).toBe('–');
  await close();
});

test('a pan that is about to burn gives one order on a phone, too: no time at which it is done', async () => {
  const now = liveNow(2);
  const { page, host, close } = await phoneOn(now);
  await page.locator('.phone-pan').first().getByText('Done about').waitFor();
  host.show({ ...now, alarms: [{ ...calling!, pan: 'p1', ...ALARM_WORDS['scorch-risk'], alarm: 'scorch-risk' }] });
  await page.locator('.phone-pan').first().getByText('About to burn').waitFor();
  expect(await page.locator('.phone-pan').first().innerText()).not.toMatch(/done about/iu);
  await close();
});

test('what stands behind a number is parted by what no number has in it', async () => {
  const { page, close } = await phoneOn(liveNow(1));
  const caption = await page.locator('.phone-caption').innerText();
  expect(caption.replaceAll('\u00a0', ' ')).toBe('over boiling water · 101.3 °C · 63.4 °Bx · 27 mm deep');
  await close();
});

/** So many pans, two of them with a long name. */
function pansOf(count: number): Now {
  const now = liveNow(4);
  const ids = Array.from({ length: count }, (_, place) => `p${place + 1}`);
  const taken = <T extends object>(list: readonly T[], key: 'id' | 'pan'): T[] =>
    ids.map((id, place) => ({ ...list[place % list.length]!, [key]: id }));
  const long = { name: 'Chaudron de finition de l’érablière' };
  const pans = taken(now.header!.pans ?? [], 'id').map((pan, place) => (place % 4 < 2 ? { ...pan, ...long } : pan));
  return {
    ...now,
    readings: taken(now.readings, 'pan'),
    limits: taken(now.limits, 'pan'),
    header: { ...now.header!, pans },
  };
}

test('on the wall every pan is in sight, whatever their number and however the screen is turned, and no number is cut', async () => {
  const { page, host, close } = await phoneOn(pansOf(1));
  await page.getByRole('button', { name: 'Wall view' }).click();
  for (const size of [PHONE, { width: 844, height: 390 }, { width: 1024, height: 768 }, { width: 768, height: 1024 }]) {
    await page.setViewportSize(size);
    for (const count of [1, 2, 3, 4, 5, 8]) {
      host.show(pansOf(count));
      await expect.poll(() => page.locator('.phone-pan').count()).toBe(count);
      const cut = await page.locator('.phone-pan').evaluateAll((pans) => {
        const foot = pans[0]!.ownerDocument.querySelector('.phone-foot')!.getBoundingClientRect().top;
        return pans.filter((pan) => {
          const { left, right, top, bottom } = pan.getBoundingClientRect();
          const parts = [...pan.querySelectorAll('.phone-name, .phone-stage, .phone-big, .phone-bar')];
          return (
            bottom > foot ||
            parts.some((part) => {
              const box = part.getBoundingClientRect();
              const isIn = box.left >= left && box.right <= right && box.top >= top && box.bottom <= bottom;
              return !isIn || part.scrollWidth > part.clientWidth + 1;
            })
          );
        }).length;
      });
      expect(cut, `${count} on ${size.width} × ${size.height}`).toBe(0);
    }
  }
  await close();
});
