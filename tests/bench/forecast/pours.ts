// Counts the pours that nobody marked: found, missed, invented, or told of although a mark stands for them.
import type { TruthMoment } from '../../../src/core/simulation/truth.ts';
import type { SeenPour } from './play.ts';
import { SAMPLE_MS, type Witnessed } from './witness.ts';

export interface PourCount {
  /** The program says of unmarked pours at all. */
  told: boolean;
  /** Unmarked pours into a boiling pan that cooled it by 1 °C at least. */
  unmarked: number;
  found: number;
  /** Share by which its litres were off, of the found ones. */
  litresOff: number[];
  invented: number;
  /** A mark stands for it, and it was said all the same. */
  twice: number;
}

const NEAR_MS = 5 * 60_000;
const FELT_C = 1;

interface TruePour {
  t: number;
  pan: string;
  litres: number;
  marked: boolean;
  felt: boolean;
}

export function judgePours(true_: Witnessed, seen: readonly SeenPour[] | null): PourCount {
  const pours = truePours(true_);
  const left = [...(seen ?? [])];
  const take = (pour: TruePour): SeenPour | undefined => {
    const index = left.findIndex(({ pan, at }) => pan === pour.pan && Math.abs(at - pour.t) <= NEAR_MS);
    return index < 0 ? undefined : left.splice(index, 1)[0];
  };
  const unmarked = pours.filter(({ marked, felt }) => !marked && felt);
  const found = unmarked.flatMap((pour) => {
    const one = take(pour);
    return one === undefined ? [] : [{ pour, one }];
  });
  pours.filter(({ marked, felt }) => !marked && !felt).forEach(take);
  const beforeTwice = left.length;
  pours.filter(({ marked }) => marked).forEach(take);
  return {
    told: seen !== null,
    unmarked: unmarked.length,
    found: found.length,
    litresOff: found.flatMap(({ pour, one }) => (one.litres === null ? [] : [one.litres / pour.litres - 1])),
    invented: left.length,
    twice: beforeTwice - left.length,
  };
}

function truePours({ moments, marks, samples }: Witnessed): TruePour[] {
  return moments.flatMap((moment: TruthMoment) => {
    const { t, what, pan } = moment;
    if (what !== 'poured' || pan === undefined) return [];
    const before = samples[pan]?.[Math.floor((t - 1) / SAMPLE_MS)];
    const after = samples[pan]?.[Math.ceil((t + 1000) / SAMPLE_MS)];
    if (before === undefined || after === undefined) return [];
    const marked = marks.some(
      (one) =>
        ((one.mark.kind === 'top-up' && one.mark.pan === pan) ||
          (one.mark.kind === 'transfer' && one.mark.to === pan)) &&
        (one.mark.happened ?? one.t) === t,
    );
    const felt = before.boiling && before.celsius - after.celsius >= FELT_C;
    return [{ t, pan, litres: after.litres - before.litres, marked, felt }];
  });
}
