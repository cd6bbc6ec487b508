// Finds what a board's own legend says of its names, as in `tk=temperature in kelvin vs=volts`.
import { unitOfWords } from './kind-of-number.ts';
import { quoted } from './quoted.ts';

/** The words that a legend gives for a name, and the unit among them; both '' where it says nothing. */
export interface Said {
  words: string;
  unit: string;
}

const PER_TIME = /\b(?:per|a|\/) ?(?:min(?:ute)?|h(?:our)?|s(?:ec(?:ond)?)?)\b/i;

/**
 * What a legend among `lines` says of the name of a number.
 * @param lines those that hold no readings: words from a start, comments
 */
export function legendOf(name: string, lines: readonly string[]): Said {
  const behind = new RegExp(
    `(?<![\\w.])${quoted(name)} ?(?:=|: |is ) ?([A-Za-z][A-Za-z ,/()\\[\\]\\x80-\\xff.-]*?)(?= +\\w+ ?(?:=|: )|[;,|]|$)`,
    'i',
  );
  for (const line of lines) {
    const words = behind.exec(line)?.[1]?.trim();
    if (words === undefined || words.length > LONGEST) continue;
    if (PER_TIME.test(words)) return { words: 'rate', unit: '' };
    const parts = words.split(/[ ()[\],/]+/).filter((part) => part !== '');
    const unit = parts.findLast((part) => unitOfWords(part) !== null) ?? '';
    return { words: parts.filter((part) => part !== unit && part.length > 1).join(' '), unit };
  }
  return { words: '', unit: '' };
}
const LONGEST = 60;
