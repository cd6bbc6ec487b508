// What would help a pan, in one line: a smaller pot, and how much may be poured in at once.
import { formatVolume } from '../../core/quantities/format.ts';
import type { Advice, Now, Settings, SmallestBatch } from '../client/types.ts';
import { depth, litresShown, strength, volume } from './amounts.ts';
import { timeOfDay } from './clock.ts';

/** Half of the range within which "about" is meant, °Bx. */
const ABOUT_BRIX = 4;

/** "Too little for this pot: it ends 9 mm deep. Pour it into a smaller pot at about 45 °Bx, around 14:20." */
export function shallowWords(now: Now, shallow: NonNullable<Advice['shallow']>, settings: Settings): string {
  const { depthMm, pourBrix, pourInS } = shallow;
  const ends = `Too little for this pot: it ends ${depth(depthMm, settings)} deep.`;
  if (pourInS !== null && pourInS <= 0) return `${ends} Pour it into a smaller pot.`;
  const at = strength(pourBrix, pourBrix - ABOUT_BRIX, pourBrix + ABOUT_BRIX, settings);
  const by = pourInS === null ? '' : `, around ${timeOfDay(now, now.t + pourInS * 1000)}`;
  return `${ends} Pour it into a smaller pot at about ${at}${by}.`;
}

/** "up to 1.2 L at once"; null where that is not known. */
export function roomWords({ roomLitres }: Advice, settings: Settings): string | null {
  if (roomLitres === null || litresShown(roomLitres, settings) < 0.1) return null;
  return `up to ${formatVolume(roomLitres, settings.volume, 1)} at once`;
}

/** "The least this pan can finish: 1.8 L of syrup, from about 70 L of sap." */
export function smallestWords({ syrupLitres, sapLitres }: SmallestBatch, settings: Settings): string {
  const sap = formatVolume(sapLitres, settings.volume, litresShown(sapLitres, settings) < 10 ? 1 : 0);
  return `The least that this pan can finish: ${volume(syrupLitres, settings)} of syrup, from about ${sap} of sap.`;
}
