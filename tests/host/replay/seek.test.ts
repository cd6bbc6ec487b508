// Wherever a replay is sought to, it shows what the fold shows that was run there straight from the start: views and explanations, deeply equal.
import { readdirSync, readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { expect, test } from 'vitest';
import { startBoil } from '../../../src/core/boil/fold.ts';
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { nextUniform, randomStream } from '../../../src/core/simulation/random.ts';
import { foldTools } from '../../../src/host/fold-tools.ts';
import { Folding, gapStart } from '../../../src/host/folding.ts';
import { Keyframes } from '../../../src/host/replay/keyframes.ts';
import { ReplayView } from '../../../src/host/replay/replay-view.ts';
import { parseEntry } from '../../../src/protocol/recording.ts';
import { HandClock } from '../hand-clock.ts';

const FOLDER = 'fixtures/recordings';
const POINTS = 100;

function recordingOf(file: string) {
  const [head, ...texts] = readFileSync(`${FOLDER}/${file}`, 'utf8').trimEnd().split('\n');
  return { boil: file, title: file, header: JSON.parse(head!) as Header, texts };
}

/** What the fold says at each of the times (ms, rising), run once from the start. */
function* straight(header: Header, texts: readonly string[], times: readonly number[]) {
  const folding = new Folding(startBoil(header), foldTools, { alarm: () => {}, readings: () => {} }, null);
  const entries = texts.flatMap((text): Entry[] => {
    const parsed = parseEntry(text);
    return parsed.ok ? [parsed.entry] : [];
  });
  let next = 0;
  for (const t of times) {
    for (; (entries[next]?.t ?? Infinity) <= t; next += 1) folding.take(entries[next]!, '');
    const ahead = entries[next];
    if (ahead !== undefined && 'seconds' in ahead && gapStart(ahead) < t) folding.enterGapOf(ahead);
    folding.reach(t);
    yield boilView(folding.state, t);
  }
}

test.each(readdirSync(FOLDER))('%s, at 100 random moments in any order', (file) => {
  const recording = recordingOf(file);
  const machine = new HandClock();
  const replay = new ReplayView(recording, machine, () => {}, 0);
  machine.run(1000);
  const { length, readUntil } = replay.snapshot().replay!;
  expect(readUntil).toBe(length);
  const stream = randomStream(7, file);
  const order = Array.from({ length: POINTS }, () => Math.floor(nextUniform(stream) * (length + 1)));
  const sorted = order.toSorted((one, other) => one - other);
  const wanted = new Map([...straight(recording.header, recording.texts, sorted)].map((view, i) => [sorted[i]!, view]));
  for (const t of order) {
    replay.seek(t);
    machine.run(1000);
    const shown = replay.snapshot();
    expect(shown.t).toBe(t);
    for (const [name, value] of Object.entries(wanted.get(t)!)) {
      const there = shown[name as keyof typeof shown];
      // The exact comparison of Node takes a twentieth of the time; where it sees a difference, the other one prints it.
      if (!isDeepStrictEqual(there, value)) expect(there).toEqual(value);
    }
  }
});

test('keyframes stay under what they may take, and thin out evenly', () => {
  const header = recordingOf('birch-one-pan.boil.jsonl').header;
  const keyframes = new Keyframes(40_000);
  for (let t = 120_000; t <= 100 * 120_000; t += 120_000) keyframes.offer(t, t / 1000, startBoil(header));
  expect(keyframes.bytes).toBeLessThanOrEqual(40_000);
  expect(keyframes.timeBefore(100 * 120_000)).toBeGreaterThan(60 * 120_000);
  expect(keyframes.before(119_999)).toBeNull();
});

test('a name that every object has is a name like any other in a state that was put by', () => {
  const header = { ...recordingOf('birch-one-pan.boil.jsonl').header, ports: [], probes: [], pans: [] };
  const keyframes = new Keyframes();
  keyframes.offer(600_000, 1, startBoil(header));
  expect('constructor' in keyframes.before(600_000)!.state.pans).toBe(false);
});
