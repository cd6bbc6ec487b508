// What would help a pan, in one line: a smaller pot, and how much may be poured in at once.
import { say } from '../language/say.ts';
import type { Advice, Now, Settings, SmallestBatch } from '../client/types.ts';
import { depth, exactStrength, litresShown, number, strength, volume } from './amounts.ts';
import { timeOfDay } from './clock.ts';

/** Half of the range within which "about" is meant, °Bx. */
const ABOUT_BRIX = 4;

/** "Too little for this pot: without more sap it ends 9 mm deep. Top it up, or pour it into a smaller pot at about 45 °Bx, around 14:20." */
export function shallowWords(now: Now, shallow: NonNullable<Advice['shallow']>, settings: Settings): string {
  const { depthMm, pourBrix, pourInS } = shallow;
  const ends = depth(depthMm, settings);
  if (pourInS !== null && pourInS <= 0) return say('advice.shallow_now', { depth: ends });
  const at = strength(pourBrix, pourBrix - ABOUT_BRIX, pourBrix + ABOUT_BRIX, settings);
  if (pourInS === null) return say('advice.shallow', { depth: ends, at });
  return say('advice.shallow_around', { depth: ends, at, time: timeOfDay(now, now.t + pourInS * 1000) });
}

/** "up to 1.2 L at once, about every 6 min"; null where that is not known. So often it boils away: what is to go in is many times as much. */
export function roomWords(
  { roomLitres, roomEveryS }: Pick<Advice, 'roomLitres' | 'roomEveryS'>,
  settings: Settings,
): string | null {
  if (roomLitres === null || roomEveryS === undefined) return null;
  if (litresShown(roomLitres, settings) < 0.1) return null;
  const minutes = number(Math.max(1, roomEveryS / 60), 0);
  return say('advice.room', { amount: volume(roomLitres, settings, 1), minutes });
}

/** "The least this pan can finish: 1.8 L of syrup, from about 70 L of sap at 2.0 °Bx, as planned." */
export function smallestWords({ syrupLitres, sapLitres, sapBrix, sapFrom }: SmallestBatch, settings: Settings): string {
  const sap = volume(sapLitres, settings, litresShown(sapLitres, settings) < 10 ? 1 : 0);
  return say('advice.smallest', {
    syrup: volume(syrupLitres, settings),
    sap,
    strength: exactStrength(sapBrix, settings),
    from: sapFrom,
  });
}
