// A boil whose fire was lit before the program was told of it: as old as its fire, with a gap until then, and notes of that time.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { hostWords } from '../../src/language/host-words.ts';
import french from '../../src/language/fr.json' with { type: 'json' };
import { Tongue } from '../../src/language/tongue.ts';
import type { Header } from '../../src/core/boil/entries.ts';
import { foldAll, readingAt } from '../core/boil/tarn-hollow.ts';
import { createHost } from '../../src/host/create-host.ts';
import type { Now } from '../../src/protocol/messages.ts';
import { HandClock } from './hand-clock.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

let folder: string;
let machine: HandClock;
let host: Host;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  machine = new HandClock();
  host = await createHost({ folder, machine });
});
afterEach(async () => {
  await host.close();
  rmSync(folder, { recursive: true });
});

type Host = Awaited<ReturnType<typeof createHost>>;

/** Readings by hand alone: no port, so nothing of this machine is opened. */
const setup = {
  name: 'Tarn Hollow, invented',
  site: { altitude_m: 0 },
  pans: ['p1', 'p2'].map((id) => ({
    id,
    name: id === 'p1' ? 'Back pot' : 'Front pot',
    sap: 'maple',
    vessel: { shape: 'round', diameter_mm: 400 },
    heat: { kind: 'propane', power_w: 16_000 },
  })),
};

const lit = (agoMs: number): string => new Date(machine.wall - agoMs).toISOString();
const begin = (agoMs: number): ReturnType<Host['command']> => host.command({ ref: 'b', start: setup, lit: lit(agoMs) });
const note = (mark: object): ReturnType<Host['command']> => host.command({ ref: 'm', mark });

function now(): Now {
  const heard: Now[] = [];
  host.subscribe((message) => message.kind === 'now' && heard.push(message))();
  const [first] = heard;
  if (first === undefined) throw new Error('nothing was published');
  return first;
}
const recorded = (): Record<string, unknown>[] =>
  [...host.recordingOf(now().boil ?? '')].map((text) => JSON.parse(text) as Record<string, unknown>);

test('it is as old as its fire, and its first entry is the gap until now', async () => {
  expect(await begin(2 * HOUR_MS)).toMatchObject({ ok: true });
  expect(now().t).toBe(2 * HOUR_MS);
  const [header, first, ...rest] = recorded();
  expect(Date.parse(String(header?.['started']))).toBe(machine.wall - 2 * HOUR_MS);
  expect(first).toEqual({ t: 2 * HOUR_MS, run: 'gap', seconds: 7200 });
  expect(rest).toEqual([]);
});

test('what went in before is noted with its time, and has boiled away since', async () => {
  await begin(2 * HOUR_MS);
  machine.run(MINUTE_MS);
  expect(await note({ kind: 'top-up', pan: 'p1', litres: 40, brix: 2, happened: 0 })).toMatchObject({ ok: true });
  expect(await note({ kind: 'top-up', pan: 'p2', litres: 40, brix: 2 })).toMatchObject({ ok: true });
  const { readings, header, t } = now();
  const [first, second] = readings;
  expect(second!.litres!).toBeGreaterThan(39);
  // The same as in a boil that was watched from the start.
  const poured = { kind: 'top-up', pan: 'p1', litres: 40, brix: 2 } as const;
  const watched = readingAt(foldAll(header as Header, [{ t: 0, mark: poured }], t).state, 'p1', t);
  expect(watched.litres!).toBeLessThan(35);
  expect(Math.abs(first!.litres! - watched.litres!)).toBeLessThan(0.1);
  expect(Math.abs(first!.brix! - watched.brix!)).toBeLessThan(0.05);
  expect(Math.abs(first!.finish_in_s! / watched.finish_in_s! - 1)).toBeLessThan(0.05);
  expect(await note({ kind: 'note', text: 'too early', happened: -1000 })).toMatchObject({ ok: false });
});

test('after a stop it goes on as the same boil', async () => {
  await begin(2 * HOUR_MS);
  await note({ kind: 'top-up', pan: 'p1', litres: 40, brix: 2, happened: 0 });
  const before = now();
  await host.close();
  machine.sleep(5 * MINUTE_MS);
  host = await createHost({ folder, machine });
  const after = now();
  expect(after.boil).toBe(before.boil);
  expect(after.t).toBe(2 * HOUR_MS + 5 * MINUTE_MS);
  expect(after.readings[0]!.litres!).toBeLessThanOrEqual(before.readings[0]!.litres!);
});

test('the second pan is asked about for a while after the first, as in a boil that begins now', async () => {
  await begin(5 * HOUR_MS);
  await note({ kind: 'flame', pan: 'p1', level: 0 });
  expect(now().next).toMatchObject({ what: 'tell-litres', pan: 'p2' });
});

test.each([
  ['to come', -1000, /^The fire cannot have been lit later than now/u],
  ['two days and a second ago', 48 * HOUR_MS + 1000, /^The fire was lit more than 48 hours ago/u],
])('a fire that was lit %s is refused in a sentence of both languages, and nothing is begun', async (_, ago, why) => {
  const answer = await begin(ago);
  expect(answer).toMatchObject({ ok: false, why: expect.stringMatching(why) });
  const said = 'why' in answer ? answer.why : '';
  expect(hostWords(said, new Tongue('fr', french))).toMatch(/^Le feu/u);
  expect(now().boil).toBeNull();
});

test('a time by the clock on the wall without an offset is the host’s own', async () => {
  const shown = new Date(machine.wall - HOUR_MS);
  const local = new Date(shown.getTime() - shown.getTimezoneOffset() * MINUTE_MS).toISOString().slice(0, 19);
  expect(await host.command({ ref: 'b', start: setup, lit: local })).toMatchObject({ ok: true });
  expect(now().t).toBe(HOUR_MS);
});

test('a boil that begins now begins at nothing, with no gap', async () => {
  expect(await host.command({ ref: 'b', start: setup })).toMatchObject({ ok: true });
  expect(now().t).toBe(0);
  expect(recorded()).toHaveLength(1);
});
