// What every fixture asks of one person stays within what one person can do: no chatter, no flood, few alarms an hour.
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { lookBack } from '../../src/core/boil/look-back.ts';
import { replayFixture } from './replay-fixture.ts';

const recordings = new URL('../../fixtures/recordings/', import.meta.url);

/** Goals of the project; summaries of the standard have one alarm in 10 minutes as the target and two as the most. */
const MOST_IN_AN_HOUR = 12;
const MOST_AN_HOUR_IN_THE_MEAN = 3;

test.each(readdirSync(recordings))('%s', async (name) => {
  const { calls, readings } = await replayFixture(new URL(name, recordings), 600_000);
  const raised = calls
    .filter(({ event }) => event === 'raised')
    .map(({ alarm, pan, port, t }) => ({
      ...{ alarm, pan, port: port ?? null, raisedAt: t, answeredAt: null, noUse: false },
    }));
  const look = lookBack(raised);
  expect(look.raised).toBeGreaterThan(0);
  expect(look).toMatchObject({ chatter: 0, floods: 0 });
  expect(look.worstHour).toBeLessThanOrEqual(MOST_IN_AN_HOUR);
  const hours = readings.at(-1)!.t / 3_600_000;
  expect(look.raised / hours).toBeLessThanOrEqual(MOST_AN_HOUR_IN_THE_MEAN);
});
