// `watch`: watches the pans of a setup and keeps the boil in the notebook.
import { checkSetup } from '../protocol/header-schema.ts';
import type { Setup } from '../protocol/header-schema.ts';
import { CommandProblem, textOf } from './failure.ts';
import { runLive } from './live.ts';
import type { LiveOptions } from './live.ts';

/** Watches the boil of a setup, or goes on with the one that runs, until it is stopped; throws a CommandProblem where there is no setup. */
export async function watch(options: LiveOptions & { setup?: string }): Promise<void> {
  const { setup: file, ...rest } = options;
  const setup = file === undefined ? undefined : await readSetup(file);
  await runLive({ ...rest, setup }, async ({ host, output }) => {
    if (host.running === null) {
      const chosen = setup ?? host.lastSetup();
      if (chosen === null)
        throw new CommandProblem('There is no setup in this folder yet: give one with --setup FILE.', 2);
      const answer = await host.command({ ref: 'watch', start: chosen });
      if (!answer.ok) throw new CommandProblem(answer.why, 2);
    }
    if (host.running !== null) output.watching(host.running.boil, host.running.entries);
  });
}

async function readSetup(file: string): Promise<Setup> {
  const text = await textOf(file);
  const checked = checkSetup(parsed(file, text));
  if (checked.ok) return checked.setup;
  throw new CommandProblem(`${file}: ${checked.why}.`, 2);
}

function parsed(file: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new CommandProblem(`${file}: it is no JSON; a setup is a recording's header without "started".`, 2);
  }
}
