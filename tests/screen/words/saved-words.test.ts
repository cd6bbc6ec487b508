// Whether other choices would have called a pot in time, told from when it burnt or nearly did.
import { expect, test } from 'vitest';
import type { Call, ReplayDifferences } from '../../../src/protocol/replay-messages.ts';
import { lossOf, savedWords } from '../../../src/screen/words/saved-words.ts';
import { moment } from '../moment.ts';

const MINUTE = 60_000;
const call = (alarm: Call['alarm'], minutes: number): Call =>
  ({ alarm, pan: 'p1', priority: 'high', raised: minutes * MINUTE }) as Call;
const strip = (high: (number | null)[]) => ({ pan: 'p1', low: high, high, brix: [], water: [], finish: [] });

function found(high: (number | null)[], was: Call[], would: Call[]): ReplayDifferences {
  const pans = [{ pan: 'p1', was: strip(high), would: strip(high) }];
  return { length: 1, readUntil: 1, columnMs: MINUTE, pans, calls: { was, would }, differences: [] };
}
const burnt = [...Array.from({ length: 40 }, () => 103), 150, 240];

test('a pot that burnt is told with how much sooner the first call would have come', () => {
  const was = [call('finish', 30), call('scorch-risk', 36)];
  const words = savedWords(found(burnt, was, [call('near-finish', 20), ...was]), 'p1', moment);
  expect(words).toMatch(
    /burnt at .*The first call came 10\u00a0min before.*would come 20\u00a0min before: 10\u00a0min more/u,
  );
  expect(savedWords(found(burnt, was, was), 'p1', moment)).toMatch(/came 10\u00a0min before, and .* just then/u);
  expect(savedWords(found(burnt, was, [call('scorch-risk', 36)]), 'p1', moment)).toContain('6\u00a0min less');
});

test('a call of long before was about something else; none at all is said', () => {
  const early = [call('low-level', -120)];
  expect(savedWords(found(burnt, early, early), 'p1', moment)).toContain('No call came before, and none would');
  expect(savedWords(found(burnt, early, [call('finish', 25)]), 'p1', moment)).toContain(
    'first would come 15\u00a0min before',
  );
  expect(savedWords(found(burnt, [call('finish', 25)], []), 'p1', moment)).toContain('none would come');
});

test('a pot that was only called about to burn was nearly lost; one that never was has nothing to tell', () => {
  const near = found([101, 103, 104], [call('scorch-risk', 2)], []);
  expect(lossOf(near, 'p1')).toEqual({ at: 2 * MINUTE, burnt: false });
  expect(savedWords(near, 'p1', moment)).toContain('was about to burn at');
  expect(savedWords(found([101], [call('finish', 0)], []), 'p1', moment)).toBeNull();
});
