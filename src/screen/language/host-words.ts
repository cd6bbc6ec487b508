// Sentences that the host writes down in English and in SI, told in the language and the units of the screen.
import { timesInWords } from '../../core/quantities/time.ts';
import { amountInUnits, chosenOfBoth } from '../../core/quantities/written-amounts.ts';
import { hostWords as toldIn } from '../../language/host-words.ts';
import { settings } from '../client/store.ts';
import { spoken } from './language.ts';
import { localAmount } from './numbers.ts';

const amount = (written: string): string => amountInUnits(written, settings.value, localAmount);

/** The host's sentence, its times on one line; one that the catalogue does not know stays as it was written. */
export const hostWords = (sentence: string): string =>
  timesInWords(chosenOfBoth(toldIn(sentence, spoken(), amount), settings.value));
