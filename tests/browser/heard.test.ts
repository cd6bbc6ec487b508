// What is heard and shown when a page fails: real processes, real Chromium, an ear at the page's loudspeaker.
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loudestUntil, untilHeard } from './ear.ts';
import {
  context,
  isAlarm,
  latestT,
  open,
  openForTests,
  ownPath,
  page,
  program,
  watch,
  watchFlood,
} from './heard-page.ts';

openForTests();

/** Seconds until the host says that nobody could hear, from what is done now. */
async function secondsToNoSound(what: () => unknown): Promise<number> {
  const from = program.lines.length;
  const sinceMs = performance.now();
  await what();
  await program.line(isAlarm('no-sound', 'raised'), from);
  return (performance.now() - sinceMs) / 1000;
}

/** The person's own command, set where they set it; it writes what it is given to a file. */
async function keepCommand(): Promise<string> {
  const file = ownPath('said');
  const script = "require('fs').appendFileSync(process.argv[1], process.argv[2] + '\\n')";
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByLabel('A command of your own').fill([process.execPath, '-e', script, file].join('\n'));
  await page.getByRole('button', { name: 'Keep this command' }).click();
  await page.getByText('The command is kept.').waitFor();
  await page.locator('button:disabled', { hasText: 'Keep this command' }).waitFor();
  return file;
}

test('a call is heard; when the page is closed, the host knows within 5 s that nobody hears and says it the other way', async () => {
  await open(await watch({ calling: true }));
  await untilHeard(page, 8000);
  const file = await keepCommand();
  expect(await secondsToNoSound(() => page.close())).toBeLessThan(5);
  // The call that stood unanswered goes out with it, each by a run of the command of its own.
  const said = (): string => (existsSync(file) ? readFileSync(file, 'utf8') : '');
  await expect.poll(said, { timeout: 10_000 }).toMatch(/Panwarden: No sound/);
  await expect.poll(said, { timeout: 10_000 }).toMatch(/Board of Back pot: Board lost/);
});

test('all pans at once: one sound, three calls in the dock, and how many more there are', async () => {
  await open(await watchFlood());
  await program.until(() => program.lines.filter(isAlarm('port-lost', 'raised')).length === 7);
  await untilHeard(page, 8000);
  await page.locator('.dock').getByText('4 more').first().waitFor();
  expect(await page.locator('.dock .alarm-title').count()).toBe(3);
  // Sounds laid over one another would be louder than the one call ever is.
  const sinceMs = performance.now();
  expect(await loudestUntil(page, () => performance.now() - sinceMs > 3000)).toBeLessThan(1);
});

test('a page that hangs is missed within 5 s, though its connection stands', async () => {
  await open(await watch({ calling: false }));
  await program.until(() => latestT() > 2000);
  const hang = (): void => void page.evaluate('while (true);').catch(() => undefined);
  expect(await secondsToNoSound(hang)).toBeLessThan(5);
});

test('a page whose process dies is missed within 5 s', async () => {
  await open(await watch({ calling: false }));
  const crash = (): void => void page.goto('chrome://crash').catch(() => undefined);
  expect(await secondsToNoSound(crash)).toBeLessThan(5);
});

test('a hidden page whose timers stand still goes on hearing, calling and telling the host that it does', async () => {
  const url = await watch({ calling: false });
  await open(url, (opened) => opened.clock.install());
  // As in a page that has been hidden for long, only worse: from here on no timer fires and its clock stands.
  await page.clock.pauseAt(Date.now() + 3_600_000);
  const from = latestT();
  await program.until(() => latestT() > from + 8000);
  expect(program.lines.filter(isAlarm('no-sound', 'raised'))).toEqual([]);
  program.say({ ref: '1', mark: { kind: 'remind', text: 'skim', seconds: 0 } });
  await program.line(isAlarm('reminder', 'raised'));
  await untilHeard(page, 3000);
  expect(await page.title()).toContain('Reminder');
});

test('a page that is stopped is missed, and said to hear again when it goes on', async () => {
  await open(await watch({ calling: false }));
  const session = await context.newCDPSession(page);
  await session.send('Debugger.enable');
  await program.until(() => latestT() > 2000);
  expect(await secondsToNoSound(() => session.send('Debugger.pause'))).toBeLessThan(5);
  await session.send('Debugger.disable');
  await program.line(isAlarm('no-sound', 'cleared'));
});
