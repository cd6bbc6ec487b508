// A name of its own for the next boil: that of the last one, with the next number.

/** "Backyard 2" of "Backyard" where that is taken, and so on; a name that no boil has, and no name, stay. */
export function freeName(name: string, taken: readonly string[]): string {
  const used = new Set(taken.map((each) => each.trim()));
  if (name.trim() === '' || !used.has(name.trim())) return name;
  const [, stem = name.trim()] = /^(.*\S)\s+\d{1,2}$/u.exec(name.trim()) ?? [];
  let number = 2;
  while (used.has(`${stem} ${number}`)) number += 1;
  return `${stem} ${number}`;
}
