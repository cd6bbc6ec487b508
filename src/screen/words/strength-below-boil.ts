// What a pan's strength rests on while no thermometer tells it: an instrument, or what was poured in.
import { counts, poursInto } from '../../protocol/mark-flow.ts';
import { say } from '../language/say.ts';
import type { MarkView, Now, Reading } from '../client/types.ts';

const isBelowBoil = ({ stage }: Reading): boolean => stage === 'warming' || stage === 'unknown';

/** In small print beside a strength below a boil; null where the rise tells it. */
export function strengthRestsOn(now: Pick<Now, 'marks'>, reading: Reading): string | null {
  if (!isBelowBoil(reading)) return null;
  const told = now.marks.filter(
    (each) =>
      counts(each) &&
      (poursInto(each.mark, reading.pan) || (each.mark.kind === 'density' && each.mark.pan === reading.pan)),
  );
  const last = told.reduce<MarkView | null>((late, each) => (late === null || each.at >= late.at ? each : late), null);
  return say(last?.mark.kind === 'density' ? 'pans.by_instrument' : 'pans.by_pour');
}
