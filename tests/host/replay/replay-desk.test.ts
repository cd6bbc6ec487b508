// A replay through the host: it calls what was called live, to the byte, steps from mark to call, shows what came later, tries other choices, and touches no live boil.
import { createReadStream, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { alarmLine } from '../../../src/cli/json-lines.ts';
import { startBoil } from '../../../src/core/boil/fold.ts';
import type { Header } from '../../../src/core/boil/entries.ts';
import { foldTools } from '../../../src/host/fold-tools.ts';
import { Folding } from '../../../src/host/folding.ts';
import { createHost } from '../../../src/host/create-host.ts';
import type { Host } from '../../../src/host/host.ts';
import type { Now } from '../../../src/protocol/messages.ts';
import { parseEntry } from '../../../src/protocol/recording.ts';
import type { PanKnown, ReplayDifferences, ReplayStrip } from '../../../src/protocol/replay-messages.ts';
import { formOf } from '../../../src/language/host-words.ts';
import { HandClock } from '../hand-clock.ts';

const CONDITIONS = ['raised', 'escalated', 'cleared'];
const BIRCH = 'fixtures/recordings/birch-one-pan.boil.jsonl';
/** Of fixtures/stories/birch-one-pan.story.json: the simulator's own truth, which no model of the pan has seen. */
const BIRCH_FINISHED_T = 18_411_000;

let folder: string;
let machine: HandClock;
let host: Host;
let lines: string[];
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  machine = new HandClock();
  lines = [];
  host = await createHost({
    folder,
    machine,
    listener: { alarm: (one) => void (CONDITIONS.includes(one.event) && lines.push(alarmLine(one))) },
  });
});
afterEach(async () => {
  await host.close();
  rmSync(folder, { recursive: true });
});

function nowOf(view: 'live' | 'replay'): Now {
  const heard: Now[] = [];
  const stop = host.subscribe((message) => message.kind === 'now' && message.view === view && heard.push(message));
  machine.run(1500);
  stop();
  return heard.at(-1)!;
}

let count = 0;
async function ask<Data>(command: object): Promise<Data> {
  const answer = await host.command({ ref: String((count += 1)), ...command });
  if (!answer.ok) throw new Error(answer.why);
  return answer.data as Data;
}

/** An imported boil, opened at a moment and read to its end. */
async function opened(file: string, at?: number): Promise<string> {
  const { boil } = await host.importRecording(createReadStream(file), file);
  await ask({ replay: { boil, at } });
  machine.run(500);
  return boil;
}

test('a replay of a boil that was watched calls the same, line for line and byte for byte', async () => {
  const { boil } = await ask<{ boil: string }>({ practice: { speed: 600 } });
  for (let second = 0; second < 9; second += 1) machine.run(1000);
  await ask({ end: true });
  const [head, ...texts] = [...host.recordingOf(boil)];
  const again: string[] = [];
  const folding = new Folding(
    startBoil(JSON.parse(head!) as Header),
    foldTools,
    {
      alarm: (one) => void (CONDITIONS.includes(one.event) && again.push(alarmLine(one))),
      readings: () => {},
    },
    null,
  );
  for (const text of texts) {
    const parsed = parseEntry(text);
    if (parsed.ok) folding.take(parsed.entry, text);
  }
  expect(lines.length).toBeGreaterThan(5);
  expect(again.join('\n')).toBe(lines.join('\n'));
  await ask({ replay: { boil } });
  machine.run(500);
  const { calls } = await ask<ReplayStrip>({ replay_strip: { points: 100 } });
  const raised = lines.map((line) => JSON.parse(line) as { event: string; t: number; alarm: string; why: string });
  expect(calls.map(({ raised: t, alarm, why }) => ({ t, alarm, why }))).toEqual(
    raised.filter(({ event }) => event === 'raised').map(({ t, alarm, why }) => ({ t, alarm, why })),
  );
});

test('a boil that burns in a replay calls nobody, and nothing of it can be answered', async () => {
  await opened('fixtures/recordings/scorched.boil.jsonl', 9_500_000);
  expect(nowOf('replay').alarms).toContainEqual(expect.objectContaining({ alarm: 'scorch-risk', priority: 'high' }));
  expect(nowOf('live')).toMatchObject({ mode: 'idle', alarms: [], sound: { priority: null } });
  expect(lines).toEqual([]);
  const answer = { acknowledge: { pan: 'p1', alarm: 'scorch-risk' } };
  await expect(ask({ answer })).rejects.toThrow('No boil is running');
  expect(nowOf('replay').alarms.filter(({ answered }) => answered)).toEqual([]);
});

test('a boil that runs goes on beside it, with its own alarms and its own record', async () => {
  const setup = { name: 'Tarn Hollow, invented', pans: [{ id: 'p1', name: 'Back pot' }] };
  const { boil } = await ask<{ boil: string }>({ start: setup });
  await ask({ mark: { kind: 'remind', text: 'turn the flame down', seconds: 60 } });
  await opened('fixtures/recordings/scorched.boil.jsonl');
  await ask({ replay_control: { speed: 600 } });
  for (let second = 0; second < 70; second += 1) machine.run(1000);
  expect(nowOf('replay').t).toBeGreaterThan(9_500_000);
  expect(nowOf('live')).toMatchObject({ boil, mode: 'live', alarms: [{ alarm: 'reminder' }] });
  await expect(ask({ answer: { acknowledge: { pan: 'p1', alarm: 'scorch-risk' } } })).rejects.toThrow(
    'nothing to answer',
  );
  await ask({ replay_close: true });
  const kept = [...host.recordingOf(boil)].slice(1).map((text) => JSON.parse(text) as Record<string, unknown>);
  expect(kept.map((entry) => Object.keys(entry).filter((key) => key !== 't'))).toEqual([['mark'], ['called']]);
  expect(lines.map((line) => (JSON.parse(line) as { alarm: string }).alarm)).toEqual(['reminder']);
});

test('it steps from one mark or call to the next and back, and pauses there', async () => {
  await opened(BIRCH, 0);
  const { calls, marks } = await ask<ReplayStrip>({ replay_strip: { points: 100 } });
  const times = [...marks.map(({ t }) => t), ...calls.map(({ raised }) => raised)];
  const inOrder = [...new Set(times)].filter((t) => t > 0).sort((one, other) => one - other);
  for (const t of inOrder.slice(0, 4)) {
    await ask({ replay_control: { step: 'next', to: 'either' } });
    expect(nowOf('replay')).toMatchObject({ t, replay: { playing: false } });
  }
  await ask({ replay_control: { step: 'previous', to: 'either' } });
  expect(nowOf('replay').t).toBe(inOrder[2]);
  await ask({ replay_control: { seek: calls.at(-1)!.raised } });
  await expect(ask({ replay_control: { step: 'next', to: 'alarm' } })).rejects.toThrow('no call after this moment');
});

test('where there is no further mark or call it says so, in a sentence that the screen knows', async () => {
  await opened(BIRCH, 0);
  for (const step of ['previous', 'next'] as const) {
    for (const to of ['mark', 'alarm', 'either'] as const) {
      await ask({ replay_control: { seek: step === 'next' ? BIRCH_FINISHED_T * 2 : 0 } });
      const refusal = await ask({ replay_control: { step, to } }).catch((error: Error) => error.message);
      expect(formOf(String(refusal)), `${step} ${to}: ${String(refusal)}`).not.toBeNull();
    }
  }
});

test('half an hour before the finish it says what was expected then, and when it came', async () => {
  await opened(BIRCH, 0);
  const [pan] = await ask<PanKnown[]>({ replay_known: { at: BIRCH_FINISHED_T - 30 * 60_000 } });
  expect(Math.abs(pan!.was!.at - BIRCH_FINISHED_T)).toBeLessThan(3 * 60_000);
  expect(Math.abs(pan!.said!.at - BIRCH_FINISHED_T)).toBeLessThan(10 * 60_000);
  expect(pan!.later_s).toBe(Math.round((pan!.was!.at - pan!.said!.at) / 1000));
  const [after] = await ask<PanKnown[]>({ replay_known: { at: BIRCH_FINISHED_T + 5 * 60_000 } });
  expect(after).toMatchObject({ was: null, later_s: null, inRange: null });
});

test('with other choices it shows what would have been, calls differ, and as it was comes back', async () => {
  await opened(BIRCH, BIRCH_FINISHED_T - 20 * 60_000);
  const before = nowOf('replay');
  expect(before.alarms).toEqual([]);
  await ask({ replay_choices: { patch: { settings: { near_finish_lead_s: 1800 } } } });
  const other = nowOf('replay');
  expect(other).toMatchObject({ t: before.t, replay: { choices: { settings: { near_finish_lead_s: 1800 } } } });
  expect(other.alarms).toMatchObject([{ alarm: 'near-finish' }]);
  const { differences, calls, pans } = await ask<ReplayDifferences>({ replay_differences: { points: 200 } });
  const near = differences.find(({ alarm }) => alarm === 'near-finish')!;
  expect(near.later_s).toBeLessThan(-10 * 60);
  expect(near.words).toMatch(/^\d+ min sooner$/);
  expect(calls.was.length).toBeGreaterThan(0);
  // The lead moves no number of the pan.
  expect(pans[0]!.would).toEqual(pans[0]!.was);
  await ask({ replay_choices: { patch: null } });
  const { replay, header, readings, alarms } = nowOf('replay');
  expect({ replay, header, readings, alarms }).toEqual({
    replay: { ...before.replay },
    header: before.header,
    readings: before.readings,
    alarms: before.alarms,
  });
  await expect(ask({ replay_differences: { points: 200 } })).rejects.toThrow('No other choices');
});

test.each([
  [{ pans: [{ id: 'p1', finish: { brix: 'thick' } }] }, /pans\[0\]\.finish/],
  [{ settings: { near_finish_lead_s: -5 } }, /settings\.near_finish_lead_s/],
  [{ probes: [{ id: 'A/1', port: 'Z', channel: 'T1' }] }, /probes\[0\]\.port/],
])('choices that hold together no more are refused by the name of the field: %j', async (patch, named) => {
  await opened(BIRCH, 0);
  await expect(ask({ replay_choices: { patch } })).rejects.toThrow(named);
  expect(nowOf('replay').replay!.choices).toBeNull();
});

test('the strip has each pan from end to end, with the greatest of each column, its marks and its finish', async () => {
  await opened(BIRCH, 0);
  const { pans, columnMs, length, finishes, marks } = await ask<ReplayStrip>({ replay_strip: { points: 300 } });
  const read = [...readFileSync(BIRCH, 'utf8').matchAll(/T1=([\d.]+)/g)].map(([, c]) => Number(c));
  // Single readings are not trusted: the few that jump are left out here, too.
  const hottest = read.toSorted((one, other) => other - one)[20]!;
  const [strip] = pans;
  expect(strip!.high.length).toBe(Math.ceil((length + 1) / columnMs));
  expect(strip!.high.length).toBeLessThanOrEqual(300);
  expect(Math.max(...strip!.high.map((c) => c ?? 0))).toBeCloseTo(hottest, 0);
  expect(finishes).toMatchObject([{ pan: 'p1' }]);
  expect(marks.length).toBeGreaterThan(3);
});

test('of two that are opened at once the later one stands, and one that is put away while it is read comes no more', async () => {
  const longer = 'fixtures/recordings/three-pots-poured-together.boil.jsonl';
  const { boil: long } = await host.importRecording(createReadStream(longer), longer);
  const file = 'fixtures/recordings/lost-probe.boil.jsonl';
  const { boil: short } = await host.importRecording(createReadStream(file), file);
  await Promise.all([ask({ replay: { boil: long } }), ask({ replay: { boil: short, at: 1e12 } })]);
  expect(nowOf('replay')).toMatchObject({ boil: short, replay: { playing: false } });
  await ask({ replay_close: true });
  await Promise.all([ask({ replay: { boil: long } }), ask({ replay_close: true })]);
  await expect(ask({ replay_strip: { points: 10 } })).rejects.toThrow('No replay is open.');
});
