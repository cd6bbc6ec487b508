// The numbers behind an alarm, as the host wrote them down, in the units that the person chose.
import { amountsInUnits } from '../../core/quantities/written-amounts.ts';
import type { Settings } from '../client/types.ts';
import { localAmount } from '../language/numbers.ts';

/** "about 9 min (7–12) to 66.9 °Bx", of a boil's own "about 9 min to 66.9 °Bx (7–12)". */
export const whyWords = (why: string, settings: Settings): string => amountsInUnits(why, settings, localAmount);
