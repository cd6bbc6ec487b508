// All forms for marks in the order in which their buttons stand: the everyday ones first.
import type { Header, MarkKind } from '../client/types.ts';
import { hasProbe } from './mark-form.ts';
import type { MarkForm } from './mark-form.ts';
import { density } from './density-form.ts';
import { depthMark, handReading, waterCheck } from './measure-forms.ts';
import { note, probeMoved, reminder } from './other-forms.ts';
import { pressure } from './pressure-form.ts';
import { drawOff, flame, pourTogether, topUp } from './pour-forms.ts';

export const markForms: readonly MarkForm[] = [
  topUp,
  flame,
  drawOff,
  pourTogether,
  density,
  depthMark,
  handReading,
  waterCheck,
  pressure,
  probeMoved,
  reminder,
  note,
];

/** The forms that a boil offers: one that is read by hand alone has no probe to move. */
export const formsFor = (header: Header): MarkForm[] =>
  markForms.filter(({ kind }) => kind !== probeMoved.kind || hasProbe(header));

/** The form of a kind of mark; null for a kind that nobody types. */
export function formOf(kind: MarkKind): MarkForm | null {
  return markForms.find((form) => form.kind === kind) ?? null;
}
