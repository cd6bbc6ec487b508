// How long a pan took from one strength to the next, what left it meanwhile, and in words how two pans differ in that.
import { waterPerSugar } from '../pan/filter/liquid.ts';
import { COURSE_EVERY_MS, lastComeThrough, type PanCourse } from './course.ts';
import { HOUR_MS } from '../quantities/time.ts';

/** From one strength to the next, as the pan last went through them. */
export interface Stretch {
  fromBrix: number;
  toBrix: number;
  minutes: number;
  /** Water that left on the way, and how fast; null is not known. */
  kg: number | null;
  kgPerHour: number | null;
}

export interface StretchDifference {
  fromBrix: number;
  toBrix: number;
  minutes: number;
  minutesFirst: number;
  kg: number | null;
  kgFirst: number | null;
  kgPerHour: number | null;
  kgPerHourFirst: number | null;
  /** "18 min slower from 30 to 60 °Bx: 1.1 kg/h less water off." */
  sentence: string;
}

/** Thin, thick, and the end (judgement: the temperature tells from about 30 °Bx on, and heat is turned down past 60). */
const STRETCHES: readonly [from: number, to: number][] = [
  [10, 30],
  [30, 60],
  [60, 66],
];

/** null where the pan did not go through it, or nothing is known of it. */
export function stretchOf(pan: PanCourse, fromBrix: number, toBrix: number): Stretch | null {
  const minutes = lastComeThrough(pan);
  const from = timeOf(pan, minutes, fromBrix);
  const to = timeOf(pan, minutes, toBrix);
  if (from === null || to === null || to <= from) return null;
  const kg = waterGone(pan, from, to);
  return { fromBrix, toBrix, minutes: to - from, kg, kgPerHour: kg === null ? null : (60 * kg) / (to - from) };
}

/** When the pan last came through a strength (°Bx), in minutes; null where it did not. */
export const timeAtBrix = (pan: PanCourse, brix: number): number | null => timeOf(pan, lastComeThrough(pan), brix);

/** Water per sugar falls in a straight line between two of them. */
function timeOf({ brix }: PanCourse, minutes: readonly number[], wanted: number): number | null {
  const after = minutes.findIndex((minute) => brix[minute]! >= wanted);
  if (after <= 0) return null;
  const [left, right] = [minutes[after - 1]!, minutes[after]!];
  const [u, uLeft, uRight] = [wanted, brix[left]!, brix[right]!].map(waterPerSugar) as [number, number, number];
  return left + ((uLeft - u) / (uLeft - uRight)) * (right - left);
}

/** kg from one minute to another: a litre of water that leaves is a kilogram to 0.2 %. null where a fifth of it is not known. */
function waterGone({ evaporation }: PanCourse, from: number, to: number): number | null {
  let litres = 0;
  let unknown = 0;
  for (let minute = Math.floor(from); minute < to; minute += 1) {
    const share = Math.min(to, minute + 1) - Math.max(from, minute);
    const perHour = evaporation[minute] ?? null;
    if (perHour === null) unknown += share;
    else litres += (share * perHour * COURSE_EVERY_MS) / HOUR_MS;
  }
  return unknown > (to - from) / 5 ? null : (litres * (to - from)) / (to - from - unknown);
}

/** Less than this is no difference, min and share (judgement). */
const TELLING_MINUTES = 2;
const TELLING_SHARE = 0.05;

/** Whether there is a stretch that both are known to have gone through. */
export const haveStretch = (first: PanCourse, other: PanCourse): boolean =>
  STRETCHES.some(([from, to]) => stretchOf(first, from, to) !== null && stretchOf(other, from, to) !== null);

/** Every stretch that took one of them longer than the other, the greatest difference first. */
export function stretchDifferences(first: PanCourse, other: PanCourse): StretchDifference[] {
  return STRETCHES.flatMap(([from, to]): StretchDifference[] => {
    const [one, two] = [stretchOf(first, from, to), stretchOf(other, from, to)];
    if (one === null || two === null) return [];
    const apart = Math.abs(two.minutes - one.minutes);
    if (apart < Math.max(TELLING_MINUTES, TELLING_SHARE * one.minutes)) return [];
    return [
      {
        ...two,
        minutesFirst: one.minutes,
        kgFirst: one.kg,
        kgPerHourFirst: one.kgPerHour,
        sentence: sentenceOf(one, two),
      },
    ];
  }).sort((a, b) => Math.abs(b.minutes - b.minutesFirst) - Math.abs(a.minutes - a.minutesFirst));
}

function sentenceOf(first: Stretch, other: Stretch): string {
  const minutes = other.minutes - first.minutes;
  const what = `${Math.round(Math.abs(minutes))} min ${minutes > 0 ? 'slower' : 'faster'}`;
  return `${what} from ${other.fromBrix} to ${other.toBrix} °Bx${causeOf(first, other)}.`;
}

/** Time is water over how fast it leaves: whichever of the two differs more, and in that direction, is the cause. */
function causeOf(first: Stretch, other: Stretch): string {
  if (first.kg === null || other.kg === null || first.kgPerHour === null || other.kgPerHour === null) return '';
  const byWater = Math.log(other.kg / first.kg);
  const byPace = -Math.log(other.kgPerHour / first.kgPerHour);
  if (byPace * Math.sign(byWater + byPace) >= byWater * Math.sign(byWater + byPace)) {
    const less = first.kgPerHour - other.kgPerHour;
    return `: ${Math.abs(less).toFixed(1)} kg/h ${less > 0 ? 'less' : 'more'} water off`;
  }
  const more = other.kg - first.kg;
  return `: ${Math.abs(more).toFixed(1)} kg ${more > 0 ? 'more' : 'less'} water to take off`;
}
