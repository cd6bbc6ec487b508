// Numbers and amounts as the language of the screen writes them: 66.9 in English, 66,9 in French.
import { spoken } from './language.ts';

/** "66,9 °Bx" of "66.9 °Bx" where the language writes its decimals so; a clock's 16:40 and an address stay. */
export const localDigits = (text: string): string => spoken().digits(text);

/** A number as it stands in a field, with no more than so many decimals and none that are nought. */
export const inField = (value: number, digits: number): string => localDigits(String(Number(value.toFixed(digits))));

/** A number with its unit, as core writes it, in the language of the screen. */
export const localAmount = (text: string): string => spoken().amount(text);
