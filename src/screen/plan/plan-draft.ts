// A plan as it stands in its form: texts in the units shown, turned into what the host plans from.
import type { PlanRequest } from '../../protocol/plan-schema.ts';
import { celsiusFromTemperature } from '../../core/quantities/units.ts';
import { boilDraft, calledIn, isBare, problemInDraft, setupOf } from '../boil/boil-draft.ts';
import type { BoilDraft, PanDraft } from '../boil/boil-draft.ts';
import { boilDraftIn, retyped, typedQuantities } from '../boil/draft-units.ts';
import type { TypedQuantity } from '../boil/draft-units.ts';
import { isVesselUnfinished } from '../boil/vessel-draft.ts';
import { inField } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { SapKind, Settings, Setup } from '../client/types.ts';
import {
  brixOf,
  hpaOf,
  litresOf,
  noNumber,
  outside,
  problemInPressure,
  typedNumber,
  unitSymbols,
} from '../words/amounts.ts';
import { listWords } from '../words/plan-words.ts';

/** Every text is as typed; '' is "not given". Sap and finish of all the liquid are those of the first pan. */
export interface PlanDraft {
  litres: string;
  strength: string;
  celsius: string;
  pressure: string;
  pressureAt: 'station' | 'altimeter' | 'sea-level';
  /** Local date and time, as the browser's field has them. */
  start: string;
  /** Somebody said when: what nobody said never lies in the past. */
  isStartTyped: boolean;
  until: string;
  boil: BoilDraft;
}

/** When the fire is lit where nobody has said it yet, o'clock. */
export const FIRE_LIT_HOUR = 8;

/** `day` is the local date of the fire, like 2027-04-18. */
export function planDraft(from: Setup | null, settings: Settings, kinds: readonly SapKind[], day: string): PlanDraft {
  return {
    litres: '',
    strength: '',
    celsius: '',
    pressure: '',
    pressureAt: 'station',
    start: `${day}T0${FIRE_LIT_HOUR}:00`,
    isStartTyped: false,
    until: '',
    boil: boilDraft(from, settings, kinds),
  };
}

/** The plan with its fire lit now where the time that nobody touched has gone by; `nowLocal` is like the field's "2027-04-18T07:30". */
export const withFireLit = (draft: PlanDraft, nowLocal: string): PlanDraft =>
  draft.isStartTyped || draft.start === '' || draft.start >= nowLocal ? draft : { ...draft, start: nowLocal };

/** Pans of which a size is still to be typed are planned as if their shape was not chosen yet. */
export function sizedBoil({ boil }: PlanDraft): BoilDraft {
  const sized = (pan: PanDraft): PanDraft =>
    isVesselUnfinished(pan.vessel) ? { ...pan, vessel: { ...pan.vessel, shape: '' } } : pan;
  return { ...boil, pans: boil.pans.map(sized) };
}

/** What the plan goes without for now: which pans still want their sizes; null where none does. `hours` are those of the plan. */
export function unsizedWords({ boil }: PlanDraft, hours: number | null): string | null {
  const pans = boil.pans.filter(({ vessel }) => isVesselUnfinished(vessel)).map(calledIn);
  const key = hours === null ? 'plan.unsized_unknown' : 'plan.unsized';
  return pans.length === 0 ? null : say(key, { pans: listWords(pans), count: pans.length });
}

/** A plan that was typed in the units of `from`, in those of `to`. */
export const planDraftIn = (draft: PlanDraft, from: Settings, to: Settings): PlanDraft => ({
  ...draft,
  litres: retyped(draft.litres, typedQuantities.volume, from, to),
  strength: retyped(draft.strength, typedQuantities.strength, from, to),
  celsius: retyped(draft.celsius, typedQuantities.temperature, from, to),
  pressure: retyped(draft.pressure, typedQuantities.pressure, from, to),
  boil: boilDraftIn(draft.boil, from, to),
});

/** The same plan for the sap that is in store; its strength only where that is known. */
export function withStore(
  draft: PlanDraft,
  { litres, brix }: { litres: number; brix: number | null },
  settings: Settings,
): PlanDraft {
  const typed = (value: number, { shown, digits }: TypedQuantity): string =>
    inField(shown(value, settings), digits(settings));
  return {
    ...draft,
    litres: typed(litres, typedQuantities.volume),
    strength: brix === null ? draft.strength : typed(brix, typedQuantities.strength),
  };
}

/**
 * The request of a plan that was typed in the units of `from`, from what the form shows of it in those of `to`: two plans
 * that are told apart are both rounded to the same units, or the rounding would read as a change.
 */
export const requestIn = (draft: PlanDraft, from: Settings, to: Settings, kinds: readonly SapKind[]): PlanRequest =>
  requestOf(planDraftIn(draft, from, to), to, kinds);

interface Field {
  label: string;
  typed: string;
  least: number;
  greatest: number;
  unit: string;
}

function fieldsOf(draft: PlanDraft, settings: Settings): Field[] {
  const units = unitSymbols(settings);
  return [
    {
      label: say('plan.field.strength'),
      typed: draft.strength,
      ...STRENGTHS[settings.strength],
      unit: isBare(settings) ? '' : units.strength,
    },
    {
      label: say('plan.field.celsius'),
      typed: draft.celsius,
      ...WARMTHS[settings.temperature],
      unit: units.temperature,
    },
  ];
}

const WARMTHS = { C: { least: 0, greatest: 100 }, F: { least: 32, greatest: 212 } } as const;
const STRENGTHS = {
  brix: { least: 0.1, greatest: 60 },
  baume: { least: 0.1, greatest: 33 },
  sg: { least: 1.0004, greatest: 1.29 },
} as const;

export interface PlanProblem {
  sentence: string;
  /** Nothing that was typed is wrong: something is only still to be typed. */
  isMissing: boolean;
}

/** Why there is no plan of this draft yet: what is wrong with it first, then what it still lacks; null where it can be planned. */
export function problemInPlan(draft: PlanDraft, settings: Settings): PlanProblem | null {
  const wrong = wrongInPlan(draft, settings);
  if (wrong !== null) return { sentence: wrong, isMissing: false };
  const lacking = lackingInPlan(draft, settings);
  return lacking === null ? null : { sentence: lacking, isMissing: true };
}

function lackingInPlan(draft: PlanDraft, settings: Settings): string | null {
  if (draft.litres.trim() === '') return askedLitres(settings);
  if (draft.until !== '' && draft.start === '') return say('plan.problem.both_times');
  return null;
}

/** What is wrong with what was typed for the sap; null where nothing is, or nothing is typed. */
export function problemInSapField(
  field: 'litres' | 'strength' | 'celsius',
  draft: PlanDraft,
  settings: Settings,
): string | null {
  if (field === 'litres') return problemInLitres(draft, settings);
  const [strength, celsius] = fieldsOf(draft, settings);
  return problemInField((field === 'strength' ? strength : celsius)!);
}

function problemInLitres({ litres: typed }: PlanDraft, settings: Settings): string | null {
  const litres = typedNumber(typed);
  return typed.trim() !== '' && (litres === null || litres <= 0) ? askedLitres(settings) : null;
}

function problemInField({ label, typed, least, greatest, unit }: Field): string | null {
  if (typed.trim() === '') return null;
  const value = typedNumber(typed);
  if (value === null) return noNumber(label, typed);
  return value < least || value > greatest ? outside({ field: label, typed, least, greatest, unit }) : null;
}

const askedLitres = (settings: Settings): string =>
  say('plan.problem.litres', { volume: unitSymbols(settings).volume });

function wrongInPlan(draft: PlanDraft, settings: Settings): string | null {
  const fields = fieldsOf(draft, settings).map(problemInField);
  const wrong = [problemInLitres(draft, settings), ...fields].find((problem) => problem !== null);
  if (wrong !== undefined) return wrong;
  const pressure = pressureProblem(draft);
  if (pressure !== null) return pressure;
  if (draft.until !== '' && draft.start !== '' && draft.until <= draft.start) return say('plan.problem.leave_first');
  return problemInDraft(sizedBoil(draft), settings);
}

function pressureProblem({ pressure }: PlanDraft): string | null {
  if (pressure.trim() === '') return null;
  const value = typedNumber(pressure);
  const label = say('plan.field.pressure');
  return value === null ? noNumber(label, pressure) : problemInPressure(label, pressure, value);
}

/** The request of a checked draft. */
export function requestOf(draft: PlanDraft, settings: Settings, kinds: readonly SapKind[]): PlanRequest {
  const { site, pans = [] } = setupOf(sizedBoil(draft), settings, kinds);
  const strength = typedNumber(draft.strength);
  const warm = typedNumber(draft.celsius);
  const pressure = typedNumber(draft.pressure);
  return {
    ...(site === undefined ? {} : { site }),
    ...(pressure === null ? {} : { pressure: { hpa: hpaOf(pressure, settings), at: draft.pressureAt } }),
    ...(pans[0]?.sap === undefined ? {} : { sap: pans[0].sap }),
    ...(pans[0]?.finish === undefined ? {} : { finish: pans[0].finish }),
    litres: litresOf(typedNumber(draft.litres)!, settings),
    ...(strength === null ? {} : { brix: brixOf(strength, settings) }),
    ...(warm === null ? {} : { celsius: celsiusFromTemperature(warm, settings.temperature) }),
    pans: pans as PlanRequest['pans'],
    ...(draft.start === '' ? {} : { start: draft.start }),
    ...(draft.until === '' ? {} : { until: draft.until }),
  };
}
