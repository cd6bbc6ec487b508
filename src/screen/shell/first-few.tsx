// A list that shows its first entries and folds the older ones away.
import type { JSX } from 'preact';

interface FirstFewProps<T> {
  /** Latest first. */
  items: readonly T[];
  shown: number;
  row: (item: T, place: number) => JSX.Element;
}

export function FirstFew<T>({ items, shown, row }: FirstFewProps<T>): JSX.Element {
  const older = items.slice(shown);
  return (
    <>
      <ol>{items.slice(0, shown).map(row)}</ol>
      {older.length > 0 && (
        <details>
          <summary>{older.length} older</summary>
          <ol>{older.map(row)}</ol>
        </details>
      )}
    </>
  );
}
