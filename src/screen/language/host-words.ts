// Sentences that the host writes down in English, told in the language of the screen: known by their English form in the catalogue.
import { isArgumentElement, isLiteralElement, parse } from '@formatjs/icu-messageformat-parser';
import english from './en.json' with { type: 'json' };
import { language } from './language.ts';
import type { MessageKey } from './language.ts';
import { localDigits } from './numbers.ts';
import { say } from './say.ts';

interface Form {
  key: MessageKey;
  names: string[];
  whole: RegExp;
}

const HOST = 'host.';
const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/gu, String.raw`\$&`);

/** What the host may say, as patterns; a message with more fixed words comes before one with fewer. */
function readForms(): Form[] {
  const forms = Object.entries(english)
    .filter(([key]) => key.startsWith(HOST))
    .map(([key, message]) => {
      const names: string[] = [];
      let fixed = 0;
      const source = parse(message).map((part) => {
        if (isLiteralElement(part)) {
          fixed += part.value.length;
          return escaped(part.value);
        }
        if (!isArgumentElement(part)) throw new Error(`${key}: a sentence of the host holds plain values only`);
        names.push(part.value);
        return '(.+?)';
      });
      return { key: key as MessageKey, names, fixed, whole: new RegExp(`^${source.join('')}$`, 'su') };
    });
  return forms.sort((a, b) => b.fixed - a.fixed);
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
  for (const { key, names, whole } of forms) {
    const match = whole.exec(sentence);
    if (match === null) continue;
    known = { key, values: Object.fromEntries(names.map((name, index) => [name, match[index + 1] ?? ''])) };
    break;
  }
  if (found.size >= MOST_KEPT) found.clear();
  found.set(sentence, known);
  return known;
}

/**
 * The host's sentence in the language of the screen. A value that is itself a sentence of the host is told too; one
 * that the catalogue does not know stays as it was written, for a word too many is better than a word lost.
 */
export function hostWords(sentence: string): string {
  if (language.value === 'en') return sentence;
  const known = formOf(sentence);
  if (known === null) return localDigits(sentence);
  const values = Object.fromEntries(Object.entries(known.values).map(([name, value]) => [name, hostWords(value)]));
  return say(known.key, values);
}
