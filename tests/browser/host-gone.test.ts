// What is heard and shown when the host fails, and how the sound is tried: real processes, real Chromium, an ear at the loudspeaker.
import { expect, test } from 'vitest';
import { loudestUntil, untilHeard } from './ear.ts';
import { latestT, open, openForTests, page, program, watch } from './heard-page.ts';

openForTests();

test('a host that is killed while it calls: within 5 s the page says so in large letters and goes on sounding until somebody has seen it', async () => {
  await open(await watch({ calling: true }));
  await untilHeard(page, 8000);
  const killedMs = performance.now();
  await program.kill('SIGKILL');
  await page.getByText('Connection lost').waitFor({ timeout: 5000 });
  expect(performance.now() - killedMs).toBeLessThan(5000);
  expect(await page.title()).toContain('Connection lost');
  await untilHeard(page, 5000);
  await page.locator('.band-lost').getByRole('button', { name: 'I have seen it' }).click();
  const quietMs = performance.now();
  await loudestUntil(page, () => performance.now() - quietMs > 200);
  expect(await loudestUntil(page, () => performance.now() - quietMs > 6500)).toBe(0);
});

test('a host that is killed while nothing sounds is heard all the same', async () => {
  await open(await watch({ calling: false }));
  await program.until(() => latestT() > 1000);
  await program.kill('SIGKILL');
  await untilHeard(page, 6000);
});

test('the call is tried at the start of a boil until somebody says that they heard it, which is kept', async () => {
  await open(await watch({ calling: false }));
  const check = page.getByRole('region', { name: 'Sound check' });
  expect(await check.getByRole('button', { name: 'I heard it' }).isDisabled()).toBe(true);
  await check.getByRole('button', { name: 'Play the call' }).click();
  await untilHeard(page, 8000);
  await check.getByRole('button', { name: 'I heard it' }).click();
  await check.waitFor({ state: 'detached' });
  await page.reload();
  await page.locator('.card').waitFor();
  expect(await check.count()).toBe(0);
});

test('where it was chosen, a call is also spoken, and notified when the page is not in front', async () => {
  const url = await watch({ calling: false });
  await open(url, async (opened) => {
    // What the system would say and show is kept here; its own windows and voices are not the page's.
    await opened.addInitScript(() => {
      const told: string[] = [];
      Object.assign(globalThis, { told });
      speechSynthesis.speak = ({ text }) => void told.push(`spoken: ${text}`);
      document.hasFocus = () => false;
      class Shown {
        static permission = 'granted';
        constructor(title: string) {
          told.push(`notified: ${title}`);
        }
      }
      Object.assign(globalThis, { Notification: Shown });
    });
  });
  await page.getByRole('link', { name: 'Settings' }).click();
  const spoken = page.getByLabel('Speak the calls too');
  await spoken.click();
  await expect.poll(() => spoken.isChecked()).toBe(true);
  program.say({ ref: '1', mark: { kind: 'remind', text: 'skim', seconds: 0 } });
  await untilHeard(page, 5000);
  const told = () => page.evaluate(() => (globalThis as unknown as { told: string[] }).told);
  await expect
    .poll(told, { timeout: 10_000 })
    .toEqual(['notified: Panwarden: Reminder', 'spoken: Panwarden: Reminder. Do it, then say that you have seen it.']);
});
