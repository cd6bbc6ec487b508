// The practice boil runs at its clock's pace, reacts to marks, and comes to its end.
import { expect, test } from 'vitest';
import type { Entry } from '../../src/core/boil/entries.ts';
import { practiceSource } from '../../src/ingest/practice-source.ts';
import { readLine } from '../../src/ingest/read-line.ts';
import { handTimekeeper, listen, type HandTimekeeper } from './heard.ts';

const minute = 60_000;

function practice(seed = 1): {
  heard: ReturnType<typeof listen>;
  source: ReturnType<typeof practiceSource>;
  clock: HandTimekeeper;
} {
  const clock = handTimekeeper();
  const heard = listen();
  const source = practiceSource({ seed, timekeeper: { now: () => clock.now() * 60, after: clock.after } });
  source.start(heard);
  return { heard, source, clock };
}

const lastCelsius = (entries: Entry[], channel: string): number | null | undefined =>
  entries
    .flatMap((entry) => ('line' in entry ? readLine(entry.line).readings : []))
    .filter((reading) => reading.channel === channel)
    .at(-1)?.value;

test('two hours of practice at 60 times the speed end by themselves, in order of t', async () => {
  const { heard, clock } = practice();
  await clock.pass((121 * minute) / 60);
  const times = heard.entries().map(({ t }) => t);
  expect(times).toEqual([...times].sort((a, b) => a - b));
  expect(heard.entries()[0]).toMatchObject({ t: 0, state: 'open' });
  expect(heard.entries().at(-1)).toEqual({ t: 120 * minute, run: 'ended' });
  expect(heard.items.at(-1)).toEqual({ kind: 'end', t: 120 * minute });
});

test('the same seed is the same boil, another seed another', async () => {
  const lines = async (seed: number): Promise<string[]> => {
    const { heard, clock } = practice(seed);
    await clock.pass((5 * minute) / 60);
    return heard.lines();
  };
  expect(await lines(1)).toEqual(await lines(1));
  expect(await lines(1)).not.toEqual(await lines(2));
});

test('cold sap that the person pours in cools the pan, and what was due before comes before', async () => {
  const { heard, source, clock } = practice();
  await clock.pass((20 * minute) / 60);
  const before = heard.entries().length;
  const mark: Entry = {
    t: clock.now() * 60 + 1500,
    mark: { kind: 'top-up', pan: 'front', litres: 6, brix: 2, celsius: 4 },
  };
  source.hear(mark);
  expect(heard.entries().length).toBeGreaterThan(before);
  const warm = lastCelsius(heard.entries(), 'T1');
  await clock.pass((2 * minute) / 60);
  expect(
    heard
      .entries()
      .slice(before)
      .every(({ t }, index, all) => index === 0 || t >= all[index - 1]!.t),
  ).toBe(true);
  expect(lastCelsius(heard.entries(), 'T1')).toBeLessThan(warm! - 5);
});
