// A replay plays, pauses and seeks in slices, shows at each time what the boil showed then, and leaves the live boil alone.
import { afterAll, expect, test } from 'vitest';
import { advance, applyEntry, panReadings, startBoil } from '../../../src/core/boil/fold.ts';
import { foldTools } from '../../../src/host/fold-tools.ts';
import { ReplayView } from '../../../src/host/replay/replay-view.ts';
import { parseEntry } from '../../../src/protocol/recording.ts';
import { HandClock } from '../hand-clock.ts';
import { TARN_HEADER, tarnBoil } from '../tarn-boil.ts';

const HOUR_S = 3600;
const texts = Array.from({ length: HOUR_S }, (_, second) =>
  JSON.stringify({ t: second * 1000, port: 'A', line: `T1=${(97 + second / HOUR_S + (second % 3) / 10).toFixed(2)}C` }),
);
const boil = tarnBoil();
afterAll(() => boil.close());

function opened() {
  const machine = new HandClock();
  const replay = new ReplayView({ boil: 'b', title: 'Tarn Hollow', header: TARN_HEADER, texts }, machine, () => {});
  return { machine, replay };
}

/** What the fold says when it is run straight to t. */
function straightTo(t: number) {
  const state = startBoil(TARN_HEADER);
  for (const text of texts) {
    const parsed = parseEntry(text);
    if (parsed.ok && parsed.entry.t <= t) applyEntry(state, parsed.entry, foldTools);
  }
  return panReadings(advance(state, t), t);
}

test('it plays at its speed, and a pause holds it', () => {
  const { machine, replay } = opened();
  machine.run(10_000);
  expect(replay.snapshot().t).toBeGreaterThan(595_000);
  expect(replay.snapshot().t).toBeLessThanOrEqual(600_000);
  replay.play(false);
  machine.run(200);
  const { t } = replay.snapshot();
  machine.run(10_000);
  expect(replay.snapshot().t).toBe(t);
  expect(replay.snapshot().replay).toMatchObject({ playing: false, length: (HOUR_S - 1) * 1000 });
});

test.each([50 * 60_000, 25 * 60_000 + 300, 5000])(
  'sought to %d ms, after the end, it shows what the boil showed then',
  (t) => {
    const { machine, replay } = opened();
    replay.play(false);
    replay.seek((HOUR_S - 1) * 1000);
    machine.run(5000);
    replay.seek(t);
    machine.run(5000);
    expect(replay.snapshot().t).toBe(t);
    expect(replay.snapshot().readings).toEqual(straightTo(t));
    // Every line once: none is left out and none heard again.
    expect(replay.snapshot().ports).toMatchObject([{ lines: Math.floor(t / 1000) + 1 }]);
  },
);

test('quick steps add up, though none of them is shown yet, and none leaves the boil', () => {
  const { machine, replay } = opened();
  replay.play(false);
  replay.seek(50 * 60_000);
  for (let presses = 0; presses < 3; presses += 1) replay.seekBy(-10 * 60_000);
  machine.run(5000);
  expect(replay.snapshot().t).toBe(20 * 60_000);
  for (const far of [-1, 1]) {
    replay.seekBy(far * HOUR_S * 1000);
    machine.run(5000);
    expect(replay.snapshot().t).toBe(far < 0 ? 0 : (HOUR_S - 1) * 1000);
  }
});

test('it stops at the end, and playing again starts from the beginning', () => {
  const { machine, replay } = opened();
  replay.setSpeed(600);
  machine.run(10_000);
  expect(replay.snapshot()).toMatchObject({ t: (HOUR_S - 1) * 1000, replay: { playing: false } });
  replay.play(true);
  machine.run(1000);
  expect(replay.snapshot().t).toBeLessThanOrEqual(600_000);
  expect(replay.snapshot().replay).toMatchObject({ playing: true });
});

test('its curve ends where the replay is, with the water point beside it', () => {
  const { machine, replay } = opened();
  machine.run(10_000);
  replay.play(false);
  machine.run(200);
  const curve = replay.curveBetween('p1', 0, HOUR_S * 1000, 100);
  expect(curve.t.length).toBeGreaterThan(50);
  expect(curve.t.length).toBeLessThanOrEqual(100);
  expect(curve.t.at(-1)).toBeLessThanOrEqual(600_000);
  for (const [index, low] of curve.low.entries()) expect(low).toBeLessThanOrEqual(curve.high[index] ?? Number.NaN);
  expect(curve.water.at(-1)).toBeCloseTo(97.9, 0);
});

test('a live boil beside it keeps its own alarms', () => {
  const { machine, replay } = opened();
  boil.line(97);
  const before = boil.run.snapshot();
  machine.run(10_000);
  replay.close();
  expect(boil.run.snapshot()).toEqual(before);
});
