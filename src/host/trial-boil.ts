// Which boil was only tried out: so short, and with nothing poured in, that nobody would begin another like it.
import type { BoilSummary, Notebook } from '../notebook/contract.ts';
import { parseEntry } from '../protocol/recording.ts';

/** Who boils sap boils for longer, s (judgement). */
const SHORTEST_BOIL_S = 600;

/** It is over, lasted under ten minutes, and no pour was noted that stands. */
export function isTrial(notebook: Pick<Notebook, 'entries'>, { boil, running, seconds }: BoilSummary): boolean {
  if (running || seconds >= SHORTEST_BOIL_S) return false;
  const pours = new Set<string | undefined>();
  for (const text of notebook.entries(boil)) {
    const parsed = parseEntry(text);
    if (!parsed.ok || !('mark' in parsed.entry)) continue;
    const { mark } = parsed.entry;
    if (mark.kind === 'top-up' || mark.kind === 'transfer') pours.add(mark.id);
    if (mark.kind === 'withdraw') pours.delete(mark.id);
  }
  return pours.size === 0;
}
