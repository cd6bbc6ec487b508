// Makes the name that a boil goes by in commands and lists.
import type { Header } from '../core/boil/entries.ts';

const LONGEST_SLUG = 60;

/**
 * The date of `started` as it stood on the clock there, and the name in lower case:
 * `2027-04-18-sundays-run`. When that is taken, `-2`, `-3` and so on is added.
 */
export function freeBoilId(header: Header, isTaken: (id: string) => boolean): string {
  const id = `${header.started.slice(0, 10)}-${slug(header.name ?? '') || 'boil'}`;
  if (!isTaken(id)) return id;
  let count = 2;
  while (isTaken(`${id}-${count}`)) count += 1;
  return `${id}-${count}`;
}

/** Letters and digits of any script stay, so that a name from anywhere is still one; all else parts words. */
function slug(name: string): string {
  const words = name
    .normalize('NFKD')
    .replaceAll(/[\p{M}'’]/gu, '')
    .normalize('NFC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-');
  // By code points: half a surrogate pair would not be found again.
  return [...words]
    .slice(0, LONGEST_SLUG)
    .join('')
    .replaceAll(/^-+|-+$/gu, '');
}
