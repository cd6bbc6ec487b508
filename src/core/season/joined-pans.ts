// Which pans of a boil liquid was poured between: what went into one of them may have become the syrup of another.
import type { PanSetup } from '../boil/entries.ts';
import { sapKey } from '../boil/sap-key.ts';
import type { KeptMark } from '../boil/state.ts';

/** Pans that share what was poured into them, by id, and the kinds of sap that they boil, by key. */
export interface JoinedPans {
  pans: string[];
  saps: string[];
}

/** Every pan stands in one of them, alone where nothing was poured from it or into it. `marks` are those that stand. */
export function joinedPans(pans: readonly PanSetup[], marks: readonly KeptMark[]): JoinedPans[] {
  let groups = pans.map(({ id }) => [id]);
  for (const { mark } of marks) {
    if (mark.kind !== 'transfer') continue;
    const touched = groups.filter((group) => group.includes(mark.from) || group.includes(mark.to));
    if (touched.length > 1) groups = [...groups.filter((group) => !touched.includes(group)), touched.flat()];
  }
  return groups.map((group) => ({
    pans: group,
    saps: [...new Set(pans.filter(({ id }) => group.includes(id)).map(({ sap }) => sapKey(sap)))],
  }));
}
