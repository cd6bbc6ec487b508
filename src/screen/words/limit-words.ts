// What a finish and a least depth mean in a pan as it stands, and what speaks against the choice.
import { plannedStrength } from '../../protocol/planned-strength.ts';
import type { Now, Pan, Reading, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { degrees, depth, exactStrength, strength } from './amounts.ts';
import { timeOfDay } from './clock.ts';
import { finishBrixOf, waterPerSugar } from './lead-words.ts';
import { isTooLittle } from './planned-sap.ts';

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
    return [say('limit.rise_reached', { rise: degrees(rise, settings) })];
  }
  const { brix } = finish;
  const sense = [
    ...(brix < KEEPS_BRIX ? [say('limit.too_thin', { brix: KEEPS_BRIX })] : []),
    ...(brix > CRYSTALS_BRIX ? [say('limit.too_thick', { brix: CRYSTALS_BRIX })] : []),
  ];
  return [...standing(brix, reading, now, settings), ...sense];
}

function standing(brix: number, reading: Reading, now: Now, settings: Settings): string[] {
  if (reading.brix === null) {
    const planned = plannedStrength(now, reading);
    if (planned === null) return [say('limit.strength_unknown')];
    return [say('limit.strength_planned', { is: exactStrength(planned, settings) })];
  }
  if (reading.brix >= brix) {
    const is = strength(reading.brix, reading.brix - ABOUT_BRIX, reading.brix + ABOUT_BRIX, settings);
    return [say('limit.strength_reached', { is })];
  }
  const left = secondsTo(brix, reading, finishBrixOf(now.header, reading.pan));
  if (left === null) return [];
  const time = timeOfDay(now, now.t + left * 1000);
  return [say(isTooLittle(now, reading.pan) ? 'limit.at_todays_fire_little' : 'limit.at_todays_fire', { time })];
}

/** s until another strength, by the time to the finish that holds now: water per sugar falls in a straight line. */
function secondsTo(brix: number, reading: Reading, finishBrix: number | null): number | null {
  const { brix: is, finish_in_s: left } = reading;
  if (is === null || is <= 0 || left === null || left <= 0 || finishBrix === null || finishBrix <= is) return null;
  return (left * (waterPerSugar(is) - waterPerSugar(brix))) / (waterPerSugar(is) - waterPerSugar(finishBrix));
}

/** Of a least depth that a person may want of this pan. */
export function leastDepthSentences(mm: number, { depth_mm: is, stage }: Reading, settings: Settings): string[] {
  const sense = mm < SHALLOW_MM ? [say('limit.shallow')] : [];
  // Off the fire nothing calls for a depth, and an emptied pan has none.
  if (stage === 'off') return sense;
  if (is === null) return [say('limit.depth_unknown'), ...sense];
  const shown = depth(is, settings);
  return [is <= mm ? say('limit.depth_reached', { depth: shown }) : say('limit.depth_now', { depth: shown }), ...sense];
}
