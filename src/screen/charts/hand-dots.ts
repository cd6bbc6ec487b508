// Where the readings by hand of a pan stand in its chart: at what the program took them for, as its curve does.
import type { Now } from '../client/types.ts';

/** In ms of boil time and °C, of those that are not taken back; one that is asked about is shown by the curve, too. */
export const handDots = ({ marks }: Pick<Now, 'marks'>, pan: string): { x: number; y: number }[] =>
  marks.flatMap(({ mark, at, withdrawn, takenC }) =>
    mark.kind === 'reading' && mark.pan === pan && !withdrawn ? [{ x: at, y: takenC ?? mark.celsius }] : [],
  );
