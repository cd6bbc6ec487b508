// How far the strength and the forecast are from the simulator's truth, over every fixture; the later model must beat it.
import { readdirSync } from 'node:fs';
import { readStory, type Story } from '../../fixtures/read-story.ts';
import { type Replayed, replayFixture } from '../stories/replay-fixture.ts';

const recordings = new URL('../../fixtures/recordings/', import.meta.url);
const stories = new URL('../../fixtures/stories/', import.meta.url);
const LEADS_MIN = [60, 30, 15, 10, 5];

export async function strength(): Promise<void> {
  console.log(
    '  boil                        °Bx over 25: median  p90   in range | error of time left, % (in range) at 60 30 15 10 5 min',
  );
  for (const name of readdirSync(stories).filter((one) => one.endsWith('.story.json'))) {
    const story = await readStory(new URL(name, stories));
    const replayed = await replayFixture(new URL(story.recording, recordings), 60_000);
    console.log(
      `  ${name.replace('.story.json', '').padEnd(28)}${strengthWords(story, replayed)} | ${forecastWords(story, replayed)}`,
    );
  }
}

function strengthWords(story: Story, { readings }: Replayed): string {
  const pairs = story.samples.flatMap((sample) => {
    const said = readings.find(({ t, reading }) => t === sample.t && reading.pan === sample.pan)?.reading;
    return said === undefined || said.brix === null || sample.brix < 25 ? [] : [{ said, sample }];
  });
  const errors = pairs.map(({ said, sample }) => Math.abs(said.brix! - sample.brix)).toSorted((a, b) => a - b);
  const held = pairs.filter(
    ({ said, sample }) => said.brix_low! <= sample.brix && sample.brix <= said.brix_high!,
  ).length;
  const at = (share: number): string => (errors[Math.floor(errors.length * share)] ?? NaN).toFixed(1).padStart(5);
  return `${at(0.5)} ${at(0.9)} ${`${held}/${pairs.length}`.padStart(8)}`;
}

function forecastWords(story: Story, { readings }: Replayed): string {
  const finishes = story.truth.filter(({ what }) => what === 'reached-finish');
  return LEADS_MIN.map((minutes) => {
    const said = finishes.flatMap((finish) => {
      const t = Math.round(finish.t / 60_000 - minutes) * 60_000;
      const reading = readings.find((one) => one.t === t && one.reading.pan === finish.pan)?.reading;
      return reading === undefined || reading.finish_in_s === null ? [] : [{ reading, left: (finish.t - t) / 1000 }];
    });
    if (said.length === 0) return '   –    ';
    const error =
      said.reduce((sum, { reading, left }) => sum + (100 * (reading.finish_in_s! - left)) / left, 0) / said.length;
    const held = said.every(({ reading, left }) => reading.finish_low_s! <= left && left <= reading.finish_high_s!);
    return `${error.toFixed(0).padStart(4)} ${held ? '(y)' : '(n)'}`;
  }).join(' ');
}
