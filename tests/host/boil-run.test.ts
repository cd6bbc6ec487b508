// A running boil: what is called stands in its place in the record, and no fault of disk or clock loses anything.
import { afterEach, expect, test } from 'vitest';
import type { AlarmTransition } from '../../src/core/alarms/alarm.ts';
import type { Entry } from '../../src/core/boil/entries.ts';
import { startBoil } from '../../src/core/boil/fold.ts';
import { foldTools } from '../../src/host/fold-tools.ts';
import { Folding } from '../../src/host/folding.ts';
import { TARN_HEADER, tarnBoil } from './tarn-boil.ts';

let boil: ReturnType<typeof tarnBoil>;
afterEach(() => boil.close());

function heat(seconds: number, from = 97): void {
  for (let second = 0; second < seconds; second += 1) {
    boil.line(from + (second % 3) / 10);
    boil.machine.run(1000);
  }
}

test('a silent probe is called at its own moment, and the call stands before the line that ends it', () => {
  boil = tarnBoil();
  heat(20);
  boil.machine.run(40_000);
  heat(3);
  const raised = boil.heard.alarms.find(({ alarm, event }) => alarm === 'probe-lost' && event === 'raised');
  expect(raised?.t).toBeLessThan(30_000);
  const entries = boil.entries();
  const place = entries.findIndex((entry) => 'called' in entry);
  expect(entries[place]?.t).toBe(raised?.t);
  expect(entries.map(({ t }) => t)).toEqual(entries.map(({ t }) => t).sort((a, b) => a - b));
});

test('readings come at whole multiples of the interval, after all entries up to then', () => {
  boil = tarnBoil();
  heat(32);
  expect(boil.heard.readings).toEqual([0, 10_000, 20_000, 30_000]);
});

test('a full disk is called, a mark waits, and all of it is written once there is room', async () => {
  boil = tarnBoil();
  heat(3);
  boil.disk.full = true;
  const answer = boil.run.mark({ kind: 'flame', pan: 'p1', level: 1 });
  heat(5);
  expect(boil.run.snapshot().alarms.map(({ alarm }) => alarm)).toContain('not-recording');
  expect(boil.run.snapshot().sound.priority).toBe('medium');
  const before = boil.entries().length;
  boil.disk.full = false;
  boil.machine.run(1000);
  expect(await answer).toEqual({ ok: true });
  boil.machine.run(1000);
  const entries = boil.entries();
  expect(entries.filter((entry) => 'line' in entry)).toHaveLength(8);
  expect(entries.filter((entry) => 'mark' in entry)).toHaveLength(1);
  expect(entries.length).toBeGreaterThan(before);
  expect(boil.heard.kept.at(-1)).toBe(entries.length);
  const calls = boil.heard.alarms.filter(({ alarm }) => alarm === 'not-recording').map(({ event }) => event);
  expect(calls).toEqual(['raised', 'cleared']);
});

test('a boil is not ended while it cannot be written down', async () => {
  boil = tarnBoil();
  heat(2);
  boil.disk.full = true;
  expect(await boil.run.end()).toMatchObject({ ok: false });
  boil.disk.full = false;
  boil.machine.run(1000);
  expect(await boil.run.end()).toEqual({ ok: true });
  expect(boil.entries().at(-1)).toMatchObject({ run: 'ended' });
  expect(boil.summary()).toMatchObject({ running: false, entries: boil.entries().length });
});

test('once it is over, its pans stay as they were at its end, and it tells when that was', async () => {
  boil = tarnBoil();
  heat(60);
  const { readings, probes } = boil.run.snapshot();
  await boil.run.end();
  const { t } = boil.entries().at(-1)!;
  boil.machine.run(3_600_000);
  const after = boil.run.snapshot();
  expect(after).toMatchObject({ ended: true, endedAt: t, readings });
  expect(after.probes[0]!.state).toBe(probes[0]!.state);
  expect(after.t).toBeGreaterThan(3_600_000);
});

test('a sleep of half an hour is a gap in the record, and a stepped wall clock is none', () => {
  boil = tarnBoil();
  heat(10);
  boil.machine.wall += 3_600_000;
  heat(5);
  expect(boil.entries().some((entry) => 'run' in entry)).toBe(false);
  boil.machine.sleep(1_800_000);
  heat(2);
  const gap = boil.entries().find((entry) => entry['run'] === 'gap');
  expect(gap?.['seconds']).toBeGreaterThan(1795);
  expect(gap?.['seconds']).toBeLessThan(1802);
});

test.each([
  [{ kind: 'flame', pan: 'nope', level: 1 }, 'There is no pan "nope" in this boil; there is "p1".'],
  [{ kind: 'withdraw', id: 'm9' }, 'There is no mark with the id "m9" to take back.'],
  [{ kind: 'depth', pan: 'p1', mm: 40, happened: 999_999 }, /later than now/],
  [
    { kind: 'top-up', pan: 'p1', litres: 20, happened: -1 },
    /before the boil began \(0\): note what was in a pan by then at 0/,
  ],
  [{ kind: 'move-probe', probe: 'B/1', pan: 'p1' }, /no probe "B\/1"/],
] as const)('a mark that cannot be is refused with a sentence: %j', async (mark, why) => {
  boil = tarnBoil();
  heat(1);
  const outcome = await boil.run.mark(mark);
  expect(outcome).toMatchObject({ ok: false, why: typeof why === 'string' ? why : expect.stringMatching(why) });
  expect(boil.entries().some((entry) => 'mark' in entry)).toBe(false);
});

test('an item of the source that lags behind a mark keeps the record in order', async () => {
  boil = tarnBoil();
  heat(2);
  await boil.run.mark({ kind: 'note', text: 'invented' });
  boil.send({ kind: 'entry', entry: { t: 10, port: 'A', line: 'T1=97' } });
  await boil.run.leave();
  const times = boil.entries().map(({ t }) => t);
  expect(times).toEqual([...times].sort((a, b) => a - b));
  expect(boil.entries().filter((entry) => 'line' in entry)).toHaveLength(3);
});

test('the kept boil, replayed, calls exactly what was called live', () => {
  boil = tarnBoil();
  for (let second = 0; second < 900; second += 1) {
    boil.line(98 + second / 100);
    boil.machine.run(1000);
  }
  boil.machine.run(30_000);
  heat(5, 104);
  void boil.run.answer({ acknowledge: { pan: 'p1', alarm: 'probe-lost' } });
  boil.machine.run(2000);
  const replayed: AlarmTransition[] = [];
  const folding = new Folding(
    startBoil(TARN_HEADER),
    foldTools,
    { alarm: (transition) => replayed.push(transition), readings: () => {} },
    null,
  );
  for (const entry of boil.entries()) folding.take(entry as Entry, '');
  const live = boil.heard.alarms.filter(({ t }) => t <= boil.entries().at(-1)!.t);
  expect(replayed.map(({ alarm, event }) => `${alarm} ${event}`)).toContain('past-finish raised');
  expect(replayed).toEqual(live);
});

test('what was learnt and cannot be kept is said, and neither the mark nor the end fails for it', async () => {
  boil = tarnBoil();
  boil.disk.keepsLearnt = false;
  heat(3);
  expect(await boil.run.mark({ kind: 'water-check', probe: 'A/1', celsius: 97.1 })).toEqual({ ok: true });
  const sentence = 'What this boil taught could not be kept for the next one: the disk is full.';
  expect(boil.run.snapshot().notices).toContain(sentence);
  expect(await boil.run.end()).toEqual({ ok: true });
  expect(boil.run.snapshot().notices).toEqual([sentence]);
  expect(boil.summary().running).toBe(false);
});

test('a board that is read again is not said to be gone any more; what else was said of it stays', () => {
  boil = tarnBoil();
  boil.notice({ port: 'A', sentence: 'Port A went away.', untilOpen: true });
  boil.notice({ port: 'B', sentence: 'Port B went away.', untilOpen: true });
  boil.notice({ port: 'A', sentence: 'The board of port A is elsewhere now.' });
  const now = boil.machine.monotonicMs();
  boil.send({ kind: 'entry', entry: { t: now + 1, port: 'A', state: 'lost', why: 'Port A went away.' } });
  expect(boil.run.snapshot().notices).toHaveLength(3);
  boil.send({ kind: 'entry', entry: { t: now + 2, port: 'A', state: 'open' } });
  expect(boil.run.snapshot().notices).toEqual(['Port B went away.', 'The board of port A is elsewhere now.']);
});

test('what was said while it boiled is said no more once the boil is over', async () => {
  boil = tarnBoil();
  heat(3);
  const poured = { kind: 'top-up', pan: 'p1', litres: 4, brix: 2 } as const;
  for (const _ of [1, 2]) await boil.run.mark(poured);
  boil.run.say('The probe of the back pot was plugged in anew.');
  expect(boil.run.snapshot().notices).toHaveLength(2);
  await boil.run.end();
  expect(boil.run.snapshot().notices).toEqual([]);
});
