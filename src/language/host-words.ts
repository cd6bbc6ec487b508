// Sentences that the host writes down in English, told in another language: known by their English form in the catalogue.
import { isArgumentElement, isLiteralElement, parse } from '@formatjs/icu-messageformat-parser';
import english from './en.json' with { type: 'json' };
import type { MessageKey, Tongue } from './tongue.ts';

interface Form {
  key: MessageKey;
  names: string[];
  whole: RegExp;
  /** No word of its own, as "{channel}: {why}": any sentence with a colon would be one. */
  isBare: boolean;
}

const HOST = 'host.';
/** An apostrophe is straight in what the host writes down, and curly in the catalogue. */
const escaped = (text: string): string =>
  text.replaceAll(/[.*+?^${}()|[\]\\]/gu, String.raw`\$&`).replaceAll('’', `['’]`);

/** What stands first in a message that says more behind another whole sentence of the host. */
const WHOLE_SENTENCE = 'doubt';
/** What a field must be, as `problem-sentence.ts` puts it. */
const DEMAND = 'demand';

/** What the host may say, as patterns; a message around another comes first, then one with more fixed words before one with fewer. */
function readForms(): Form[] {
  const forms = Object.entries(english)
    .filter(([key]) => key.startsWith(HOST))
    .map(([key, message]) => {
      const names: string[] = [];
      let fixed = '';
      const source = parse(message).map((part) => {
        if (isLiteralElement(part)) {
          fixed += part.value;
          return escaped(part.value);
        }
        if (!isArgumentElement(part)) throw new Error(`${key}: a sentence of the host holds plain values only`);
        names.push(part.value);
        // A demand of a field always says what it must be, and so "the plan" before it is one name.
        if (part.value === DEMAND) return String.raw`(must .*?\S)`;
        // A value has no blank at its ends: a sentence of this screen, with the blanks of its language, is none of the host's.
        return String.raw`(\S|\S.*?\S)`;
      });
      const whole = new RegExp(`^${source.join('')}$`, 'su');
      return { key: key as MessageKey, names, length: fixed.length, whole, isBare: !/\p{L}/u.test(fixed) };
    });
  const around = ({ names }: Form): number => Number(names[0] === WHOLE_SENTENCE);
  return forms.sort((a, b) => around(b) - around(a) || b.length - a.length);
}

let forms: Form[] | null = null;
const found = new Map<string, { key: MessageKey; values: Record<string, string> } | null>();
/** Names and numbers make ever new sentences: what was found is forgotten before it fills the memory. */
const MOST_KEPT = 2000;

/** The message that the English sentence is, with its values; null for one that the catalogue does not know. */
export function formOf(sentence: string): { key: MessageKey; values: Record<string, string> } | null {
  const kept = found.get(sentence);
  if (kept !== undefined) return kept;
  forms ??= readForms();
  let known: ReturnType<typeof formOf> = null;
  for (const { key, names, whole, isBare } of forms) {
    const match = whole.exec(sentence);
    if (match === null || (isBare && match.slice(1).every((value) => formOf(value) === null))) continue;
    known = { key, values: Object.fromEntries(names.map((name, index) => [name, match[index + 1] ?? ''])) };
    break;
  }
  if (found.size >= MOST_KEPT) found.clear();
  found.set(sentence, known);
  return known;
}

/** A pan may be called "20 L": what somebody named is no amount. */
const NAMES: ReadonlySet<string> = new Set(['pan', 'other', 'name', 'names', 'probe', 'boil']);

/**
 * The host's sentence in a language. A value that is itself a sentence of the host is told too; one that the catalogue
 * does not know stays as it was written, for a word too many is better than a word lost. `amount` gives a value that is
 * an amount in the units that the person chose, and any other as it is.
 */
export function hostWords(sentence: string, tongue: Tongue, amount?: (written: string) => string): string {
  if (tongue.tag === 'en' && amount === undefined) return sentence;
  const known = formOf(sentence);
  if (known === null) return tongue.digits(sentence);
  const values = Object.entries(known.values).map(([name, value]) => {
    const shown = amount === undefined || NAMES.has(name) ? value : amount(value);
    return [name, hostWords(shown, tongue, amount)] as const;
  });
  return tongue.say(known.key, Object.fromEntries(values));
}
