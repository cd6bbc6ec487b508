// What steers the replay that is open: every press of its buttons and keys goes through here, and to nothing that is live.
import { closeReplay, tell } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { goTo } from '../shell/routes.ts';

/** Where a step goes to. */
export type StepTo = 'mark' | 'alarm' | 'either';

/** Lets the replay go on, or stands it still. */
export const play = (playing: boolean): void => void tell({ replay_control: { playing } });
/** Boil time over real time, 1 to 600. */
export const setSpeed = (speed: number): void => void tell({ replay_control: { speed } });
/** Goes to the next or the one before of what was noted or called. */
export const step = (way: 'next' | 'previous', to: StepTo): void => void tell({ replay_control: { step: way, to } });

/** Boil time t, ms, held within the boil. */
export function seek(now: Now, t: number): void {
  const length = now.replay?.length ?? now.t;
  void tell({ replay_control: { seek: Math.round(Math.min(length, Math.max(0, t))) } });
}

/** Boil time so many ms on, or back, from the moment that was asked for last: each of quick presses counts. */
export const seekBy = (ms: number): void => void tell({ replay_control: { by: ms } });

/** Closes the replay and goes back to the boils. */
export async function leave(): Promise<void> {
  await closeReplay();
  goTo('notebook');
}

/** Opens a kept boil, at a moment (ms of boil time) where one is given, and goes there. */
export async function openReplay(boil: string, at?: number): Promise<void> {
  const moment = at === undefined ? {} : { at: Math.max(0, Math.round(at)) };
  if (await tell({ replay: { boil, ...moment } })) goTo('replay');
}
