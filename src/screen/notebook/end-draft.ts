// The form at the end of a boil: what it is filled in with, and the page that comes of what was typed.
import { kgFromMass, massFromKg } from '../../core/quantities/units.ts';
import type { BoilPage, EndForm, FuelUsed } from '../../protocol/season-messages.ts';
import type { Settings } from '../client/types.ts';
import { brixOf, litresOf, litresShown, strengthShown, typedNumber } from '../words/amounts.ts';
import { jarsTyped, jarsWords } from '../words/jar-words.ts';
import { localDigits } from '../language/numbers.ts';
import { type MessageKey, say } from '../language/say.ts';

export type EndField = 'syrup' | 'strength' | 'jars' | 'fuel' | 'sap' | 'note';
export type EndDraft = Record<EndField, string>;

const plain = (value: number | null, digits: number): string =>
  value === null ? '' : localDigits(String(Number(value.toFixed(digits))));

/** Each field with what it most likely was; empty where nobody can tell. */
export function endDraft(form: EndForm, settings: Settings): EndDraft {
  const { fuel } = form;
  const isMass = fuel.ask === 'after_kg' || fuel.ask === 'kg';
  const likely = fuel.likely !== null && isMass ? massFromKg(fuel.likely, settings.mass) : fuel.likely;
  const shown = (litres: number | null | undefined, digits: number): string =>
    plain(litres === null || litres === undefined ? null : litresShown(litres, settings), digits);
  return {
    syrup: shown(form.syrup_litres, 2),
    strength: plain(
      form.syrup_brix === null ? null : strengthShown(form.syrup_brix, settings),
      settings.strength === 'sg' ? 3 : 1,
    ),
    jars: form.jars === null ? '' : jarsWords([form.jars], settings),
    fuel: plain(likely, 1),
    sap: shown(form.sap?.likely_litres, 0),
    note: '',
  };
}

export type EndTyped = { ok: true; page: BoilPage } | { ok: false; field: EndField; why: string };

const NUMBER: MessageKey = 'notebook.end.number';

/** The page with what was typed put into it; what is left empty stays not known. */
export function endTyped(draft: EndDraft, form: EndForm, page: BoilPage, settings: Settings): EndTyped {
  const numbers = {} as Record<'syrup' | 'strength' | 'fuel' | 'sap', number | undefined>;
  for (const field of ['syrup', 'strength', 'fuel', 'sap'] as const) {
    const typed = typedNumber(draft[field]);
    if (draft[field].trim() !== '' && (typed === null || typed < 0)) return { ok: false, field, why: say(NUMBER) };
    numbers[field] = typed ?? undefined;
  }
  const jars = jarsTyped(draft.jars, settings);
  if (jars === null) return { ok: false, field: 'jars', why: say('notebook.end.jars_how') };
  const brix = numbers.strength === undefined ? undefined : brixOf(numbers.strength, settings);
  if (brix === 0) return { ok: false, field: 'strength', why: say('notebook.end.no_strength') };
  const { fuel, why } = fuelTyped(numbers.fuel, form, settings);
  if (why !== undefined) return { ok: false, field: 'fuel', why };
  const litres = numbers.syrup === undefined ? undefined : litresOf(numbers.syrup, settings);
  const sap = numbers.sap === undefined || form.sap === null ? undefined : litresOf(numbers.sap, settings);
  return {
    ok: true,
    page: {
      ...page,
      ...(litres === undefined && brix === undefined ? {} : { syrup: { ...page.syrup, litres, brix } }),
      ...(jars.length === 0 ? {} : { jars }),
      ...(fuel === undefined ? {} : { fuel: [fuel] }),
      ...(sap === undefined ? {} : { sap: { ...page.sap, litres: sap } }),
      ...(draft.note.trim() === '' ? {} : { notes: draft.note.trim() }),
    },
  };
}

function fuelTyped(
  typed: number | undefined,
  { fuel: { kind, ask, before_kg: before } }: EndForm,
  settings: Settings,
): { fuel?: FuelUsed; why?: string } {
  if (typed === undefined) return {};
  if (ask === 'cords') return { fuel: { kind, cords: typed } };
  if (ask === 'kwh') return { fuel: { kind, kwh: typed } };
  const kg = kgFromMass(typed, settings.mass);
  if (ask === 'kg') return { fuel: { kind, kg } };
  if (before !== null && kg > before) return { why: say('notebook.end.cylinder') };
  return { fuel: { kind, before_kg: before ?? undefined, after_kg: kg } };
}
