// Killed while it starts, calls, moves its write-ahead file, brings a notebook forward, or ends and copies: nothing acknowledged is lost.
import { afterAll, expect, test } from 'vitest';
import { killRound, MOMENTS, tidyUp } from './kill-rounds.ts';
import { ownFolder } from './program.ts';

const own = ownFolder();
afterAll(() => {
  own.remove();
  tidyUp();
});

let seed = 18;
const random = () => (seed = (seed * 48_271) % 2_147_483_647) / 2_147_483_647;

test.each(MOMENTS)('%s', { timeout: 60_000 }, async (moment) => {
  const { faults } = await killRound(moment, own.folder, random);
  expect(faults).toEqual([]);
});
