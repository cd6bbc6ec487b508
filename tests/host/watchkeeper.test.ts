// A live boil knows whether anybody could hear it and how long its machine lasts, and says so the other way where nobody would.
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { languages } from '../../src/host/languages.ts';
import { createHost } from '../../src/host/create-host.ts';
import type { HostOptions } from '../../src/host/host.ts';
import type { Power } from '../../src/host/power.ts';
import type { PageReport } from '../../src/protocol/messages.ts';
import { HandClock } from './hand-clock.ts';

const english = languages().tongue('en');
let folder: string;
let machine: HandClock;
let host: Awaited<ReturnType<typeof createHost>>;
let called: string[];
let told: string[];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  machine = new HandClock();
  called = [];
  told = [];
});
afterEach(async () => {
  await host.close();
  rmSync(folder, { recursive: true });
});

const setup = {
  name: 'Tarn Hollow, invented',
  pans: [{ id: 'p1', name: 'Back pot' }],
  // Nothing that runs is ever taken from here.
  settings: { second_channel: { command: ['touch', 'pwned'] } },
};

async function startHost(more: Partial<HostOptions> = {}): Promise<void> {
  host = await createHost({
    folder,
    machine,
    pagesSound: true,
    tellOtherwise: (sentence) => told.push(sentence(english)),
    listener: { alarm: ({ alarm, event, why }) => called.push(`${alarm} ${event}: ${why}`) },
    ...more,
  });
}

async function startBoil(more: Partial<HostOptions> = {}): Promise<void> {
  await startHost(more);
  expect(await host.command({ ref: '1', start: setup })).toMatchObject({ ok: true });
}

type Battery = PageReport['battery'];

/** A page speaks once a second for so long. */
async function pageSpeaks(
  seconds: number,
  audio: PageReport['audio'] = 'running',
  battery: Battery = null,
): Promise<void> {
  for (let i = 0; i < seconds; i += 1) {
    await host.command({ ref: 'page', page: { audio, battery } });
    machine.run(1000);
  }
}

test('a page that goes away is missed within 5 s, said the other way, and the alarm ends when it is back', async () => {
  await startBoil();
  await pageSpeaks(20);
  expect([called, told]).toEqual([[], []]);
  // Its last word was a second ago.
  machine.run(4000);
  expect(called).toEqual(['no-sound raised: no page that can sound is open or answers']);
  expect(told).toEqual([
    expect.stringMatching(/^Panwarden: No sound \(no page that can sound is open or answers\)\. /),
  ]);
  await pageSpeaks(2);
  expect(called.at(-1)).toBe('no-sound cleared: a page can sound');
});

test('a page that is loaded again in three seconds is not missed', async () => {
  await startBoil();
  await pageSpeaks(10);
  machine.run(2000);
  await pageSpeaks(10);
  expect(called).toEqual([]);
});

test('after a sleep of the machine the page has its time to speak again, and no longer', async () => {
  await startBoil();
  await pageSpeaks(10);
  machine.sleep(1_800_000);
  machine.run(1000);
  await pageSpeaks(5);
  expect([called, told]).toEqual([[], []]);
  machine.sleep(1_800_000);
  machine.run(3000);
  expect([called, told]).toEqual([[], []]);
  machine.run(2500);
  expect(called).toEqual([expect.stringMatching(/^no-sound raised/)]);
});

test.each([
  ['suspended', /may not sound before somebody taps it/],
  ['none', /has no sound device/],
  ['closed', /was closed/],
] as const)(
  'a page whose sound is %s does not count as one that sounds, and the reason is said',
  async (audio, why) => {
    await startBoil();
    await pageSpeaks(5);
    await pageSpeaks(6, audio);
    expect(called).toEqual([expect.stringMatching(why)]);
  },
);

test('at a start there is half a minute to open a page; none was lost, so the other way is silent', async () => {
  await startBoil();
  machine.run(29_000);
  expect(called).toEqual([]);
  machine.run(2000);
  expect(called).toEqual([expect.stringMatching(/^no-sound raised/)]);
  expect(told).toEqual([]);
});

test('a caller that sounds by itself needs no page', async () => {
  await startBoil({ pagesSound: false });
  machine.run(600_000);
  expect([called, told]).toEqual([[], []]);
});

test('a practice boil asks for nobody and calls nobody away', async () => {
  await startHost();
  expect(await host.command({ ref: '1', practice: { speed: 1 } })).toMatchObject({ ok: true });
  machine.run(120_000);
  expect(called.filter((call) => call.startsWith('no-sound'))).toEqual([]);
  expect(told).toEqual([]);
});

test('what is called while nobody could hear runs the command of the settings, and never one of a setup', async () => {
  const file = join(folder, 'said');
  const script = "require('fs').writeFileSync(process.argv[1], process.argv[2])";
  await startBoil();
  const command = [process.execPath, '-e', script, file];
  expect(await host.command({ ref: '2', settings: { second_channel: { command } } })).toMatchObject({ ok: true });
  await pageSpeaks(3);
  machine.run(5000);
  await vi.waitFor(() => expect(readFileSync(file, 'utf8')).toMatch(/^Panwarden: No sound/), 10_000);
  expect(existsSync('pwned')).toBe(false);
});

test('the command is told in the language of the settings, the caller in one of its own', async () => {
  const file = join(folder, 'said');
  const script = "require('fs').writeFileSync(process.argv[1], process.argv[2])";
  await startBoil();
  const settings = { language: 'fr', second_channel: { command: [process.execPath, '-e', script, file] } };
  expect(await host.command({ ref: '2', settings })).toMatchObject({ ok: true });
  await pageSpeaks(3);
  machine.run(5000);
  await vi.waitFor(() => expect(readFileSync(file, 'utf8')).toMatch(/^Panwarden\u00a0: Pas de son \(/), 10_000);
  expect(told.at(-1)).toMatch(/^Panwarden: No sound \(/);
});

test('a command that fails is said to whoever watches', async () => {
  const said: string[] = [];
  await startBoil({ listener: { notice: ({ sentence }) => said.push(sentence) } });
  await host.command({ ref: '2', settings: { second_channel: { command: [join(folder, 'none')] } } });
  await pageSpeaks(3);
  machine.run(5000);
  await vi.waitFor(
    () => expect(said).toEqual([expect.stringMatching(/^Your second-channel command .* failed/)]),
    10_000,
  );
});

const settled = (): Promise<void> => new Promise((resolve) => void setImmediate(resolve));

/** Half minutes with a page that sounds, each with a look at the power. */
async function halfMinutes(count: number): Promise<void> {
  for (let i = 0; i < count; i += 1) {
    await pageSpeaks(30);
    await settled();
  }
}

test('a battery that will not last is called until the mains are back', async () => {
  const said: string[] = [];
  let power: Power | null = { onBattery: true, percent: 40, secondsLeft: 1800 };
  const listener: HostOptions['listener'] = {
    alarm: ({ alarm, event }) => called.push(`${alarm} ${event}`),
    notice: ({ sentence }) => said.push(sentence),
  };
  await startBoil({ readPower: async () => power, listener });
  await halfMinutes(1);
  expect(said).toEqual(['This machine runs from its battery: 40 %, about 30 min left.']);
  await halfMinutes(2);
  expect(called).toEqual(['power-low raised']);
  power = { onBattery: false, percent: 41, secondsLeft: null };
  await halfMinutes(2);
  expect(called).toEqual(['power-low raised', 'power-low cleared']);
  power = null;
  await halfMinutes(2);
  expect(called).toHaveLength(2);
});

test('where the system tells nothing the page is believed, while it speaks', async () => {
  await startBoil();
  await pageSpeaks(70, 'running', { charging: false, level: 0.1, seconds_left: null });
  await settled();
  machine.run(1000);
  await settled();
  expect(called.filter((call) => call.startsWith('power-low'))).toHaveLength(1);
  await pageSpeaks(60, 'running', null);
  await settled();
  expect(called.filter((call) => call.startsWith('power-low'))).toHaveLength(1);
});

test('what would put the machine to sleep is said at the start and when it changes, and stands in what the page is sent', async () => {
  const said: string[] = [];
  let lid: 'sleeps' | 'stays-awake' = 'sleeps';
  const listener: HostOptions['listener'] = { notice: ({ sentence }) => said.push(sentence) };
  await startBoil({ readSleep: async () => ({ lid, idleSeconds: null }), listener });
  const shown: unknown[] = [];
  host.subscribe((message) => message.kind === 'now' && shown.push(message.sleep?.warns));
  await halfMinutes(2);
  expect(said).toEqual([expect.stringMatching(/^Closing the lid puts this computer to sleep/)]);
  expect(shown.at(-1)).toBe(true);
  lid = 'stays-awake';
  await halfMinutes(2);
  expect(said).toHaveLength(2);
  expect(shown.at(-1)).toBe(false);
});
