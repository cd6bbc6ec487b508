// Checks when lines that come are said to hold no readings: never for ohms and millivolts, but for degrees that cannot be.
import { expect, test } from 'vitest';
import { type Illegible, LegibilityWatch } from '../../src/ingest/legibility-watch.ts';

/** What is said of a line that comes once a second for ten seconds. */
function saidOf(line: string): Illegible[] {
  const watch = new LegibilityWatch(undefined);
  const bytes = new TextEncoder().encode(`${line}\n`);
  return Array.from({ length: 10 }, (_, second) => watch.take(bytes, [line], second * 1000)).filter(
    (one) => one !== null,
  );
}

test.each(['T1=98.25C T2=97.1', 'T1=fault', 'R1=32650.9 V1=4.096', 'R1=0', 'T1=850C T2=98C'])(
  '%s is legible',
  (line) => {
    expect(saidOf(line)).toEqual([]);
  },
);

test.each([
  ['T1=850C T2=-127C', 'out of range'],
  ['T1=1e5 T2=0x1F', 'not a number: T1=1e5'],
])('%s holds no reading: %s', (line, reason) => {
  expect(saidOf(line)).toEqual([{ kind: 'no-readings', reason }]);
});
