// Folds entries that a test made up, and gives the facts of the boil.
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import { startBoil } from '../../../src/core/boil/fold.ts';
import type { BoilFacts } from '../../../src/core/season/boil-facts.ts';
import { factsAtEnd, gather, gatherCall, LOOK_MS, startGathering } from '../../../src/core/season/gather-facts.ts';
import { foldTools } from '../../../src/host/fold-tools.ts';
import { Folding } from '../../../src/host/folding.ts';

export function factsOfEntries(header: Header, entries: readonly Entry[]): BoilFacts {
  const gathered = startGathering();
  const folding: Folding = new Folding(
    startBoil(header),
    foldTools,
    {
      alarm: (transition) => gatherCall(gathered, transition),
      readings: (t, readings) => gather(gathered, folding.state, t, readings),
    },
    LOOK_MS,
  );
  for (const entry of entries) folding.take(entry, '');
  return factsAtEnd(gathered, folding.state, entries.at(-1)?.t ?? 0);
}
