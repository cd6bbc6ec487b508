// The host takes a folder, goes on with the boil that was running there with its alarms and answers, and refuses what cannot be.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import type { Now, Settings } from '../../src/protocol/messages.ts';
import { HandClock } from './hand-clock.ts';

let folder: string;
let machine: HandClock;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  machine = new HandClock();
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Hand readings alone: no port, so nothing of this machine is opened. */
const setup = {
  name: 'Tarn Hollow, invented',
  site: { altitude_m: 640 },
  pans: [{ id: 'p1', name: 'Back pot', sap: 'birch', vessel: { shape: 'round', diameter_mm: 400 } }],
};

type Host = Awaited<ReturnType<typeof createHost>>;

function nowOf(host: Host): Now {
  const heard: Now[] = [];
  host.subscribe((message) => message.kind === 'now' && heard.push(message))();
  const [now] = heard;
  if (now === undefined) throw new Error('nothing was published');
  return now;
}

test('a boil goes on after a stop: same boil, a gap, alarms and answers as they were, time from the wall clock', async () => {
  const first = await createHost({ folder, machine });
  expect(await first.command({ ref: '1', start: setup })).toMatchObject({ ok: true });
  await first.command({ ref: '2', mark: { kind: 'remind', text: 'turn the flame down', seconds: 5 } });
  machine.run(8000);
  expect(await first.command({ ref: '3', answer: { acknowledge: { pan: null, alarm: 'reminder' } } })).toMatchObject({
    ok: true,
  });
  machine.run(4000);
  const before = nowOf(first);
  await first.close();
  machine.sleep(600_000);
  const heard: string[] = [];
  const second = await createHost({
    folder,
    machine,
    listener: { alarm: ({ alarm, event }) => heard.push(`${alarm} ${event}`) },
  });
  const after = nowOf(second);
  expect(after).toMatchObject({ mode: 'live', boil: before.boil });
  expect(after.t - before.t).toBeGreaterThanOrEqual(600_000);
  expect(after.marks).toEqual(before.marks);
  expect(heard).toEqual([]);
  const entries = [...second.recordingOf(before.boil ?? '')].map((text) => JSON.parse(text) as Record<string, unknown>);
  expect(entries.at(-1)).toMatchObject({ run: 'gap', t: after.t });
  await second.close();
});

test('one program at a time has the folder', async () => {
  const first = await createHost({ folder, machine });
  await expect(createHost({ folder, machine })).rejects.toThrow(/another program watches/);
  await first.close();
  await (await createHost({ folder, machine })).close();
});

test('a different setup is refused while its boil runs, and the record is not touched', async () => {
  const first = await createHost({ folder, machine });
  await first.command({ ref: '1', start: setup });
  await first.close();
  const other = { ...setup, name: 'Another' };
  await expect(createHost({ folder, machine, setup: other as never })).rejects.toThrow(/another setup/);
  const notebook = openNotebook(folder, { readOnly: true });
  expect(notebook.boils()).toMatchObject([{ running: true, entries: 0 }]);
  notebook.close();
});

test('one boil at a time, and a practice boil is over with its program', async () => {
  const host = await createHost({ folder, machine });
  expect(await host.command({ ref: '1', practice: { speed: 60 } })).toMatchObject({ ok: true });
  expect(await host.command({ ref: '2', start: setup })).toMatchObject({
    ok: false,
    why: expect.stringMatching(/is running/),
  });
  machine.run(2000);
  expect(nowOf(host)).toMatchObject({ mode: 'practice', speed: 60 });
  await host.close();
  const notebook = openNotebook(folder, { readOnly: true });
  expect(notebook.boils()).toMatchObject([{ running: false, kind: 'practice' }]);
  notebook.close();
});

test('a practice boil and its pots are called as the screen names them in its language', async () => {
  const host = await createHost({ folder, machine });
  const names = { boil: 'Exercice', front: 'Avant', middle: 'Milieu', birch: 'Bouleau' };
  expect(await host.command({ ref: '1', practice: { speed: 60, names } })).toMatchObject({ ok: true });
  machine.run(2000);
  const { header } = nowOf(host);
  expect(header).toMatchObject({ name: 'Exercice', practice: true });
  expect(header?.pans?.map(({ id, name }) => [id, name])).toEqual([
    ['front', 'Avant'],
    ['middle', 'Milieu'],
    ['birch', 'Bouleau'],
  ]);
  await host.close();
});

test('a practice boil that came to its own end stays to be looked at until it is put away', async () => {
  const host = await createHost({ folder, machine });
  await host.command({ ref: '1', practice: { speed: 600 } });
  machine.run(15_000);
  await expect.poll(() => nowOf(host)).toMatchObject({ mode: 'practice', ended: true, alarms: [] });
  expect(await host.command({ ref: '2', end: true })).toMatchObject({ ok: true });
  expect(nowOf(host)).toMatchObject({ mode: 'idle', ended: false });
  expect(await host.command({ ref: '3', end: true })).toMatchObject({ ok: false, why: 'No boil is running.' });
  await host.close();
});

test('a practice boil that somebody ends stays to be looked back on, and another begins in its place', async () => {
  const host = await createHost({ folder, machine });
  await host.command({ ref: '1', practice: { speed: 60 } });
  machine.run(2000);
  expect(await host.command({ ref: '2', end: true })).toMatchObject({ ok: true });
  const over = nowOf(host);
  expect(over).toMatchObject({ mode: 'practice', ended: true });
  expect(over.readings).toHaveLength(3);
  expect(await host.command({ ref: '3', practice: { speed: 60 } })).toMatchObject({ ok: true });
  expect(nowOf(host)).toMatchObject({ mode: 'practice', ended: false });
  await host.close();
});

test('a practice boil that is over can be hidden and had back; a running one and a real one cannot', async () => {
  const host = await createHost({ folder, machine });
  const hide = (boil: string, hidden?: true) =>
    host.command({ ref: 'h', keep_page: { boil, page: { taste: 'none', hidden } } });
  const listed = async (): Promise<unknown> => {
    const answers = await Promise.all([
      host.command({ ref: 'l', boils: true }),
      host.command({ ref: 'f', find: {} }).then((found) => ({ ...found, data: found.ok && found.data })),
    ]);
    const [boils, found] = answers.map((answer) => (answer.ok ? answer.data : answer.why)) as [
      { hidden?: true }[],
      { boils: { hidden?: true }[] },
    ];
    return [boils.map(({ hidden }) => hidden), found.boils.map(({ hidden }) => hidden)];
  };
  await host.command({ ref: '1', practice: { speed: 60 } });
  const practice = host.running!.boil;
  machine.run(2000);
  expect(await hide(practice, true)).toMatchObject({ ok: false, why: expect.stringContaining('a real boil stays') });
  await host.command({ ref: '2', end: true });
  expect(await hide(practice, true)).toMatchObject({ ok: true, data: { hidden: true } });
  expect(await listed()).toEqual([[true], [true]]);
  expect(await hide(practice)).toMatchObject({ ok: true });
  expect(await listed()).toEqual([[undefined], [undefined]]);
  await host.command({ ref: '3', start: setup });
  const real = host.running!.boil;
  await host.command({ ref: '4', end: true });
  expect(await hide(real, true)).toMatchObject({ ok: false, why: expect.stringContaining('a real boil stays') });
  await host.close();
});

test('what an older search of Tune kept and no screen shows acts no more, and the other settings stay', async () => {
  const notebook = openNotebook(folder);
  notebook.keepSetting('settings', { near_finish_lead_s: 900, near_finish_deadband: 4 });
  notebook.close();
  const host = await createHost({ folder, machine });
  await host.command({ ref: '1', start: setup });
  const { header } = nowOf(host);
  expect(header?.settings).toMatchObject({ near_finish_lead_s: 900 });
  expect(header?.settings).not.toHaveProperty('near_finish_deadband');
  await host.close();
});

test('changed lead times are kept, told, and hold for the boil that runs', async () => {
  const host = await createHost({ folder, machine });
  await host.command({ ref: '1', start: setup });
  await host.command({ ref: '2', settings: { temperature: 'F' } });
  await host.command({ ref: '3', settings: { near_finish_lead_s: 900 } });
  expect(nowOf(host).header?.settings).toMatchObject({ near_finish_lead_s: 900, scorch_lead_s: 240 });
  await host.close();
  const again = await createHost({ folder, machine });
  const told: unknown[] = [];
  again.subscribe((message) => message.kind === 'hello' && told.push(message.settings));
  expect(told).toMatchObject([{ near_finish_lead_s: 900, temperature: 'F' }]);
  await again.close();
});

/** All that differs by region, as a page in the United States says it, and one in Germany. */
const inTheStates = {
  ...({ temperature: 'F', volume: 'us-gallon', length: 'inch', pressure: 'inhg', mass: 'pound' } as const),
  ...({ power: 'btu-per-hour', clock: '12' } as const),
};
const inGermany = {
  ...({ temperature: 'C', volume: 'litre', length: 'mm', pressure: 'hpa', mass: 'kg' } as const),
  ...({ power: 'watt', clock: '24' } as const),
};

function helloOf(host: Host): { unchosen: boolean; settings: Settings } {
  const heard: { unchosen: boolean; settings: Settings }[] = [];
  host.subscribe((message) => message.kind === 'hello' && heard.push(message))();
  const [hello] = heard;
  if (hello === undefined) throw new Error('no hello was said');
  return hello;
}

test('what is usual where the first page is read is kept once, and never put in place of a choice', async () => {
  const host = await createHost({ folder, machine });
  expect(helloOf(host)).toMatchObject({ unchosen: true, settings: inGermany });
  await host.command({ ref: '1', usual_settings: inTheStates });
  expect(helloOf(host)).toMatchObject({ unchosen: false, settings: inTheStates });
  await host.command({ ref: '2', usual_settings: inGermany });
  expect(helloOf(host)).toMatchObject({ unchosen: false, settings: inTheStates });
  await host.close();
});

test('a language, a clock and one unit that were chosen before leave the other units to the region, over a restart', async () => {
  const first = await createHost({ folder, machine });
  await first.command({ ref: '1', settings: { language: 'en', clock: '24' } });
  await first.command({ ref: '2', settings: { volume: 'litre' } });
  expect(helloOf(first).unchosen).toBe(true);
  await first.close();
  const again = await createHost({ folder, machine });
  expect(helloOf(again).unchosen).toBe(true);
  await again.command({ ref: '3', usual_settings: inTheStates });
  const settled = { unchosen: false, settings: { ...inTheStates, language: 'en', clock: '24', volume: 'litre' } };
  expect(helloOf(again)).toMatchObject(settled);
  await again.close();
});

test('of settings that an earlier program kept, a unit that it did not know is left to the region', async () => {
  const { power: _, length: __, ...known } = inGermany;
  const notebook = openNotebook(folder);
  notebook.keepSetting('settings', known);
  notebook.close();
  const host = await createHost({ folder, machine });
  await host.command({ ref: '1', usual_settings: inTheStates });
  expect(helloOf(host).settings).toMatchObject({ ...known, power: 'btu-per-hour', length: 'inch' });
  await host.close();
});

test('snapshots come at most four times a second, and once a second when nothing changes', async () => {
  const host = await createHost({ folder, machine });
  let count = 0;
  host.subscribe((message) => (count += message.kind === 'now' ? 1 : 0));
  machine.run(10_000);
  expect(count).toBeGreaterThanOrEqual(10);
  await host.command({ ref: '1', practice: { speed: 60 } });
  count = 0;
  machine.run(10_000);
  expect(count).toBeGreaterThan(20);
  expect(count).toBeLessThan(60);
  await host.close();
});

test.each([
  [undefined, null, /no JSON object/],
  [{ ref: 'a', stir: 1 }, 'a', /no such command/],
  [{ ref: 'b', mark: { kind: 'flame', pan: 'p1', level: 3 } }, 'b', /level must be at most 1/],
  [{ ref: 'c', end: true }, 'c', /No boil is running/],
  [{ ref: 'd', replay: { boil: 'nope' } }, 'd', /nope/],
])('%j is answered with a sentence', async (command, ref, why) => {
  const host = await createHost({ folder, machine });
  expect(await host.command(command)).toMatchObject({ ref, ok: false, why: expect.stringMatching(why) });
  await host.close();
});
