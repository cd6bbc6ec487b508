// JSON Merge Patch (RFC 7396), as `set` entries and `--with` files use it.

/**
 * The target with the patch applied: null takes a member away, objects are merged, anything else
 * (lists too) replaces what was there. Neither argument is changed. Source: RFC 7396 section 2.
 * What lies deeper than MERGED_DEEP is replaced whole, so that no patch is deeper than the stack.
 */
export function mergePatch(target: unknown, patch: unknown, deep = 0): unknown {
  if (!isPlainObject(patch) || deep > MERGED_DEEP) return patch;
  const result: Record<string, unknown> = isPlainObject(target) ? { ...target } : {};
  for (const [name, value] of Object.entries(patch)) {
    if (name === '__proto__') continue;
    if (value === null) delete result[name];
    else result[name] = mergePatch(result[name], value, deep + 1);
  }
  return result;
}

/** A header is five deep. */
export const MERGED_DEEP = 100;

function isPlainObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
