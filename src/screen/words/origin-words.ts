// What a number rests on, in words: each kind of origin with its age, and what of it is not sure.
import type { From, Header, Settings } from '../client/types.ts';
import { height } from './amounts.ts';
import { ago } from './clock.ts';
import { probeName } from './pan-words.ts';

type Kind = From['kind'];

/** "the boiling check 40 min ago"; `t` is the moment that it is said of, ms. */
export function originWords({ kind, at }: From, header: Header | null, settings: Settings, t: number): string {
  const altitude = header?.site?.altitude_m;
  if (kind === 'altitude')
    return altitude === undefined ? 'the altitude alone' : `the altitude alone, ${height(altitude, settings)}`;
  const when = at === null ? '' : ` ${ago((t - at) / 1000)}`;
  return `${ORIGIN_WORDS[kind]}${when}`;
}

const ORIGIN_WORDS: Record<Kind, string> = {
  probe: 'the probe',
  'hand-reading': 'a thermometer read by hand',
  'boiling-check': 'the boiling check',
  pressure: 'the pressure you typed',
  'reference-pot': 'the pot of plain water',
  altitude: 'the altitude alone',
  weather: 'the weather',
  'density-reading': 'the density reading',
  'earlier-boil': 'an earlier boil',
  volume: 'what was noted',
  depth: 'the depth',
  'nominal-power': "the burner's nominal power",
  evaporation: 'how fast it boils away',
  'sugar-model': 'the usual sugars',
  'sap-strength': "the sap's usual strength",
  head: 'the depth of the probe',
  assumed: 'what is usual',
};

/** What is least sure, so that "Least sure: …" can stand before it. */
export function doubtWords(kind: Kind, probe: string | null, header: Header | null): string {
  const who = probe === null ? 'the thermometer in your hand' : `the probe ${probeName(header, probe)}`;
  const words: Record<Kind, string> = {
    probe: `how steady ${who} is`,
    'hand-reading': 'how closely the thermometer can be read',
    'boiling-check': 'how exactly a boiling check can be read',
    pressure: 'how exact the pressure is',
    'reference-pot': 'the pot of plain water',
    altitude: 'the weather, which nobody has told it',
    weather: 'what the weather has done since',
    'density-reading': 'how exactly the density was read',
    'earlier-boil': 'whether things are still as in an earlier boil',
    volume: 'how exactly the volumes were noted',
    depth: 'how exactly the depth was noted',
    'nominal-power': "how much of the burner's nominal power becomes steam",
    evaporation: 'how evenly the fire burns',
    'sugar-model': 'how far this very sap rises with its sugars',
    'sap-strength': 'how strong the sap was',
    head: 'how deep in the liquid it boils',
    assumed: probe === null ? `${who}, which nobody can check here` : `${who}, which nobody has checked`,
  };
  return words[kind];
}
