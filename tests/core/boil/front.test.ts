// Checks that a pressure that falls by 15 hPa in six hours never takes the truth out of the range, however little is told of it.
import { expect, test } from 'vitest';
import { underTheFront, WAYS_TO_TELL, type WayToTell } from './front-boil.ts';

const boils = new Map(WAYS_TO_TELL.map((way) => [way, underTheFront(way)]));

test.each(WAYS_TO_TELL)('under a front, with %s, the range holds the true strength', (way) => {
  for (const { hours, low, high, truth } of boils.get(way)!) {
    expect(low, `after ${hours} h`).toBeLessThan(truth);
    expect(high, `after ${hours} h`).toBeGreaterThan(truth);
  }
});

test('what is told of the pressure makes the strength right and its range narrow', () => {
  const last = (way: WayToTell) => boils.get(way)!.at(-1)!;
  const width = (way: WayToTell): number => last(way).high - last(way).low;
  for (const way of ['pressure marks', 'a reference pot'] as const) {
    expect(Math.abs(last(way).brix - last(way).truth), way).toBeLessThan(0.6);
    expect(width(way), way).toBeLessThan(width('neither') / 1.5);
  }
});
