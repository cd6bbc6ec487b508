// What is known of each probe before the next boil: as that would begin with it, so that no two numbers of one probe differ.
import type { Learnt } from '../../core/boil/entries.ts';
import { probeName } from '../../core/pan/baseline.ts';
import type { Setup } from '../../protocol/header-schema.ts';
import { isOnPort, type KeptProbe, type KnownProbe } from '../../protocol/probe-setup-messages.ts';

/** The probes of the next boil's setup, null for none, and behind them those that were only set up. */
export function knownProbes(
  next: { setup: Setup; learnt: Learnt | undefined } | null,
  kept: readonly KeptProbe[],
): KnownProbe[] {
  const ofBoil = (next?.setup.probes ?? []).map(({ id, port, channel, offset_c: offsetC }): KnownProbe => {
    const board = next?.setup.ports?.find((one) => one.id === port);
    const place = next?.learnt?.names.indexOf(probeName(id)) ?? -1;
    const told = offsetC === undefined ? null : -offsetC;
    const tooHighC = place < 0 ? told : (next?.learnt?.mean[place] ?? null);
    return { id, path: board?.path ?? port, device: board?.device ?? null, channel, tooHighC };
  });
  const onlyKept = kept.filter(
    (one) =>
      !ofBoil.some(
        ({ channel, path, device }) => channel === one.channel && isOnPort(one, { path, device: device ?? undefined }),
      ),
  );
  return [
    ...ofBoil,
    ...onlyKept.map(({ path, device, channel, error }) => ({
      ...{ id: null, path, device, channel },
      tooHighC: error?.tooHighC ?? null,
    })),
  ];
}
