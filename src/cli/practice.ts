// `practice`: a boil of simulated pans, to learn on without hardware; kept in the notebook as a practice boil.
import { CommandProblem } from './failure.ts';
import { runLive } from './live.ts';
import type { LiveOptions } from './live.ts';

/** Plays a boil of its own, `speed` times as fast as real time; ends with it, or at Ctrl-C. */
export async function practice(options: LiveOptions & { speed: number }): Promise<void> {
  await runLive({ ...options, practice: true }, async ({ host, output, served, stop }) => {
    const answer = await host.command({ ref: 'practice', practice: { speed: options.speed } });
    if (!answer.ok) throw new CommandProblem(answer.why, 2);
    if (host.running !== null) output.watching(host.running.boil, host.running.entries);
    // A screen still shows the boil that is over; without one there is nothing left to do.
    if (served === null) host.subscribe((message) => message.kind === 'now' && message.ended && stop());
  });
}
