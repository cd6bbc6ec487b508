// Settings files that are named with --with: each one a JSON merge patch over a recording's header.
import type { Header } from '../core/boil/entries.ts';
import { MERGED_DEEP, mergePatch } from '../core/boil/merge-patch.ts';
import { checkHeader } from '../protocol/header-schema.ts';
import { CommandProblem, textOf } from './failure.ts';

export interface Patch {
  file: string;
  patch: object;
}

/** Throws CommandProblem (2) where the file cannot be read, holds no JSON object, or one that is nested too deeply. */
export async function readPatch(file: string): Promise<Patch> {
  const patch = parsed(await textOf(file));
  if (typeof patch !== 'object' || patch === null || Array.isArray(patch))
    throw new CommandProblem(`${file}: it must hold one JSON object, a merge patch over the header.`, 2);
  const deep = deepestField(patch);
  if (deep === null) return { file, patch };
  throw new CommandProblem(`${file}: ${deep} is nested more than ${MERGED_DEEP} deep; no setting is.`, 2);
}

/** The outermost field that goes down too far, or null. Without recursion, for it may go down further than the stack. */
function deepestField(patch: object): string | null {
  for (const [name, value] of Object.entries(patch)) {
    let level: unknown[] = [value];
    for (let depth = 0; level.length > 0; depth += 1) {
      if (depth > MERGED_DEEP) return name;
      level = level.flatMap((one) => (typeof one === 'object' && one !== null ? Object.values(one) : []));
    }
  }
  return null;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The header with all patches over it, in their order. Throws CommandProblem (2) where it does not hold together then. */
export function patchedHeader(header: Header, patches: readonly Patch[]): Header {
  if (patches.length === 0) return header;
  const checked = checkHeader(patches.reduce<unknown>((before, { patch }) => mergePatch(before, patch), header));
  if (checked.ok) return checked.header;
  const files = patches.map(({ file }) => file).join(' and ');
  throw new CommandProblem(
    `${files}: with ${patches.length === 1 ? 'it' : 'them'} the header does not hold together: ${checked.why}.`,
    2,
  );
}
