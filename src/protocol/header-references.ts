// Refuses a header whose parts name each other wrongly: two of one name, or a name that nothing has.
import type { z } from 'zod';

interface Named {
  id: string;
}

interface HeaderParts {
  ports?: Named[] | undefined;
  probes?: (Named & { port: string })[] | undefined;
  pans?: (Named & { probe?: string | string[] | undefined })[] | undefined;
}

/** For `superRefine`: adds one issue for every name that is given twice or that is not there. */
export function refuseBrokenReferences(header: HeaderParts, context: z.core.$RefinementCtx): void {
  const refuse = (path: PropertyKey[], message: string) => context.addIssue({ code: 'custom', path, message });
  const ports = uniqueIds('ports', header.ports ?? [], refuse);
  const probes = uniqueIds('probes', header.probes ?? [], refuse);
  uniqueIds('pans', header.pans ?? [], refuse);
  for (const [index, probe] of (header.probes ?? []).entries()) {
    if (!ports.has(probe.port)) refuse(['probes', index, 'port'], missing(probe.port, 'ports'));
  }
  for (const [index, pan] of (header.pans ?? []).entries()) {
    for (const probe of pan.probe === undefined ? [] : [pan.probe].flat()) {
      if (!probes.has(probe)) refuse(['pans', index, 'probe'], missing(probe, 'probes'));
    }
  }
}

function uniqueIds(
  list: string,
  items: readonly Named[],
  refuse: (path: PropertyKey[], message: string) => void,
): Set<string> {
  const ids = new Set<string>();
  for (const [index, { id }] of items.entries()) {
    if (ids.has(id)) refuse([list, index, 'id'], `is ${JSON.stringify(id)}, which another of the ${list} has already`);
    ids.add(id);
  }
  return ids;
}

function missing(id: string, list: string): string {
  return `names ${JSON.stringify(id)}, which is not among the ${list}`;
}
