// What a call asks for is read whole on a phone and a laptop without scrolling, in both languages, with its buttons in reach.
import type { Browser, Locator } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { ALARM_WORDS, alarmWords } from '../../src/core/alarms/words.ts';
import english from '../../src/language/en.json' with { type: 'json' };
import french from '../../src/language/fr.json' with { type: 'json' };
import { formOf, hostWords } from '../../src/language/host-words.ts';
import { Tongue } from '../../src/language/tongue.ts';
import { ensureScreenBuilt } from '../../src/web/screen-build.ts';
import { LAPTOP, openPage, PHONE, startChromium } from './chromium.ts';
import { standIn } from './stand-in-host.ts';
import { alarms, flood, liveNow } from './tarn-hollow.ts';

let browser: Browser;
const closing: (() => Promise<unknown>)[] = [];
beforeAll(async () => void (browser = await startChromium()));
afterAll(() => browser?.close());
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});

/** The longest reason that a call has: of a pan whose depth is a count. */
const COUNTED =
  'too shallow in about 3 min at this heat: 7 mm deep, it burns from 5 mm down, by what went in and boiled away: look how deep it is';

const call = (alarm: keyof typeof ALARM_WORDS, since: number) => ({
  ...alarms[0]!,
  alarm,
  priority: 'high' as const,
  since,
  why: alarm === 'scorch-risk' ? COUNTED : alarms[0]!.why,
  ...ALARM_WORDS[alarm],
});
const [first] = liveNow(4).readings;
const burnt = { ...call('scorch-risk', 3), ...alarmWords('scorch-risk', { ...first!, temperature_c: 140 }) };

/** What the stand-in's calls say is what the host itself would write: else a page in French would stay English here. */
test('the calls that are shown here are known to the catalogue whole', () => {
  const said = [...alarms, ...flood].flatMap(({ alarm, why, means, todo }) =>
    alarm === 'reminder' ? [means, todo] : [why, means, todo],
  );
  expect(said.filter((sentence) => formOf(sentence) === null)).toEqual([]);
});

const TONGUES = { en: new Tongue('en', english), fr: new Tongue('fr', french) };

/** Each alone; then the longest of all with what is named beside it. */
const CALLS = [
  ...Object.keys(ALARM_WORDS).map((name) => [call(name as keyof typeof ALARM_WORDS, 1)]),
  [burnt, call('past-finish', 2), call('finish', 1)],
];

/** Whether an element's box lies in the window, and in all that scrolls around it. */
const isInSight = (place: Locator): Promise<boolean> =>
  place.evaluate((element) => {
    const box = element.getBoundingClientRect();
    const fits = (top: number, bottom: number): boolean => box.top >= top - 0.5 && box.bottom <= bottom + 0.5;
    let within = fits(0, element.ownerDocument.defaultView!.innerHeight);
    for (let up = element.parentElement; up !== null && up.tagName !== 'BODY'; up = up.parentElement) {
      const style = element.ownerDocument.defaultView!.getComputedStyle(up);
      const around = up.getBoundingClientRect();
      if (style.overflowY !== 'visible') within &&= fits(around.top, around.bottom);
    }
    return within;
  });

/** How many are looked at: the longest texts need the most room, and where it is least, all are. */
const SIZES = [
  ['a laptop', LAPTOP, 6],
  ['a phone', PHONE, 6],
  ['a small phone', { width: 360, height: 640 }, CALLS.length],
] as const;
const CASES = SIZES.flatMap(([name, size, count]) =>
  (['en', 'fr'] as const).map((language) => [name, language, size, count] as const),
);

/** The calls whose words are the longest, with what stands beside the longest of all. */
function longest(count: number, tongue: Tongue): typeof CALLS {
  const length = ([one]: (typeof CALLS)[number]): number =>
    hostWords(one!.todo, tongue).length + hostWords(one!.means, tongue).length;
  const alone = CALLS.slice(0, -1).sort((one, other) => length(other) - length(one));
  return [...alone.slice(0, count - 1), CALLS.at(-1)!];
}

test.each(CASES)('on %s in %s what to do and the buttons are in sight', async (_name, language, size, count) => {
  const showing = (standing: (typeof CALLS)[number]) =>
    liveNow(4, { alarms: standing, sound: { priority: 'high', silencedUntil: null } });
  const host = await standIn(await ensureScreenBuilt(), showing(CALLS[0]!), { language });
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, size);
  closing.push(() => page.context().close());
  const tongue = TONGUES[language];
  for (const standing of longest(count, tongue)) {
    host.show(showing(standing));
    const { alarm, todo } = standing[0]!;
    const full = page.locator('.alarm-full .alarm-todo', { hasText: hostWords(todo, tongue) });
    await full.waitFor();
    await expect.poll(() => isInSight(full), { message: alarm }).toBe(true);
    await expect.poll(() => isInSight(page.locator('.hurry-seen')), { message: `${alarm}: the button` }).toBe(true);
    if (standing.length > 1) await expect.poll(() => isInSight(page.locator('.alarm-also'))).toBe(true);
  }
  await page.keyboard.press('a');
  const leave = page.locator('.aside-form .aside-lengths button').last();
  await leave.waitFor();
  await expect.poll(() => isInSight(leave)).toBe(true);
});

test('the card of a pan that is about to burn gives one order: neither done nor nearly syrup beside it', async () => {
  const readings = liveNow(4).readings.map((each, place) =>
    place === 0 ? { ...each, stage: 'finished' as const, finish_in_s: 0 } : each,
  );
  const showing = (alarm: 'finish' | 'scorch-risk') =>
    liveNow(4, { readings, alarms: [call(alarm, 1)], sound: { priority: 'high', silencedUntil: null } });
  const host = await standIn(await ensureScreenBuilt(), showing('finish'));
  closing.push(() => host.close());
  const { page } = await openPage(browser, host.url, LAPTOP);
  closing.push(() => page.context().close());
  const card = page.locator('.card').first();
  await expect.poll(() => card.innerText()).toContain('Done: take it off');
  host.show(showing('scorch-risk'));
  await expect.poll(() => card.innerText()).toContain('About to burn');
  expect(await card.innerText()).not.toMatch(/done (now|about)|take it off|nearly syrup/iu);
});
