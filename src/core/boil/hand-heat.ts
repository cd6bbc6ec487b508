// A temperature by hand that no burner can have brought its pan to since it was last read or filled cold: mostly the neighbour's pot was read.
import { BOIL_MARGIN_C } from '../pan/phase.ts';
import { beliefOf, debtFor, fullKgPerS } from '../pan/course-time.ts';
import { isOff } from '../pan/course.ts';
import { litresOf } from '../pan/filter/liquid.ts';
import { SUGAR, waterOf } from '../pan/filter/belief.ts';
import { massShareOf } from '../pan/filter/mix.ts';
import { latentHeatKjPerKg } from '../physics/heat.ts';
import { formatTyped } from '../quantities/format.ts';
import { lengthOfTime } from '../quantities/time.ts';
import type { Mark } from './entries.ts';
import { counts, empties, poursInto } from './mark-flow.ts';
import { settingOf } from './settings.ts';
import type { BoilState, KeptMark } from './state.ts';

/**
 * Heat that goes into one pan at the most where nobody said its burner's power, W: a jet burner of 60 kW, of which half
 * goes past the pan, or a broad pan on a wood fire (common practice). Of a power that was said all may go in.
 */
const MOST_WATTS = 30_000;
/** Both clocks are looked at before or after the thermometer, s (practice). */
const LOOKED_S = 10;
/** As far as the contents may be off, standard deviations. */
const FAR_SIGMAS = 2;

/** A temperature that was noted of a pan, °C, and when, ms. */
interface Known {
  at: number;
  celsius: number;
}

/**
 * What is asked about a temperature by hand that takes more heat than the pan can have had since it was last read, or
 * since it was filled with sap of a warmth that somebody noted; null where it does not, or where nobody knows how much is
 * in it. `riseC` is over boiling water, °C.
 */
export function tooFast(
  state: BoilState,
  kept: KeptMark,
  { pan: id, celsius }: Mark & { kind: 'reading' },
  riseC: number,
): string | null {
  const setting = settingOf(state, id);
  const { course } = state.pans[id]!;
  const { debtKg } = course;
  if (!course.told || isOff(course) || debtKg === null || state.panProbes[id]!.length > 0) return null;
  const from = lastKnown(state, kept, id);
  if (from === null || from.at > kept.at) return null;
  const belief = beliefOf(course, setting);
  const under = debtFor(belief, setting.around, riseC < -BOIL_MARGIN_C ? -riseC : 0);
  const fullPerS = fullKgPerS(belief) * course.flame;
  // What is owed now is less by what the fire is thought to have paid since.
  const took = debtKg - under + (fullPerS * (state.now - from.at)) / 1000;
  const mostPerS = Math.max(fullPerS, wattsOf(state, id) / 1000 / (latentHeatKjPerKg(100) ?? 2257));
  const seconds = (kept.at - from.at) / 1000;
  if (debtKg <= under || took * (1 - FAR_SIGMAS * massShareOf(belief)) <= mostPerS * (seconds + LOOKED_S)) return null;
  const litres = litresOf(Math.exp(belief.x[SUGAR]!), waterOf(belief));
  return `${setting.design.name}: ${formatTyped(celsius, 1)} °C was read, ${lengthOfTime(seconds).replaceAll('\u00a0', ' ')} after ${formatTyped(from.celsius, 1)} °C: no burner heats ${litres.toFixed(1)} L so fast.`;
}

/** The burner's power as it was said, W, else the most that goes into a pan. */
const wattsOf = ({ header }: BoilState, id: string): number =>
  header.pans?.find((pan) => pan.id === id)?.heat?.power_w ?? MOST_WATTS;

/**
 * What the pan was last read at by hand, else what it was first filled with; null where nobody noted how warm that, or
 * what was poured in since, was: it may have been boiled before.
 */
function lastKnown(state: BoilState, kept: KeptMark, id: string): Known | null {
  const { handAt } = state.pans[id]!.course;
  const marks = state.marks.filter((one) => one !== kept && counts(one));
  const emptied = Math.max(-1, ...marks.filter(({ mark }) => empties(mark, id)).map(({ at }) => at));
  const since = Math.max(handAt, emptied);
  const poured = marks.filter(({ at, mark }) => at >= since && poursInto(mark, id)).toSorted((a, b) => a.at - b.at);
  if (poured.some(({ mark }) => celsiusOf(mark) === null)) return null;
  const read = marks.findLast(({ at, mark }) => at === handAt && mark.kind === 'reading' && mark.pan === id);
  const first = handAt >= emptied ? (read ?? poured[0]) : poured[0];
  return first === undefined ? null : { at: first.at, celsius: celsiusOf(first.mark)! };
}

const celsiusOf = (mark: Mark): number | null =>
  mark.kind === 'top-up' || mark.kind === 'reading' ? (mark.celsius ?? null) : null;
