// The form at the end of a boil: what it is filled in with, and the page that comes of what was typed.
import { jarsFor, usualJars } from '../../core/quantities/jar-sizes.ts';
import { kgFromMass, massFromKg } from '../../core/quantities/units.ts';
import type { BoilPage, EndForm, FuelUsed } from '../../protocol/season-messages.ts';
import type { Settings } from '../client/types.ts';
import { brixOf, exactStrength, litresOf, litresShown, strengthShown, typedNumber, volume } from '../words/amounts.ts';
import { jarsExample, jarsTyped, jarsWords } from '../words/jar-words.ts';
import { retyped, typedQuantities } from '../boil/draft-units.ts';
import { inField } from '../language/numbers.ts';
import { type MessageKey, say } from '../language/say.ts';

export type EndField = 'syrup' | 'strength' | 'jars' | 'fuel' | 'sap' | 'note';
export type EndDraft = Record<EndField, string>;

/** What somebody typed and has not kept yet, in the units in which it was typed. */
export interface EndInHand {
  fields: Partial<EndDraft>;
  units: Settings;
}

const plain = (value: number | null, digits: number): string => (value === null ? '' : inField(value, digits));

/** What is asked of the fuel: as it was answered, else as it is most likely known. */
export function fuelAsked({ fuel }: EndForm, page: BoilPage): EndForm['fuel'] {
  const [kept] = page.fuel ?? [];
  if (kept === undefined) return isAnswered(page) ? { ...fuel, likely: null } : fuel;
  const of = (ask: EndForm['fuel']['ask'], likely: number): EndForm['fuel'] => ({
    kind: kept.kind,
    ask,
    before_kg: kept.before_kg ?? null,
    likely,
  });
  if (kept.after_kg !== undefined) return of('after_kg', kept.after_kg);
  if (kept.kg !== undefined) return of('kg', kept.kg);
  if (kept.cords !== undefined) return of('cords', kept.cords);
  if (kept.kwh !== undefined) return of('kwh', kept.kwh);
  return { ...fuel, kind: kept.kind, likely: null };
}

/** Whether somebody has said what came of the boil: then what they left empty is not asked of them again, and no guess is shown. */
export const isAnswered = ({ syrup, jars, fuel, sap }: BoilPage): boolean =>
  [syrup, jars, fuel, sap].some((part) => part !== undefined);

/** What nobody may take the form for while it is unanswered: that all of it became syrup, or that it is known of which sap. */
export function endRemarks(form: EndForm, page: BoilPage, settings: Settings): string[] {
  if (isAnswered(page)) return [];
  const drawn = form.drawn_litres;
  const brokenOff =
    drawn === null
      ? say('notebook.end.broken_off')
      : say('notebook.end.broken_off_drawn', { syrup: volume(drawn, settings, 2) });
  return [...(form.broken_off ? [brokenOff] : []), ...(form.asks_draw_off ? [say('notebook.end.which_pan')] : [])];
}

/** Each field as it was kept, or as somebody measured and noted it where nobody has answered yet; empty where neither tells it. */
export function endDraft(form: EndForm, page: BoilPage, settings: Settings): EndDraft {
  const { syrup, brix } = form.measured;
  const measured = {
    syrup_litres: syrup ? form.syrup_litres : null,
    syrup_brix: brix ? form.syrup_brix : null,
    jars: null,
  };
  return draftOf(isAnswered(page) ? {} : measured, form, page, settings);
}

/** What each field most likely is where nobody has answered yet and nobody measured it; empty where nobody can tell. */
export function endGuesses(form: EndForm, page: BoilPage, settings: Settings): EndDraft {
  const told = endDraft(form, page, settings);
  if (isAnswered(page)) return { ...told, syrup: '', strength: '', jars: '', fuel: '', sap: '', note: '' };
  const likely = draftOf({ ...form, jars: form.jars ?? likelyJars(form.syrup_litres, settings) }, form, page, settings);
  return Object.fromEntries(
    Object.entries(likely).map(([field, text]) => [field, told[field as EndField] === '' ? text : '']),
  ) as EndDraft;
}

/** Where no jars were filled before, those of the size that most people fill. */
const likelyJars = (litres: number | null, { volume }: Settings): EndForm['jars'] =>
  litres === null ? null : (usualJars(jarsFor(litres, volume), volume) ?? null);

function draftOf(
  likely: Partial<Pick<EndForm, 'syrup_litres' | 'syrup_brix' | 'jars'>>,
  form: EndForm,
  page: BoilPage,
  settings: Settings,
): EndDraft {
  const fuel = fuelAsked(form, page);
  const isMass = fuel.ask === 'after_kg' || fuel.ask === 'kg';
  const taken = fuel.likely !== null && isMass ? massFromKg(fuel.likely, settings.mass) : fuel.likely;
  const shown = (litres: number | null | undefined, digits: number): string =>
    plain(litres === null || litres === undefined ? null : litresShown(litres, settings), digits);
  const brix = page.syrup?.brix ?? likely.syrup_brix ?? null;
  const jars = page.jars ?? (likely.jars ? [likely.jars] : []);
  return {
    syrup: shown(page.syrup?.litres ?? likely.syrup_litres, 2),
    strength: plain(brix === null ? null : strengthShown(brix, settings), settings.strength === 'sg' ? 3 : 1),
    jars: jarsWords(jars, settings),
    fuel: plain(taken, 1),
    sap: shown(page.sap?.litres, 0),
    note: page.notes ?? '',
  };
}

/** The form with what was typed over what it is filled in with, in the units shown. */
export function endDraftInHand(
  begun: EndDraft,
  inHand: EndInHand | undefined,
  ask: EndForm['fuel']['ask'],
  shown: Settings,
): EndDraft {
  if (inHand === undefined) return begun;
  const { fields, units } = inHand;
  const typed = { ...fields };
  for (const field of ['syrup', 'sap'] as const)
    if (typed[field] !== undefined) typed[field] = retyped(typed[field], typedQuantities.volume, units, shown);
  if (typed.strength !== undefined) typed.strength = retyped(typed.strength, typedQuantities.strength, units, shown);
  if (typed.fuel !== undefined && (ask === 'kg' || ask === 'after_kg'))
    typed.fuel = retyped(typed.fuel, typedQuantities.weight, units, shown);
  return { ...begun, ...typed };
}

/** `into` puts what was typed into the page as it is then. */
export type EndTyped = { ok: true; into: (page: BoilPage) => BoilPage } | { ok: false; field: EndField; why: string };

const NUMBER: MessageKey = 'notebook.end.number';

/**
 * Reads the form of a boil whose page was `page` when it was opened. What was kept and not touched stays to its last digit; a
 * field that is empty is not known.
 */
export function endTyped(draft: EndDraft, form: EndForm, page: BoilPage, settings: Settings): EndTyped {
  const numbers = {} as Record<'syrup' | 'strength' | 'fuel' | 'sap', number | undefined>;
  for (const field of ['syrup', 'strength', 'fuel', 'sap'] as const) {
    const typed = typedNumber(draft[field]);
    if (draft[field].trim() !== '' && (typed === null || typed < 0)) return { ok: false, field, why: say(NUMBER) };
    numbers[field] = typed ?? undefined;
  }
  const jars = jarsTyped(draft.jars, settings);
  if (jars === null)
    return { ok: false, field: 'jars', why: say('notebook.end.jars_how', { example: jarsExample(settings) }) };
  const brix = numbers.strength === undefined ? undefined : brixOf(numbers.strength, settings);
  if (brix === 0) return { ok: false, field: 'strength', why: say('notebook.end.no_strength') };
  const { fuel, why } = fuelTyped(numbers.fuel, fuelAsked(form, page), settings);
  if (why !== undefined) return { ok: false, field: 'fuel', why };
  const litres = numbers.syrup === undefined ? undefined : litresOf(numbers.syrup, settings);
  const sap = numbers.sap === undefined ? undefined : litresOf(numbers.sap, settings);

  const begun = endDraft(form, page, settings);
  const isNew = (field: EndField, kept: unknown): boolean => kept === undefined || draft[field] !== begun[field];
  return {
    ok: true,
    into(now) {
      const next = { ...now };
      // A weight that was kept stands over the litres: litres that were typed later take its place.
      if (isNew('syrup', page.syrup?.litres) && (litres !== undefined || page.syrup?.litres !== undefined))
        next.syrup = { ...next.syrup, litres, kg: undefined };
      if (isNew('strength', page.syrup?.brix)) next.syrup = { ...next.syrup, brix };
      if (isNew('jars', page.jars)) next.jars = jars;
      if (isNew('fuel', page.fuel)) next.fuel = [...(fuel ? [fuel] : []), ...(now.fuel ?? []).slice(1)];
      if (form.asks_sap && isNew('sap', page.sap?.litres)) next.sap = { ...next.sap, litres: sap };
      if (isNew('note', page.notes)) next.notes = draft.note.trim();
      return withoutEmpty(next);
    },
  };
}

/**
 * More syrup than the sap had sugar for, in a sentence, as soon as it is typed; null where it is not more, or cannot be told.
 * That stronger syrup is denser, too, is left out: 5 °Bx make 2 % of it, and the range of the sap is wider.
 */
export function endOver(draft: EndDraft, { most_syrup: most }: EndForm, settings: Settings): string | null {
  const typed = typedNumber(draft.syrup);
  const jars = jarsTyped(draft.jars, settings) ?? [];
  const litres =
    typed === null ? jars.reduce((sum, { litres: each, count }) => sum + each * count, 0) : litresOf(typed, settings);
  const strength = typedNumber(draft.strength);
  if (most === null) return null;
  const brix = strength === null ? most.brix : brixOf(strength, settings);
  const sap = typedNumber(draft.sap);
  if (most.each_litre_of_sap === true && sap === null) return null;
  const times = most.each_litre_of_sap === true ? litresOf(sap!, settings) : 1;
  if (litres * brix <= times * most.litres * most.brix) return null;
  const over = say('notebook.end.over', { most: volume((times * most.litres * most.brix) / brix, settings, 2) });
  if (strength !== null || most.aimed !== true) return over;
  const aimed = say('notebook.end.over_aimed', { strength: exactStrength(most.brix, settings) });
  return `${over} ${aimed}`;
}

/** What holds nothing is not on the page. */
function withoutEmpty(page: BoilPage): BoilPage {
  const holds = (part: unknown): boolean =>
    typeof part === 'object' && part !== null
      ? Object.values(part).some((value) => value !== undefined)
      : part !== undefined && part !== '';
  return Object.fromEntries(Object.entries(page).filter(([, part]) => holds(part)));
}

function fuelTyped(
  typed: number | undefined,
  { kind, ask, before_kg: before }: EndForm['fuel'],
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
