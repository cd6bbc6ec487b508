// JSON Merge Patch (RFC 7396), as `set` entries and `--with` files use it.

/**
 * The target with the patch applied: null takes a member away, objects are merged, anything else
 * (lists too) replaces what was there. Neither argument is changed. Source: RFC 7396 section 2.
 */
export function mergePatch(target: unknown, patch: unknown): unknown {
  if (!isPlainObject(patch)) return patch;
  const result: Record<string, unknown> = isPlainObject(target) ? { ...target } : {};
  for (const [name, value] of Object.entries(patch)) {
    if (name === '__proto__') continue;
    if (value === null) delete result[name];
    else result[name] = mergePatch(result[name], value);
  }
  return result;
}

function isPlainObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
