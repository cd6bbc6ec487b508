// What a live boil taught of its probes and saps reaches the next one that uses them, and nothing else does.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Header, Learnt, PanSetup } from '../../src/core/boil/entries.ts';
import { burnerName } from '../../src/core/pan/burner.ts';
import { createHost } from '../../src/host/create-host.ts';
import { learntFor, learntListings } from '../../src/host/learnt.ts';
import type { Teaching } from '../../src/notebook/contract.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { checkHeader } from '../../src/protocol/header-schema.ts';
import type { LearntListing } from '../../src/protocol/messages.ts';
import { HandClock } from './hand-clock.ts';

let folder: string;
let machine: HandClock;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  machine = new HandClock();
});
afterEach(() => rmSync(folder, { recursive: true }));

type Host = Awaited<ReturnType<typeof createHost>>;

/** One birch pan with a probe at Tarn Hollow, our invention; the port's path names no port. */
function tarnSetup() {
  return {
    name: 'Tarn Hollow, invented',
    site: { altitude_m: 640 },
    ports: [{ id: 'A', path: join(folder, 'no-port') }],
    probes: [{ id: 'A/1', port: 'A', channel: 'T1', offset_c: -0.6 }],
    pans: [
      { id: 'p1', name: 'Back pot', sap: 'birch' },
      { id: 'p2', sap: 'maple' },
    ],
  };
}

async function obeyed(host: Host, command: Record<string, unknown>): Promise<unknown> {
  const answer = await host.command({ ref: 'r', ...command });
  if (!answer.ok) throw new Error(answer.why);
  return answer.data;
}

/** A probe that shows 0.5 °C too much by a barometer and a check, and a pan read by hand whose density was taken. */
async function teach(host: Host): Promise<void> {
  await obeyed(host, { mark: { kind: 'pressure', hpa: 940 } });
  machine.run(1000);
  // IF97: at 940 hPa water boils at 97.90 °C; the offset of −0.6 °C is in what the probe shows.
  await obeyed(host, { mark: { kind: 'water-check', probe: 'A/1', celsius: 98.4 } });
  for (let minute = 0; minute < 3; minute += 1) {
    await obeyed(host, { mark: { kind: 'reading', pan: 'p1', celsius: 103.9 } });
    machine.run(20_000);
  }
  await obeyed(host, { mark: { kind: 'density', id: 'd', pan: 'p1', brix: 64, celsius: 20, reference_celsius: 20 } });
}

async function headerOfNext(host: Host, setup: object): Promise<Header> {
  await obeyed(host, { start: setup });
  const { boil } = host.running ?? {};
  await obeyed(host, { end: true });
  return JSON.parse(
    host
      .recordingOf(boil ?? '')
      [Symbol.iterator]()
      .next().value as string,
  ) as Header;
}

const listed = async (host: Host): Promise<LearntListing[]> =>
  (await obeyed(host, { learnt: true })) as LearntListing[];

test('what a live boil taught stands in the header of the next with the same probe and sap, and only of those', async () => {
  const host = await createHost({ folder, machine });
  expect((await headerOfNext(host, tarnSetup())).learnt).toBeUndefined();
  await obeyed(host, { start: tarnSetup() });
  await teach(host);
  await obeyed(host, { end: true });
  const { learnt, ...header } = await headerOfNext(host, tarnSetup());
  expect(learnt?.names.toSorted()).toEqual(['probe A/1', 'sap birch']);
  expect(checkHeader({ ...header, learnt })).toMatchObject({ ok: true });
  const other = { ...tarnSetup(), probes: [], pans: [{ id: 'p1', sap: 'maple' }] };
  expect((await headerOfNext(host, other)).learnt).toBeUndefined();
  expect(host.lastSetup()).not.toHaveProperty('learnt');
  await host.close();
});

test('a person sees what is used, with its offset, and from which boil', async () => {
  const host = await createHost({ folder, machine });
  await obeyed(host, { start: tarnSetup() });
  const started = new Date(machine.wallMs()).toISOString().slice(0, 16);
  await teach(host);
  const [probe, sap] = await listed(host);
  expect(probe).toMatchObject({ name: 'probe A/1', about: 'probe', of: 'A/1', title: 'Tarn Hollow, invented' });
  expect(Math.abs((probe?.value ?? 0) - 0.5)).toBeLessThan(0.1);
  expect(probe?.sigma).toBeLessThan(0.15);
  expect(sap).toMatchObject({ name: 'sap birch', about: 'sap', of: 'birch', boil: host.running?.boil });
  expect(new Date(sap?.started ?? '').toISOString().slice(0, 16)).toBe(started);
  await host.close();
});

test('what is forgotten is not used again, by no older boil either, until a later boil teaches it', async () => {
  const host = await createHost({ folder, machine });
  for (let boil = 0; boil < 2; boil += 1) {
    await obeyed(host, { start: tarnSetup() });
    await teach(host);
    await obeyed(host, { end: true });
  }
  await obeyed(host, { forget: { name: 'sap birch' } });
  expect(await host.command({ ref: 'r', forget: { name: 'sap birch' } })).toMatchObject({
    ok: false,
    why: 'Nothing was learned under the name "sap birch".',
  });
  expect((await headerOfNext(host, tarnSetup())).learnt?.names).toEqual(['probe A/1']);
  await obeyed(host, { start: tarnSetup() });
  await teach(host);
  await obeyed(host, { end: true });
  expect((await listed(host)).map(({ name }) => name)).toEqual(['probe A/1', 'sap birch']);
  await host.close();
});

test('a density that is taken back teaches nothing', async () => {
  const host = await createHost({ folder, machine });
  await obeyed(host, { start: tarnSetup() });
  await teach(host);
  await obeyed(host, { mark: { kind: 'withdraw', id: 'd' } });
  expect((await listed(host)).map(({ name }) => name)).toEqual(['probe A/1']);
  await host.close();
});

test('practice boils and imported ones teach nothing, and a practice boil begins with nothing', async () => {
  const host = await createHost({ folder, machine });
  await obeyed(host, { start: tarnSetup() });
  await teach(host);
  await obeyed(host, { end: true });
  const [live] = await listed(host);
  const lines = [...host.recordingOf(live?.boil ?? '')].map((line) => `${line}\n`.replace('Tarn Hollow', 'Another'));
  await host.importRecording([lines.join('')] as never, 'another.boil.jsonl');
  await obeyed(host, { practice: { speed: 60 } });
  const practice = host.running?.boil ?? '';
  machine.run(5000);
  await obeyed(host, { mark: { kind: 'pressure', hpa: 950 } });
  const { probes } = JSON.parse(host.recordingOf(practice)[Symbol.iterator]().next().value as string) as Header;
  await obeyed(host, { mark: { kind: 'water-check', probe: probes?.[0]?.id, celsius: 98.2 } });
  await obeyed(host, { end: true });
  const header = JSON.parse(host.recordingOf(practice)[Symbol.iterator]().next().value as string) as Header;
  expect(header.learnt).toBeUndefined();
  expect((await listed(host)).map(({ boil }) => boil)).toEqual([live?.boil, live?.boil]);
  await host.close();
});

test('a boil that is taken up keeps its header as it was, and what it had taught is kept once more', async () => {
  const host = await createHost({ folder, machine });
  await obeyed(host, { start: tarnSetup() });
  const boil = host.running?.boil ?? '';
  await teach(host);
  const [headerLine] = [...host.recordingOf(boil)];
  await host.close();
  // As if the program had been killed between the mark and what it teaches.
  const notebook = openNotebook(folder);
  notebook.keepLearnt(boil, null, []);
  notebook.close();
  machine.sleep(5000);
  const again = await createHost({ folder, machine });
  expect([...again.recordingOf(boil)][0]).toBe(headerLine);
  expect((await listed(again)).map(({ name }) => name)).toEqual(['probe A/1', 'sap birch']);
  await again.close();
});

test('a setup that says what was learnt keeps that', async () => {
  const host = await createHost({ folder, machine });
  await obeyed(host, { start: tarnSetup() });
  await teach(host);
  await obeyed(host, { end: true });
  const own = { names: ['sap birch'], mean: [0.02], covariance: [[0.0001]] };
  expect((await headerOfNext(host, { ...tarnSetup(), learnt: own })).learnt).toEqual(own);
  await host.close();
});

function teaching(boil: string, learnt: Learnt, change: Partial<Teaching> = {}): Teaching {
  const started = '2027-04-18T07:30:00-07:00';
  return { boil, name: boil, started, learnt, probes: tarnSetup().probes, forgotten: [], ...change };
}
const both: Learnt = {
  names: ['probe A/1', 'sap birch', 'probe B/9'],
  mean: [0.4, 0.03, 7],
  covariance: [
    [0.04, -0.005, 0.1],
    [-0.005, 0.001, 0.2],
    [0.1, 0.2, 9],
  ],
};
const maple: Learnt = {
  names: ['sap birch', 'sap maple'],
  mean: [0.09, 0.01],
  covariance: [
    [0.5, 0.6],
    [0.6, 0.0004],
  ],
};
const setupNow = () => tarnSetup() as unknown as Header;

test('the newest boil stands with its covariance, and an older one adds what is missing, independent of it', () => {
  expect(learntFor(setupNow(), [teaching('newer', both), teaching('older', maple)])).toEqual({
    names: ['probe A/1', 'sap birch', 'sap maple'],
    mean: [0.4, 0.03, 0.01],
    covariance: [
      [0.04, -0.005, 0],
      [-0.005, 0.001, 0],
      [0, 0, 0.0004],
    ],
  });
});

test('what the newest has of a forgotten name is passed over for nothing, and an older boil has it only if it may', () => {
  const newer = teaching('newer', both, { forgotten: ['sap birch'] });
  expect(learntFor(setupNow(), [newer, teaching('older', maple)])?.mean).toEqual([0.4, 0.09, 0.01]);
  expect(learntFor(setupNow(), [newer])).toMatchObject({ names: ['probe A/1'], covariance: [[0.04]] });
  expect(learntListings([newer], setupNow).map(({ name }) => name)).toEqual(['probe A/1', 'probe B/9']);
});

test.each([
  ['another offset', { offset_c: 0.3 }],
  ['another channel', { channel: 'T2' }],
  ['another kind of sensor', { sensor: { kind: 'rtd', r0_ohm: 100 } }],
])('a probe with %s is another one', (_what, change) => {
  const [probe] = tarnSetup().probes;
  const setup = { ...tarnSetup(), probes: [{ ...probe, ...change }] } as unknown as Header;
  expect(learntFor(setup, [teaching('newer', both)])?.names).toEqual(['sap birch']);
});

/** A boil in which the back pot made so many kg of steam a second, known to a share. */
const NAME = burnerName({ id: 'p1', name: 'Back pot', sap: 'birch' })!;
const burner = (boil: string, kgPerS: number, share = 0.05, change: Partial<Teaching> = {}): Teaching =>
  teaching(boil, { names: [NAME], mean: [Math.log(kgPerS)], covariance: [[share ** 2]] }, change);

test('of a burner all boils count that taught it, the forgotten ones not, and each for the pan that it is', () => {
  const boils = [burner('third', 0.001), burner('second', 0.0012), burner('first', 0.0011)];
  const all = learntFor(setupNow(), boils)!;
  expect(all.names).toEqual([NAME]);
  expect(Math.exp(all.mean[0]!)).toBeGreaterThan(0.001);
  expect(Math.exp(all.mean[0]!)).toBeLessThan(0.00125);
  const [one] = learntFor(setupNow(), boils.slice(0, 1))!.covariance[0]!;
  expect(all.covariance[0]![0]!).toBeLessThan(one!);
  const forgotten = boils.map((boil) => ({ ...boil, forgotten: [NAME] }));
  expect(learntFor(setupNow(), forgotten)).toBeUndefined();
  const renamed = { ...tarnSetup(), pans: [{ id: 'p1', name: 'Front pot' }] } as unknown as Header;
  expect(learntFor(renamed, boils)).toBeUndefined();
});

test('a person sees what a burner makes of its boils, in L and as a share of its power', () => {
  const heat = { kind: 'propane', power_w: 16_000 } as const;
  const pan: PanSetup = { id: 'p1', name: 'Back pot', heat };
  const name = burnerName(pan)!;
  const taught = { names: [name], mean: [Math.log(0.0025)], covariance: [[0.0025]] };
  const header = (): Header => ({ ...setupNow(), pans: [pan] });
  const boils = ['d', 'c', 'b', 'a'].map((boil) => teaching(boil, taught));
  const [listing] = learntListings(boils, header);
  expect(listing).toMatchObject({ about: 'burner', of: 'Back pot', boil: 'd', burner: { ...heatOf(heat), boils: 4 } });
  expect(listing!.value / (3600 * 0.0025)).toBeCloseTo(1, 1);
  // 2257 kJ turn a kilogram to steam at 100 °C (IAPWS): 2.5 g/s are 5.64 kW of 16.
  expect(listing!.burner!.efficiency).toBeCloseTo(0.353, 1);
  expect(learntListings(boils.slice(0, 1), header)[0]!.burner!.spread).toBeNull();
  // The pan joined in the middle of the boil: its name tells of it.
  const joined = learntListings(boils, () => ({ ...header(), pans: [] }));
  expect(joined).toMatchObject([{ about: 'burner', of: 'back pot', burner: { ...heatOf(heat), boils: 4 } }]);
});

const heatOf = ({ kind, power_w }: { kind: string; power_w: number }) => ({ heat: kind, power_w });

test.each([
  ['by the setting', { settings: { use_learnt: false } }, {}],
  ['by the setup', null, { settings: { use_learnt: false } }],
])('a boil can be begun without what was learnt, %s, and forgets nothing by it', async (_how, command, change) => {
  const host = await createHost({ folder, machine });
  await obeyed(host, { start: tarnSetup() });
  await teach(host);
  await obeyed(host, { end: true });
  if (command !== null) await obeyed(host, command);
  expect((await headerOfNext(host, { ...tarnSetup(), ...change })).learnt).toBeUndefined();
  if (command !== null) await obeyed(host, { settings: { use_learnt: true } });
  expect((await headerOfNext(host, tarnSetup())).learnt?.names.toSorted()).toEqual(['probe A/1', 'sap birch']);
  await host.close();
});
