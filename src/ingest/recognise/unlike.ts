// Leaves out numbers of which nothing tells what they are, where they are unlike the temperatures that stand beside them.
import { temperatureFromCelsius } from '../../core/quantities/units.ts';
import type { Candidate, CandidateChannel } from './candidate.ts';
import { middle } from './kind-of-number.ts';

/** A figure this small, in °C, that is also written otherwise than the temperatures beside it is a voltage or a current. */
const SMALL = 15;
/** No air around a sugar house is colder, K. */
const COLDEST = 223;

const isDegrees = ({ kind }: CandidateChannel): boolean => ['C', 'F', 'K'].includes(kind.unit);
/** A unit of its own, or a name that says so; not one that is told once for all numbers. */
const isTold = ({ series, kind }: CandidateChannel): boolean => kind.sure && series.isUnitShared !== true;
const hasOwnUnit = (one: CandidateChannel): boolean => isTold(one) && one.series.unit !== '';
const isWhole = (texts: readonly string[]): boolean =>
  texts.length > 0 && texts.every((text) => /^[-+]?\d+$/.test(text));
const isSigned = (texts: readonly string[]): boolean => texts.some((text) => text.startsWith('+'));
const decimalsOf = (texts: readonly string[]): number =>
  Math.max(0, ...texts.map((text) => text.split('.')[1]?.length ?? 0));

/**
 * The channels that stay; what is left out is added to `leftOut`. One unit is taken for all numbers that name none.
 * @param channels as their names, units and sizes told
 */
export function withoutUnlike(
  channels: readonly CandidateChannel[],
  leftOut: Candidate['leftOut'],
): CandidateChannel[] {
  const degrees = channels.filter(isDegrees);
  const bare = degrees.filter((one) => !isTold(one));
  const isKelvin = degrees.some(({ kind }) => kind.unit === 'K');
  const why = (one: CandidateChannel): string | null => {
    const isAnyExact = channels.some(({ series }) => series.texts.length > 0 && !isWhole(series.texts));
    if (isAnyExact && isWhole(one.series.texts)) return 'a whole number without a unit, beside numbers with decimals';
    const others = degrees.filter((other) => other !== one && !other.kind.coldJunction);
    if (others.length === 0) return null;
    const { texts, values } = one.series;
    if (one.series.unit === '' && others.every(hasOwnUnit))
      return 'no unit is named, beside temperatures that name theirs';
    if (isKelvin && one.kind.unit !== 'K' && middle(values) < COLDEST)
      return 'no unit is named, and in kelvin, like the numbers beside it, it is none that a probe can give';
    if (isSigned(texts) && !others.some(({ series }) => isSigned(series.texts)))
      return 'a number with a sign, beside temperatures without: a rate or a difference';
    const isOtherwise = others.every(({ series }) => decimalsOf(series.texts) !== decimalsOf(texts));
    if (isOtherwise && Math.abs(middle(values)) < SMALL && others.every(({ series }) => middle(series.values) > SMALL))
      return 'far smaller than the temperatures beside it, and written with other digits: another quantity';
    return null;
  };
  const stay = channels.filter((one) => {
    const reason = bare.includes(one) ? why(one) : null;
    if (reason !== null) leftOut.push({ what: one.channel, why: reason });
    return reason === null;
  });
  const unsaid = stay.filter((one) => bare.includes(one));
  return stay.map((one) => inOneUnit(one, unsaid));
}

/** `97.8` beside `186.1` and `202.8`: a board has one unit for all. */
function inOneUnit(one: CandidateChannel, bare: readonly CandidateChannel[]): CandidateChannel {
  const isFahrenheit = bare.some(({ kind, series }) => series.unit === '' && kind.unit === 'F');
  if (!bare.includes(one) || one.series.unit !== '' || one.kind.unit !== 'C' || !isFahrenheit) return one;
  // What would be colder than any shed stays as it was taken.
  if (middle(one.series.values) < temperatureFromCelsius(COLDEST - 273.15, 'F')) return one;
  const why = 'No unit is named; the numbers are taken as degrees Fahrenheit, like those beside them.';
  return { ...one, kind: { ...one.kind, unit: 'F', why } };
}
