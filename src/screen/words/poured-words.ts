// A pour that nobody noted, as the screen asks about it, and the marks that answer.
import { say } from '../language/say.ts';
import type { Mark, Now, Pour, Settings } from '../client/types.ts';
import { litresOf, litresShown, volume } from './amounts.ts';
import { timeOfDay } from './clock.ts';

/** So long somebody still remembers what was poured, ms. */
const REMEMBERED_MS = 60 * 60_000;

/** The newest pour into a pan that nobody noted and that somebody may still remember. */
export function freshPour(now: Now, pan: string): Pour | null {
  return now.pours.findLast((pour) => pour.pan === pan && now.t - pour.at <= REMEMBERED_MS) ?? null;
}

/** A dip tells an amount to a quarter or so: no more digits than that. */
const digitsOf = (shown: number): number => (shown >= 2 ? 0 : 1);

function pouredVolume({ litres }: Pour, settings: Settings): string {
  return volume(litres, settings, digitsOf(litresShown(litres, settings)));
}

/** "About 4 L poured at 13:05" */
export function pouredWords(now: Now, pour: Pour, settings: Settings): string {
  return say('poured.seen', { amount: pouredVolume(pour, settings), time: timeOfDay(now, pour.at) });
}

/** The amount as it was asked about, in the unit shown. */
export function pouredShown({ litres }: Pour, settings: Settings): string {
  const shown = litresShown(litres, settings);
  return shown.toFixed(digitsOf(shown));
}

/** Whoever says yes says yes to the amount that was shown. */
export function yesMark(pour: Pour, settings: Settings): Mark {
  const litres = litresOf(Number(pouredShown(pour, settings)), settings);
  return { kind: 'top-up', pan: pour.pan, litres, happened: pour.at };
}

/** The mark that says that a pour which was seen was none. */
export const noMark = (pour: Pour): Mark => ({ kind: 'no-top-up', pan: pour.pan, happened: pour.at });
