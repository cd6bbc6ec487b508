// Tuning beside a host: progress, rows as the command prints them, the worst boil first, a proposal that nobody but a person applies, and offsets.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { systemClock } from '../../../src/host/clock.ts';
import { TuneDesk } from '../../../src/host/tuning/tune-desk.ts';
import { tuneBoil } from '../../../src/host/tuning/tune-boil.ts';
import type { Notebook } from '../../../src/notebook/contract.ts';
import { openNotebook } from '../../../src/notebook/open-notebook.ts';
import type { OffsetsView, TuneCommand, TuneView, TuningNow } from '../../../src/protocol/tune-messages.ts';
import { BIAS_C, shortBoil } from './short-boils.ts';

/** Called far too early: half an hour before the finish. */
const SET_NOW = {
  near_finish_lead_s: 1800,
  scorch_lead_s: 240,
  finish_probability: 0.5,
};
const BOILS = 3;

let folder: string;
let notebook: Notebook;
let desk: TuneDesk;
const told: TuningNow[] = [];
let count = 0;
const ask = async <Data>(command: object): Promise<Data> => {
  const outcome = await desk.do({ ref: String((count += 1)), ...command } as TuneCommand);
  if (!outcome.ok) throw new Error(outcome.why);
  return outcome.data as Data;
};
const start = (asked: object) => ask({ tune_start: { boils: [], settings: [], search: [], ...asked } });

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  notebook = openNotebook(folder);
  for (let day = 1; day <= BOILS; day += 1) await notebook.importRecording([shortBoil(day)], `boil ${day}`);
  desk = new TuneDesk(
    notebook,
    systemClock(),
    () => SET_NOW,
    (now) => told.push(now),
  );
});
afterAll(() => {
  desk.close();
  notebook.close();
  rmSync(folder, { recursive: true });
});

test('before anything was tuned there is nothing to look at', async () => {
  expect(await ask({ tune_look: true })).toBeNull();
});

test('settings beside each other: rows hold what a boil run by itself gives, with calls an hour and the worst boil first', async () => {
  const sooner = { settings: { near_finish_lead_s: 1800 } };
  await start({ settings: [{ name: 'half an hour', patch: sooner }] });
  await desk.idle();
  const view = await ask<TuneView>({ tune_look: true });
  expect(view).toMatchObject({
    running: false,
    stopped: false,
    done: BOILS,
    boils: BOILS,
    problems: [],
    proposal: null,
  });
  expect(view.settings.map(({ name, done, truths }) => [name, done, truths])).toEqual([
    ['as it was', BOILS, BOILS],
    ['half an hour', BOILS, BOILS],
  ]);
  const [asItWas, early] = view.settings as [TuneView['settings'][0], TuneView['settings'][0]];
  for (const { name, patch, boils } of [asItWas, early]) {
    for (const { boil, score } of boils) {
      const kept = { boil, header: notebook.header(boil), texts: notebook.entries(boil), noUse: [] };
      const [alone] = tuneBoil(kept, [{ name, patch }]).tuned;
      expect(alone).toMatchObject({ score: { alarms: score!.alarms, finish_brix: score!.finish_brix } });
    }
    expect(boils.map(({ cost }) => cost)).toEqual(boils.map(({ cost }) => cost).toSorted((a, b) => b! - a!));
  }
  const hours = notebook.boils().reduce((sum, { seconds }) => sum + seconds / 3600, 0);
  expect(asItWas.sum.calls_per_hour).toBeCloseTo(asItWas.sum.alarms / hours, 9);
  expect(early.sum.near_finish_lead_s! - asItWas.sum.near_finish_lead_s!).toBeGreaterThan(900);
  expect(told.at(-1)).toMatchObject({ kind: 'tuning', running: false, share: 1, done: BOILS });
  expect(told.map(({ share }) => share)).toEqual(told.map(({ share }) => share).toSorted((a, b) => a - b));
});

test('a search proposes what cost least, with what it gains, and changes nothing by itself', async () => {
  await start({ search: ['near_finish_lead_s', 'finish_probability'] });
  await desk.idle();
  const { proposal, settings } = await ask<TuneView>({ tune_look: true });
  expect(settings.slice(0, 2).map(({ name }) => name)).toEqual(['as it was', 'as set now']);
  if (proposal === null || 'why' in proposal) throw new Error(proposal?.why ?? 'no proposal');
  expect(proposal.truths).toBe(BOILS);
  expect([600, 900, 1200]).toContain(proposal.settings.near_finish_lead_s);
  expect(proposal.gains[0]).toMatch(
    /min before the finish: the call came .* min before the true finish rather than .* min/,
  );
  expect(SET_NOW.near_finish_lead_s).toBe(1800);
  expect(notebook.setting('settings')).toBeUndefined();
});

test('with one boil of a known end nothing is proposed, and it says what is missing', async () => {
  await start({ boils: [notebook.boils()[0]!.boil], search: ['near_finish_lead_s'] });
  await desk.idle();
  const { proposal } = await ask<TuneView>({ tune_look: true });
  expect(proposal).toEqual({
    why: expect.stringMatching(/^Only one boil was measured near the finish, and 3 are needed/),
  });
});

test('stopped, it keeps what is done and says so; a second one is refused while it runs', async () => {
  await start({ search: ['near_finish_lead_s', 'scorch_lead_s', 'finish_probability'] });
  await expect(start({ search: ['scorch_lead_s'] })).rejects.toThrow('running already');
  await ask({ tune_stop: true });
  await desk.idle();
  const view = await ask<TuneView>({ tune_look: true });
  expect(view).toMatchObject({ running: false, stopped: true, boils: BOILS });
  expect(view.done).toBeLessThan(BOILS);
});

test.each([
  [
    { settings: [{ name: 'wrong', patch: { settings: { near_finish_lead_s: 'soon' } } }] },
    /wrong: .*near_finish_lead_s/,
  ],
  [{ settings: [{ name: 'as it was', patch: {} }] }, /there twice/],
  [{ boils: ['nope'], search: ['scorch_lead_s'] }, /nope/],
  [{}, /Name settings/],
])('%j is refused in a sentence', async (asked, why) => {
  await expect(start(asked)).rejects.toThrow(why);
});

test('what three boils tell of a probe is what was wrong with it, as sure as it says', async () => {
  expect(await ask<OffsetsView>({ probe_offsets: true })).toMatchObject({ working: BOILS });
  await desk.idle();
  const { probes, working } = await ask<OffsetsView>({ probe_offsets: true });
  expect(working).toBe(0);
  const [probe] = probes;
  expect(probe).toMatchObject({ probe: 'A/1', boils: BOILS, why: null });
  expect(probe!.low_c).toBeLessThan(BIAS_C);
  expect(probe!.high_c).toBeGreaterThan(BIAS_C);
  expect(probe!.sentence).toMatch(
    /^Probe A\/1 shows 0\.\d °C too much \(.*\), from 3 boils: offset_c -0\.\d would make it right\.$/,
  );
});
