// What the form of a new boil begins with: the planned boil, and what somebody typed into the form before they looked away.
import type { PlanRequest } from '../../protocol/plan-schema.ts';
import { sessionSignal } from '../client/session-signal.ts';
import type { Settings, Setup } from '../client/types.ts';
import type { BoilDraft } from './boil-draft.ts';

/** The plan goes into the boil's header, so that what is left of it can be said while it runs. */
export type PlannedSetup = Setup & { plan: PlanRequest };
export const plannedSetup = sessionSignal<PlannedSetup>('planned-setup');

/** What was typed, and in which units, until the boil is started, the form is left by its own button, or another is planned. */
export const typedBoil = sessionSignal<{ draft: BoilDraft; units: Settings }>('boil');
