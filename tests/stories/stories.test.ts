// Every fixture against its story: the story was written from the simulator's truth, never from this program's output.
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readStory } from '../../fixtures/read-story.ts';
import { formOf } from '../../src/language/host-words.ts';
import { whyWords } from '../../src/screen/words/why-words.ts';
import { metric } from '../screen/moment.ts';
import { replayFixture } from './replay-fixture.ts';

const recordings = new URL('../../fixtures/recordings/', import.meta.url);
const stories = new URL('../../fixtures/stories/', import.meta.url);
const names = readdirSync(stories).filter((name) => name.endsWith('.story.json'));

describe.each(names)('%s', (name) => {
  test('calls what truly happened and nothing that did not', async () => {
    const story = await readStory(new URL(name, stories));
    const { calls } = await replayFixture(new URL(story.recording, recordings), 60_000);
    const raised = calls.filter(({ event }) => event === 'raised');
    const missing = story.expect.filter(
      ({ alarm, pan, from, to }) =>
        !raised.some((one) => one.alarm === alarm && one.pan === pan && one.t >= from && one.t <= to),
    );
    const unwanted = story.mustNot.flatMap((ban) =>
      raised
        .filter((one) => one.alarm === ban.alarm && one.t >= ban.from && one.t <= ban.to)
        .filter((one) => ban.pan === undefined || one.pan === ban.pan)
        .map((one) => ({ ban: ban.why, raised: one })),
    );
    expect({ missing, unwanted }).toEqual({ missing: [], unwanted: [] });
    // Every reason can be told in the language of the screen.
    const reasons = [...new Set(calls.map(({ why }) => why).filter((why) => why !== ''))];
    expect(reasons.length).toBeGreaterThan(0);
    const shown = reasons.map((why) => whyWords(why, metric));
    expect(shown.filter((why) => formOf(why) === null)).toEqual([]);
  });

  test('says the truth about strength where it says anything', async () => {
    const story = await readStory(new URL(name, stories));
    const { readings } = await replayFixture(new URL(story.recording, recordings), 600_000);
    const pairs = story.samples.flatMap((sample) => {
      const said = readings.find(({ t, reading }) => t === sample.t && reading.pan === sample.pan)?.reading;
      return said === undefined || said.brix === null || sample.brix < 25 ? [] : [{ said, sample }];
    });
    const errors = pairs.map(({ said, sample }) => Math.abs(said.brix! - sample.brix)).toSorted((a, b) => a - b);
    const held = pairs.filter(({ said, sample }) => said.brix_low! <= sample.brix && sample.brix <= said.brix_high!);
    // 0.1 °C of rise is 0.5 °Bx at 66 and 2.4 °Bx at 27 (physics.md section 4, slope of the elevation), and a checked
    // probe is known to about that.
    expect(errors[errors.length >> 1] ?? 0).toBeLessThan(2.5);
    expect(held.length).toBeGreaterThanOrEqual(0.65 * pairs.length);
  });
});

test('more often asked, the same calls: looking does not change what is called', async () => {
  const path = new URL('three-pots-poured-together.boil.jsonl', recordings);
  const [seldom, often] = [await replayFixture(path, 600_000), await replayFixture(path, 700)];
  expect(often.calls).toEqual(seldom.calls);
});
