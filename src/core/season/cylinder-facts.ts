// What the weighings of the cylinders show to have been burned.
import type { KeptMark } from '../boil/state.ts';
import type { BoilFacts } from './boil-facts.ts';

/** Each pan's cylinder for itself; where the scale shows more than before, another cylinder was put there. */
export function cylinderFacts(marks: readonly KeptMark[]): BoilFacts['cylinder'] {
  const notes = marks
    .flatMap(({ mark, at, withdrawn }) =>
      mark.kind === 'fuel' && !withdrawn ? [{ pan: mark.pan, kg: mark.kg, at }] : [],
    )
    .sort((one, other) => one.at - other.at);
  const falls = [...Map.groupBy(notes, ({ pan }) => pan).values()].flatMap((ofOne) =>
    ofOne.slice(1).map(({ kg }, index) => Math.max(0, ofOne[index]!.kg - kg)),
  );
  return {
    burnedKg: falls.length === 0 ? null : falls.reduce((sum, kg) => sum + kg, 0),
    firstKg: notes[0]?.kg ?? null,
    lastKg: notes.at(-1)?.kg ?? null,
  };
}
