// Which calls are steps of one pan's way to its finish and over it, and which of them a worse one stands for.
import type { AlarmView } from '../client/types.ts';

/** In the order in which a pan goes through them. */
const FINISHES: readonly AlarmView['alarm'][] = ['near-finish', 'finish', 'past-finish'];

/** True for a call of a pan's way to its finish and over it: the heat goes off for all of them, so one press has seen them. */
export const isOnWay = ({ alarm, pan }: AlarmView): boolean =>
  pan !== null && (alarm === 'scorch-risk' || FINISHES.includes(alarm));

/**
 * Whether the one stands for the other: past its finish a pan was at it, and at its finish it is nearly syrup no more. About
 * to burn says nothing of that, for a pan may be too shallow: what calls beside it is told.
 */
function covers(worse: AlarmView, one: AlarmView): boolean {
  if (worse.pan === null || worse.pan !== one.pan || worse.condition !== 'active') return false;
  return FINISHES.indexOf(one.alarm) >= 0 && FINISHES.indexOf(one.alarm) < FINISHES.indexOf(worse.alarm);
}

/** The calls without those that a worse one of their pan stands for. */
export const uncovered = (alarms: readonly AlarmView[]): AlarmView[] =>
  alarms.filter((one) => !alarms.some((worse) => covers(worse, one)));

/** What is answered with this call: itself, and what it stands for and nobody has seen. */
export const withCovered = (alarm: AlarmView, alarms: readonly AlarmView[]): AlarmView[] => [
  alarm,
  ...alarms.filter((one) => !one.answered && covers(alarm, one)),
];
