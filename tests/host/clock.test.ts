// Boil time never steps back, counts sleep, and does not care what the clock on the wall does.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BoilClock, resumedT, sleepCountingClock } from '../../src/host/clock.ts';
import { HandClock } from './hand-clock.ts';

test('a stepped wall clock changes nothing while the program runs', () => {
  const machine = new HandClock();
  const clock = new BoilClock(machine, 5000);
  machine.run(1000);
  machine.wall += 3_600_000;
  expect(clock.now()).toBe(6000);
  machine.wall -= 7_200_000;
  machine.run(1);
  expect(clock.now()).toBe(6001);
});

test('a change of speed does not step boil time', () => {
  const machine = new HandClock();
  const clock = new BoilClock(machine, 0, 60);
  machine.run(1000);
  clock.setSpeed(1);
  expect(clock.now()).toBe(60_000);
  machine.run(1000);
  expect(clock.now()).toBe(61_000);
});

test('after a restart boil time is the greater of what was kept and the distance of the wall clock', () => {
  const started = '2027-04-18T07:30:00-07:00';
  expect(resumedT(1000, started, Date.parse(started) + 60_000)).toBe(60_000);
  expect(resumedT(90_000, started, Date.parse(started) + 60_000)).toBe(90_000);
});

test('time that the machine slept through is counted, what the uptime rounds is not', () => {
  let steadyMs = 100;
  let uptimeMs = 50_000;
  const now = sleepCountingClock(
    () => steadyMs,
    () => uptimeMs,
  );
  steadyMs += 1000;
  uptimeMs += 1990;
  expect(now()).toBe(1100);
  steadyMs += 1000;
  uptimeMs += 1_801_000;
  expect(now()).toBeCloseTo(2100 + 1_800_990, 0);
});

test('whatever the wall clock does, boil time is the same: 10,000 random runs', () => {
  const moves = fc.array(fc.record({ run: fc.nat(60_000), step: fc.integer({ min: -7_200_000, max: 7_200_000 }) }));
  fc.assert(
    fc.property(moves, (all) => {
      const [stepped, steady] = [new HandClock(), new HandClock()];
      const [one, other] = [new BoilClock(stepped, 5000), new BoilClock(steady, 5000)];
      for (const { run, step } of all) {
        stepped.wall += step;
        stepped.run(run);
        steady.run(run);
        expect(one.now()).toBe(other.now());
      }
    }),
    { numRuns: 10_000 },
  );
});
