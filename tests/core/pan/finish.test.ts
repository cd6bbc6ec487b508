// What somebody measured at the finish stands for ten minutes against a count that lies lower; a count alone does not.
import { expect, test } from 'vitest';
import { startCourse } from '../../../src/core/pan/course.ts';
import { finishIsOver, finishSeen, judgeCount } from '../../../src/core/pan/finish.ts';
import { type Belief, SIZE, WATER } from '../../../src/core/pan/filter/belief.ts';
import { waterPerSugar } from '../../../src/core/pan/filter/liquid.ts';

const asked = { brix: 67, sigmas: 0 };

/** A belief that is sure of a strength, °Bx. */
function sureOf(brix: number): Belief {
  const belief = { x: new Array<number>(SIZE).fill(0), p: new Array<number>(SIZE * SIZE).fill(0) };
  belief.x[WATER] = Math.log(waterPerSugar(brix));
  return belief;
}

/** Whether it still counts as reached when a count of 62 °Bx was judged so many times at a minute. */
function isReachedAt(minutes: number, begin: (latches: ReturnType<typeof startCourse>) => void): boolean {
  const latches = startCourse(0);
  begin(latches);
  latches.t = minutes * 60_000;
  for (let i = 0; i < 5; i++) judgeCount(latches, sureOf(62), asked);
  return latches.reachedFinish;
}

test('a count that lies lower takes back what was counted, not what was measured in the last ten minutes', () => {
  expect(isReachedAt(5, (latches) => judgeCount(latches, sureOf(68), asked))).toBe(false);
  expect(isReachedAt(5, finishSeen)).toBe(true);
  expect(isReachedAt(10, finishSeen)).toBe(true);
  expect(isReachedAt(11, finishSeen)).toBe(false);
});

test('whoever pours in, or takes it off, begins anew', () => {
  expect(
    isReachedAt(5, (latches) => {
      finishSeen(latches);
      finishIsOver(latches);
      judgeCount(latches, sureOf(68), asked);
    }),
  ).toBe(false);
});
