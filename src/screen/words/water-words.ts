// Today's water point in one line: how hot plain water boils here, how sure that is, and from what.
import type { Now, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { degrees, temperature } from './amounts.ts';
import { originWords } from './origin-words.ts';

/** What would be printed as ±0.0. */
const LEAST_SPREAD_C = 0.05;

/** "98.7 °C here, ±0.1 °C, from the boiling check 40 min ago"; null while it is not known. */
export function waterWords({ water, header, t }: Now, settings: Settings): string | null {
  const { celsius, plusMinus, from } = water;
  if (celsius === null) return null;
  const here = temperature(celsius, settings);
  const is =
    plusMinus === null || plusMinus < LEAST_SPREAD_C
      ? say('water.here', { here })
      : say('water.here_within', { here, spread: degrees(plusMinus, settings) });
  return from === null ? is : say('water.from', { is, origin: originWords(from, header, settings, t) });
}

/** Said where it is not known: what would tell it, with the probes that there are. */
export const noWater = ({ header }: Pick<Now, 'header'>): string =>
  say((header?.probes ?? []).length === 0 ? 'water.unknown_by_hand' : 'water.unknown');
