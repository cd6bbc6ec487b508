// Numbers as the language of the screen writes them: 66.9 in English, 66,9 in French.
import { language } from './language.ts';

const separators = new Map<string, string>();

function decimalSeparator(tag: string): string {
  let separator = separators.get(tag);
  if (separator === undefined) {
    const parts = new Intl.NumberFormat(tag).formatToParts(1.5);
    separator = parts.find(({ type }) => type === 'decimal')?.value ?? '.';
    separators.set(tag, separator);
  }
  return separator;
}

/** "66,9 °Bx" of "66.9 °Bx" where the language writes its decimals so; a clock's 16:40 and an address stay. */
export function localDigits(text: string): string {
  const separator = decimalSeparator(language.value);
  return separator === '.' ? text : text.replaceAll(/(?<![\d.])(\d+)\.(\d+)(?![\d.])/gu, `$1${separator}$2`);
}
