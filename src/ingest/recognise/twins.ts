// Leaves out what only seems to be a probe beside others: the same quantity told twice, and whole numbers where the point is lost.
import { temperatureFromCelsius } from '../../core/quantities/units.ts';
import type { Candidate, CandidateChannel } from './candidate.ts';
import { POINTLESS } from './kind-of-number.ts';

/** A display rounds each of the two by itself, °F. */
const ROUNDED_F = 0.6;

/** Whether `other` are the numbers of `one` in degrees Fahrenheit, line by line. */
export const isSameInFahrenheit = (one: readonly number[], other: readonly number[]): boolean =>
  one.length > 0 &&
  one.length === other.length &&
  one.every((celsius, at) => Math.abs(temperatureFromCelsius(celsius, 'F') - other[at]!) <= ROUNDED_F);

type Left = Candidate['leftOut'][number];

/** The channels that stay, and those that only tell the same again. */
export function withoutTwins(channels: readonly CandidateChannel[]): { stay: CandidateChannel[]; leftOut: Left[] } {
  const celsius = channels.filter(({ kind }) => kind.unit === 'C' && !kind.coldJunction);
  const degrees = channels.filter(({ kind }) => ['C', 'F', 'K'].includes(kind.unit) && !kind.coldJunction);
  const ohms = channels.filter(({ kind }) => kind.unit === 'ohm');
  const leftOut: Left[] = [];
  const stay = channels.filter((one) => {
    const what = one.channel;
    const twin = celsius.find((other) => other !== one && isSameInFahrenheit(other.series.values, one.series.values));
    if (twin !== undefined)
      leftOut.push({ what, why: `the same temperature as ${twin.channel}, in degrees Fahrenheit` });
    else if (ohms.includes(one) && degrees.length > 0 && degrees.length >= ohms.length)
      leftOut.push({ what, why: 'the ohms from which the board works out a temperature that stands beside them' });
    else return true;
    return false;
  });
  return { stay, leftOut };
}

/**
 * Where the board writes degrees without their point, what is left of its whole numbers is something else, or the same
 * of another size. What is left out is added to `leftOut`.
 */
export function withoutWholeNumbers(channels: readonly CandidateChannel[], leftOut: Left[]): CandidateChannel[] {
  if (!leftOut.some(({ why }) => why === POINTLESS)) return [...channels];
  const isBare = ({ series, kind }: CandidateChannel): boolean =>
    !kind.sure && series.unit === '' && series.texts.every((text) => /^[-+]?\d+$/.test(text));
  const bare = channels.filter(isBare);
  leftOut.push(
    ...bare.map(({ channel }) => ({
      what: channel,
      why: 'a whole number without a unit, beside degrees without their point',
    })),
  );
  return channels.filter((one) => !bare.includes(one));
}
