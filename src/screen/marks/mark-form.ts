// What a form for one kind of mark is made of, and how its typed values become a mark.
import { isEmptyAt } from '../../protocol/first-pour.ts';
import type { Header, Mark, MarkKind, MarkView, Now, Pour, Settings } from '../client/types.ts';
import { localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { isEitherNumber, noNumber, outside, typedNumber } from '../words/amounts.ts';

/** Where a mark is being made. */
export interface MarkPlace {
  now: Now;
  header: Header;
  pan: string;
  settings: Settings;
  /** The pour that was seen and is being told of more exactly. */
  pour?: Pour;
  /** The note that is being corrected. */
  again?: MarkView;
  /** What stands in the fields as the form is opened, by field. */
  start?: Values;
}

/** One press that notes a mark as it stands. */
export interface Quick {
  label: string;
  mark: Mark;
}

export interface NumberField {
  name: string;
  label: string;
  unit: string;
  /** In the unit shown. */
  least: number;
  greatest: number;
  optional?: boolean;
  /** A number as it is typed there, for whoever typed none; one of the field's own where it is not told. */
  example?: string;
  /** What is wrong with a number, beyond being outside of the two. */
  wrong?: (typed: string, value: number) => string | null;
  /** What stands in it before anything is typed. */
  start?: string;
}

export interface TextField {
  name: string;
  label: string;
  words: true;
  start?: string;
}

export interface ChoiceField {
  name: string;
  label: string;
  options: { value: string; label: string }[];
}

export type Field = NumberField | TextField | ChoiceField;

/** Typed values by field name; numbers are still text. */
export type Values = Record<string, string>;

export interface MarkForm {
  kind: MarkKind;
  /** The letter that opens the form. */
  key: string;
  word: MessageKey;
  question: MessageKey;
  /** Asked where there is nothing to press, if that changes the question. */
  questionTyped?: MessageKey;
  /** Said in place of the two where nothing was in the pan before. */
  first?: { word: MessageKey; question: MessageKey };
  /** The form that tells the same in another way, offered beside the amounts; null for none. */
  otherWay?(place: MarkPlace): { words: string; kind: MarkKind } | null;
  /** Why there is nothing to note here, and what to do instead; null where it can be noted. */
  without?(place: MarkPlace): string | null;
  quicks(place: MarkPlace): Quick[];
  /** It is of the whole place, whichever pan is chosen. */
  ofNoPan?: true;
  /** What was typed is of the pan that was chosen then: with another pan the form begins anew. */
  anewByPan?: true;
  /** The presses are what is mostly wanted: Tab comes to them first, though Enter alone still notes none. */
  pressFirst?: true;
  /** Which fields there are may hang on what was chosen so far. */
  fields(place: MarkPlace, values?: Values): Field[];
  /**
   * The mark; null where the change of the set-up is all there is to it. Called only with values that `problemIn` passed.
   * Absent where quick presses are all there is.
   */
  build?(values: Values, place: MarkPlace): Mark | null;
  /** What has to be changed in the set-up before the mark; null for nothing. */
  patch?(values: Values, place: MarkPlace): Record<string, unknown> | null;
  /** What is said once that change alone was made. */
  changed?(values: Values, place: MarkPlace): string;
}

/** Nothing was in the pan before, or all of it went out again: what is poured in fills it. */
export const isFilling = ({ now, pan, again }: MarkPlace): boolean =>
  isEmptyAt(pan, again ?? { at: now.t, t: now.t }, now.marks);

/** What the form is called and asks here. */
export const headOf = (form: MarkForm, place: MarkPlace): { word: MessageKey; question: MessageKey } =>
  form.first !== undefined && isFilling(place) ? form.first : form;

/** A boil may be read by hand alone. */
export const hasProbe = ({ probes = [] }: Header): boolean => probes.length > 0;

/** The number of a checked field, or undefined when it was left empty. */
export function numberOf(values: Values, name: string): number | undefined {
  return typedNumber(values[name] ?? '') ?? undefined;
}

/** A number that the field takes; where it can, one with a decimal mark. */
function exampleIn({ least, greatest }: NumberField): string {
  if (least >= 10) return String(least);
  return greatest < 2.5 ? ((least + greatest) / 2).toFixed(2) : '2.5';
}

/** What is wrong with the values, in a sentence that names the field; null when they can be noted. */
export function problemIn(values: Values, fields: readonly Field[]): string | null {
  for (const field of fields) {
    const text = (values[field.name] ?? '').trim();
    if (!('least' in field)) {
      if ('words' in field && text === '') return say('marks.problem.words', { field: field.label });
      continue;
    }
    if (text === '' && field.optional === true) continue;
    const value = typedNumber(text);
    if (value === null && isEitherNumber(text)) return noNumber(field.label, text);
    if (value === null)
      return say('marks.problem.number', {
        field: field.label,
        example: field.example ?? localDigits(exampleIn(field)),
      });
    const wrong = field.wrong?.(text, value) ?? null;
    if (wrong !== null) return wrong;
    if (value < field.least || value > field.greatest)
      return outside({
        field: field.label,
        typed: text,
        least: field.least,
        greatest: field.greatest,
        unit: field.unit,
      });
  }
  return null;
}

/** Leaves out the fields that were not given: absent means "not known" in a recording. */
export function given<T extends object>(mark: T): T {
  return Object.fromEntries(Object.entries(mark).filter(([, value]) => value !== undefined)) as T;
}
