// What a number rests on, in words: each kind of origin with its age, and what of it is not sure.
import type { From, Header, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { height } from './amounts.ts';
import { ago } from './clock.ts';
import { panNamed, probeName } from './pan-words.ts';

type Kind = From['kind'];

/** "the boiling check 40 min ago"; `t` is the moment that it is said of, ms. */
export function originWords({ kind, at }: From, header: Header | null, settings: Settings, t: number): string {
  const altitude = header?.site?.altitude_m;
  if (kind === 'altitude' && altitude !== undefined)
    return say('origin.altitude_of', { height: height(altitude, settings) });
  const what = say(ORIGIN_WORDS[kind]);
  return kind === 'altitude' || at === null ? what : say('origin.aged', { what, age: ago((t - at) / 1000) });
}

/** As originWords, for the altitude that stands beside a better origin. */
export function altitudeBeside(header: Header | null, settings: Settings): string {
  const altitude = header?.site?.altitude_m;
  return altitude === undefined
    ? say('origin.altitude_too')
    : say('origin.altitude_too_of', { height: height(altitude, settings) });
}

const ORIGIN_WORDS: Record<Kind, MessageKey> = {
  probe: 'origin.probe',
  'hand-reading': 'origin.hand_reading',
  'boiling-check': 'origin.boiling_check',
  pressure: 'origin.pressure',
  'reference-pot': 'origin.reference_pot',
  altitude: 'origin.altitude',
  weather: 'origin.weather',
  'density-reading': 'origin.density_reading',
  'earlier-boil': 'origin.earlier_boil',
  volume: 'origin.volume',
  depth: 'origin.depth',
  'nominal-power': 'origin.nominal_power',
  evaporation: 'origin.evaporation',
  'sugar-model': 'origin.sugar_model',
  'sap-strength': 'origin.sap_strength',
  head: 'origin.head',
  assumed: 'origin.assumed',
};

/** What is least sure of each kind of origin. */
const DOUBT_WORDS: Record<Kind, MessageKey> = {
  probe: 'doubt.probe',
  'hand-reading': 'doubt.hand_reading',
  'boiling-check': 'doubt.boiling_check',
  pressure: 'doubt.pressure',
  'reference-pot': 'doubt.reference_pot',
  altitude: 'doubt.altitude',
  weather: 'doubt.weather',
  'density-reading': 'doubt.density_reading',
  'earlier-boil': 'doubt.earlier_boil',
  volume: 'doubt.volume',
  depth: 'doubt.depth',
  'nominal-power': 'doubt.nominal_power',
  evaporation: 'doubt.evaporation',
  'sugar-model': 'doubt.sugar_model',
  'sap-strength': 'doubt.sap_strength',
  head: 'doubt.head',
  assumed: 'doubt.assumed',
};

/** Whether somebody typed what this pan's burner gives: else what is usual stands for it. */
export const isPowerTold = (header: Header | null, pan: string | null): boolean =>
  panNamed(header, pan)?.heat?.power_w !== undefined;

/** What is least sure, so that "Least sure: …" can stand before it. */
export function doubtWords(kind: Kind, probe: string | null, header: Header | null, pan: string | null): string {
  if (kind === 'nominal-power' && !isPowerTold(header, pan)) return say('doubt.usual_power');
  if (probe === null && kind === 'probe') return say('doubt.thermometer');
  if (probe === null && kind === 'assumed') return say('doubt.assumed_thermometer');
  return say(DOUBT_WORDS[kind], { probe: probe === null ? '' : probeName(header, probe) });
}
