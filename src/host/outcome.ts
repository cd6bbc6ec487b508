// What became of something that was asked of the host.
export type Outcome = { ok: true; data?: unknown } | { ok: false; why: string };

export const done: Outcome = { ok: true };

/** What was asked is not done, and why, in one sentence. */
export function refused(why: string): Outcome {
  return { ok: false, why };
}
