// The host tells what is behind a number, live and in a replay, and asks back about a mark before it is noted.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import type { Explanation, HostMessage } from '../../src/protocol/messages.ts';
import { HandClock } from './hand-clock.ts';

let folder: string;
let machine: HandClock;
let host: Awaited<ReturnType<typeof createHost>>;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  machine = new HandClock();
  host = await createHost({ folder, machine });
});
afterEach(async () => {
  await host.close();
  rmSync(folder, { recursive: true });
});

/** One pan read by hand at Tarn Hollow, our invention: no port of this machine is opened. */
const setup = { name: 'Tarn Hollow, invented', site: { altitude_m: 640 }, pans: [{ id: 'p1', sap: 'birch' }] };

async function obeyed(command: Record<string, unknown>): Promise<unknown> {
  const answer = await host.command({ ref: 'r', ...command });
  if (!answer.ok) throw new Error(answer.why);
  return answer.data;
}

const explained = (view: 'live' | 'replay', what: string, pan: string | null = 'p1'): Promise<Explanation> =>
  obeyed({ explain: { view, pan, what } }) as Promise<Explanation>;

async function readTwice(): Promise<void> {
  await obeyed({ start: setup });
  await obeyed({ mark: { kind: 'pressure', hpa: 940 } });
  for (const celsius of [103, 103.2]) {
    await obeyed({ mark: { kind: 'reading', pan: 'p1', celsius } });
    machine.run(20_000);
  }
}

test('live, a number says what it rests on and how old that is now', async () => {
  await readTwice();
  const told = await explained('live', 'temperature');
  expect(told).toMatchObject({ value: 103.2, waterFrom: { kind: 'pressure' }, facts: { probe: null } });
  expect(told.t - (told.facts?.heardAt ?? 0)).toBeCloseTo(20_000, -3);
  machine.run(5000);
  expect((await explained('live', 'temperature')).t - told.t).toBeGreaterThanOrEqual(5000);
  expect(await explained('live', 'water', null)).toMatchObject({ what: 'water', facts: null });
});

test('a replay tells of the moment that it shows', async () => {
  await readTwice();
  const boil = host.running?.boil ?? '';
  await obeyed({ end: true });
  await obeyed({ replay: { boil } });
  await obeyed({ replay_control: { playing: false } });
  await obeyed({ replay_control: { seek: 10_000 } });
  machine.run(1000);
  expect(await explained('replay', 'temperature')).toMatchObject({ t: 10_000, value: 103 });
});

test('of a pan that is not there, and with nothing running, there is a sentence', async () => {
  const ask = (view: string, pan: string) => host.command({ ref: 'r', explain: { view, pan, what: 'rise' } });
  expect(await ask('live', 'p1')).toMatchObject({ ok: false });
  await obeyed({ start: setup });
  expect(await ask('live', 'p9')).toMatchObject({ ok: false, why: expect.stringContaining('not in this boil') });
  expect(await ask('replay', 'p1')).toMatchObject({ ok: false });
});

test('a pressure that no weather makes here is doubted, and nothing is noted', async () => {
  await obeyed({ start: setup });
  const doubt = (mark: object): Promise<unknown> => obeyed({ doubt: mark });
  expect(await doubt({ kind: 'pressure', hpa: 1013 })).toContain('sea-level figure');
  expect(await doubt({ kind: 'pressure', hpa: 1013, at: 'altimeter' })).toBeNull();
  expect(await doubt({ kind: 'flame', pan: 'p1', level: 1 })).toBeNull();
  expect(host.running?.entries).toBe(0);
});

test('the kinds of sap are told at the start, and settings of before have the new units by default', async () => {
  await host.close();
  const notebook = openNotebook(folder);
  notebook.keepSetting('settings', { temperature: 'F', length: 'inch' });
  notebook.close();
  host = await createHost({ folder, machine });
  const heard: HostMessage[] = [];
  host.subscribe((message) => heard.push(message))();
  const hello = heard.find((message) => message.kind === 'hello');
  expect(hello?.settings).toMatchObject({ temperature: 'F', length: 'inch', pressure: 'hpa', strength: 'brix' });
  expect(hello?.saps.map(({ key }) => key)).toEqual(expect.arrayContaining(['maple', 'birch', 'walnut', 'other']));
});
