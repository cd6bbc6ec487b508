// Tables by a name that a person or a file chose: "constructor" is a name like any other, so they have no prototype.

/** A table of these pairs in which only they are found. structuredClone gives it the usual prototype back. */
export function byName<T>(pairs: Iterable<readonly [string, T]> = []): Record<string, T> {
  const table = Object.create(null) as Record<string, T>;
  for (const [name, value] of pairs) table[name] = value;
  return table;
}
