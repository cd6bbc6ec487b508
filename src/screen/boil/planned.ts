// The planned boil that the form of a new boil begins with, until it is started or another is planned.
import type { PlanRequest } from '../../protocol/plan-schema.ts';
import { sessionSignal } from '../client/session-signal.ts';
import type { Setup } from '../client/types.ts';

/** The plan goes into the boil's header, so that what is left of it can be said while it runs. */
export type PlannedSetup = Setup & { plan: PlanRequest };
export const plannedSetup = sessionSignal<PlannedSetup>('planned-setup');

/** Pots that stand empty when the boil begins, for the others are only poured into them at the end. */
export const emptyPots = ({ pans }: PlanRequest): PlanRequest['pans'] =>
  pans.some(({ for_end: forEnd }) => forEnd !== true) ? pans.filter(({ for_end: forEnd }) => forEnd === true) : [];
