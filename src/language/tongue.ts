// One language: says the messages of its catalogue, and writes numbers, amounts and days as people do who speak it.
import { IntlMessageFormat } from 'intl-messageformat';
import english from './en.json' with { type: 'json' };

/** Every message of the program by its name; English is the catalogue that names them. */
export type MessageKey = keyof typeof english;
export type Catalogue = Readonly<Record<string, string>>;
export type Values = Readonly<Record<string, string | number>>;

/** Units that are not written alike in all languages, by their English symbol. */
const UNIT_KEYS: Readonly<Record<string, MessageKey>> = {
  in: 'unit.inch',
  ft: 'unit.foot',
  'US gal': 'unit.us_gallon',
  'imp gal': 'unit.imperial_gallon',
  SG: 'unit.specific_gravity',
};

/** By the root of a tag: "à hier 23:00" is no French, "hier à 23:00" is; the clock's words say the day first. */
const DAY_FIRST: Readonly<Record<string, RegExp>> = {
  fr: /(?<![\p{L}’])(à|vers|avant) (hier|demain) (?=\d\d:\d\d)/gu,
};

/** "5 gal imp." at the end of a sentence: what ends in a point already is given no second one. */
export const pointedOnce = (text: string): string => text.replaceAll(/(?<!\.)\.\.(?!\.)/gu, '.');

const IN_FIGURES = { year: 'numeric', month: '2-digit', day: '2-digit', timeZone: 'UTC' } as const;

const separatorOf = (tag: string): string =>
  new Intl.NumberFormat(tag).formatToParts(1.5).find(({ type }) => type === 'decimal')?.value ?? '.';

export class Tongue {
  /** BCP 47. */
  readonly tag: string;
  readonly #catalogue: Catalogue;
  readonly #formats = new Map<MessageKey, IntlMessageFormat>();
  readonly #dayFirst: RegExp | undefined;
  /** Found when a number is first written: Intl takes some ms to begin, and a page speaks one language of them all. */
  #mark: string | null = null;
  #days: Intl.DateTimeFormat | null = null;

  constructor(tag: string, catalogue: Catalogue) {
    this.tag = tag;
    this.#catalogue = catalogue;
    this.#dayFirst = DAY_FIRST[tag.split('-')[0] ?? ''];
  }

  get #separator(): string {
    this.#mark ??= separatorOf(this.tag);
    return this.#mark;
  }

  /** The message; in English where the catalogue lacks it. Throws when a value that it names is not given. */
  say(key: MessageKey, values?: Values): string {
    const text = pointedOnce(String(this.formatOf(key).format<never>(values)));
    return this.#dayFirst === undefined ? text : text.replaceAll(this.#dayFirst, '$2 $1 ');
  }

  /** The message's form, for who puts more than texts into it. Read once: a card is drawn many times a minute. */
  formatOf(key: MessageKey): IntlMessageFormat {
    let format = this.#formats.get(key);
    if (format === undefined) {
      format = new IntlMessageFormat(this.#catalogue[key] ?? english[key], this.tag);
      this.#formats.set(key, format);
    }
    return format;
  }

  /** "66,9 °Bx" of "66.9 °Bx" where the language writes its decimals so; a clock's 16:40 and an address stay. */
  digits(text: string): string {
    return this.#separator === '.'
      ? text
      : text.replaceAll(/(?<![\d.])(\d+)\.(\d+)(?![\d.])/gu, `$1${this.#separator}$2`);
  }

  /** A day of ISO 8601 ("2027-04-18") in figures, as people write it where they speak so; what is no day stays. */
  day(iso: string): string {
    const ms = Date.parse(iso);
    if (Number.isNaN(ms)) return iso;
    this.#days ??= new Intl.DateTimeFormat(this.say('language.locale'), IN_FIGURES);
    return this.#days.format(ms);
  }

  /** An amount as core/quantities writes it: "1,2 gal US" of "1.2 US gal", "moins de 10 °Bx" of "below 10 °Bx". */
  amount(text: string): string {
    const most = /^below (.+)$/u.exec(text)?.[1];
    if (most !== undefined) return this.say('amount.below', { most: this.amount(most) });
    const [value = '', unit = ''] = text.split('\u00a0');
    const key = UNIT_KEYS[unit];
    return this.digits(key === undefined ? text : `${value}\u00a0${this.say(key)}`);
  }
}
