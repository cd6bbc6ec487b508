// Text in the letters that the standard fonts of a PDF have, with every other letter replaced where it can be seen.

/** Letters of Windows-1252 beyond Latin-1, which is what those fonts hold (PDF 32000-1, annex D.2, WinAnsiEncoding). */
const BEYOND_LATIN_1 = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';
/** Signs that mean the same as one the fonts have. */
const ALIKE: Readonly<Record<string, string>> = {
  '\u2212': '\u2013',
  '\u2011': '-',
  '\u2009': '\u00a0',
  '\u202f': '\u00a0',
  '≥': '>=',
  '≤': '<=',
  '→': '->',
};

/** Stands for a letter that cannot be printed. */
export const MISSING = '¤';

/** `isWhole` is false when a letter had to be replaced. Line ends become blanks. */
export function printable(text: string): { text: string; isWhole: boolean } {
  let isWhole = true;
  const letters = [...text.normalize('NFC')].map((letter) => {
    if (isThere(letter)) return letter;
    const alike = ALIKE[letter];
    if (alike !== undefined) return alike;
    if (/[\s\p{Cc}\p{Cf}]/u.test(letter)) return ' ';
    isWhole = false;
    const [base = ''] = letter.normalize('NFD');
    return base !== letter && isThere(base) ? base : MISSING;
  });
  return { text: letters.join(''), isWhole };
}

function isThere(letter: string): boolean {
  const code = letter.codePointAt(0) ?? 0;
  return (code >= 0x20 && code <= 0x7e) || (code >= 0xa0 && code <= 0xff) || BEYOND_LATIN_1.includes(letter);
}
