// A list that shows its first entries and folds the rest away, but not on paper.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';

interface FirstFewProps<T> {
  /** Latest first. */
  items: readonly T[];
  shown: number;
  /** What those are that are folded away. */
  rest?: (count: number) => string;
  row: (item: T, place: number) => JSX.Element;
}

const olderWords = (count: number): string => say('shell.older', { count });

export function FirstFew<T>({ items, shown, rest = olderWords, row }: FirstFewProps<T>): JSX.Element {
  const older = items.slice(shown);
  return (
    <>
      <ol>{items.slice(0, shown).map(row)}</ol>
      {older.length > 0 && (
        <details class="folded">
          <summary>{rest(older.length)}</summary>
          <ol>{older.map(row)}</ol>
        </details>
      )}
    </>
  );
}
