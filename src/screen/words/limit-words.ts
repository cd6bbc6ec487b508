// What a finish and a least depth mean in a pan as it stands, and what speaks against the choice.
import type { Now, Pan, Reading, Settings } from '../client/types.ts';
import { degrees, depth, strength } from './amounts.ts';
import { timeOfDay } from './clock.ts';
import { finishBrixOf, waterPerSugar } from './lead-words.ts';

/** Syrup thinner than this spoils, thicker sets crystals, °Bx; common practice. */
const KEEPS_BRIX = 65;
const CRYSTALS_BRIX = 70;
/** Depths at which a flame dries out spots of the bottom, mm; common practice. */
const SHALLOW_MM = 10;
/** Half of the range within which "about" is meant, °Bx. */
const ABOUT_BRIX = 2;

type Finish = NonNullable<Pan['finish']>;

/** Of a finish that a person may want of this pan. */
export function finishSentences(finish: Finish, reading: Reading, now: Now, settings: Settings): string[] {
  if ('rise_c' in finish) {
    const { rise_c: rise } = reading;
    if (rise === null || rise < finish.rise_c) return [];
    return [`It boils ${degrees(rise, settings)} over water now: it would be called done at once.`];
  }
  const { brix } = finish;
  const sense = [
    ...(brix < KEEPS_BRIX ? [`Thinner than ${KEEPS_BRIX} °Bx may spoil in the jar.`] : []),
    ...(brix > CRYSTALS_BRIX ? [`Thicker than ${CRYSTALS_BRIX} °Bx sets crystals, and is near to burning.`] : []),
  ];
  return [...standing(brix, reading, now, settings), ...sense];
}

function standing(brix: number, reading: Reading, now: Now, settings: Settings): string[] {
  if (reading.brix === null) return ['How strong it is now is not known yet.'];
  if (reading.brix >= brix) {
    const is = strength(reading.brix, reading.brix - ABOUT_BRIX, reading.brix + ABOUT_BRIX, settings);
    return [`It stands at about ${is} now: it would be called done at once.`];
  }
  const left = secondsTo(brix, reading, finishBrixOf(now.header, reading.pan));
  return left === null ? [] : [`At today’s fire that is about ${timeOfDay(now, now.t + left * 1000)}.`];
}

/** s until another strength, by the time to the finish that holds now: water per sugar falls in a straight line. */
function secondsTo(brix: number, reading: Reading, finishBrix: number | null): number | null {
  const { brix: is, finish_in_s: left } = reading;
  if (is === null || is <= 0 || left === null || left <= 0 || finishBrix === null || finishBrix <= is) return null;
  return (left * (waterPerSugar(is) - waterPerSugar(brix))) / (waterPerSugar(is) - waterPerSugar(finishBrix));
}

/** Of a least depth that a person may want of this pan. */
export function leastDepthSentences(mm: number, { depth_mm: is }: Reading, settings: Settings): string[] {
  const sense = mm < SHALLOW_MM ? ['That is shallow: a flame dries out spots before you are called.'] : [];
  if (is === null) return ['How deep it stands is not known: without a depth or litres nobody is called.', ...sense];
  const shown = depth(is, settings);
  return [is <= mm ? `It stands ${shown} deep: it would call at once.` : `It stands ${shown} deep now.`, ...sense];
}
