// What the host and the fold write in English is known to the catalogue by its form, so that no new sentence stays English unnoticed.
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ALARM_WORDS, alarmWords } from '../../../src/core/alarms/words.ts';
import { brokenWords } from '../../../src/core/boil/broken-probe.ts';
import { checkDoubt } from '../../../src/core/boil/readings-noted.ts';
import { NEEDS_ALTITUDE } from '../../../src/core/boil/water.ts';
import { pressureDoubt } from '../../../src/core/physics/pressure-doubt.ts';
import { Hearing } from '../../../src/host/hearing.ts';
import { PowerWatch } from '../../../src/host/power-watch.ts';
import { sleepWords } from '../../../src/host/sleep-watch.ts';
import { lostTrouble, movedSentence, openingTrouble, perhapsSentence } from '../../../src/ingest/port-trouble.ts';
import { formOf, hostWords } from '../../../src/screen/language/host-words.ts';
import { language } from '../../../src/screen/language/language.ts';
import { whyWords } from '../../../src/screen/words/why-words.ts';
import { foldAll, readingAt, tarnHollow } from '../../core/boil/tarn-hollow.ts';
import { replayFixture } from '../../stories/replay-fixture.ts';
import { american, metric } from '../moment.ts';

const RECORDINGS = new URL('../../../fixtures/recordings/', import.meta.url);
/** Seconds between two looks at a replayed boil: alarms stand longer than this. */
const LOOK_MS = 30_000;

const unknown = (sentences: readonly string[]): string[] =>
  [...new Set(sentences)].filter((sentence) => sentence !== '' && formOf(sentence) === null);

test('what an alarm is called, means and asks', () => {
  const reading = readingAt(foldAll(tarnHollow(), [], 0).state, 'p1', 0);
  const burning = [107, 204].map((celsius) =>
    alarmWords('scorch-risk', { ...reading, temperature_c: celsius, scorch_in_s: 0 }),
  );
  const all = [...Object.values(ALARM_WORDS), ...burning];
  expect(unknown(all.flatMap(({ title, means, todo }) => [title, means, todo]))).toEqual([]);
});

const recordings = readdirSync(RECORDINGS).filter((name) => name.endsWith('.boil.jsonl'));

test.each(recordings)('the numbers behind every call of %s, in both systems of units', async (name) => {
  const { calls } = await replayFixture(new URL(name, RECORDINGS), LOOK_MS);
  // A reminder is told in the words that a person gave it.
  const whys = calls.filter(({ alarm }) => alarm !== 'reminder').map(({ why }) => why);
  expect(unknown(whys.flatMap((why) => [whyWords(why, metric), whyWords(why, american)]))).toEqual([]);
});
