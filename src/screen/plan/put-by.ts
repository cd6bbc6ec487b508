// The plan as it is typed and the one that was kept beside it: put by with the host, so that both are there the next morning.
import { effect, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { PlanPutBy } from '../../protocol/look-messages.ts';
import { ask, linkState, saps, settings } from '../client/store.ts';
import type { SapKind, Settings } from '../client/types.ts';
import { planDraft } from './plan-draft.ts';
import type { PlanDraft } from './plan-draft.ts';

/** A plan's form, and the units in which it was typed. */
export interface Typed {
  draft: PlanDraft;
  units: Settings;
}

/** Until somebody clears it; null where nobody typed anything. */
export const typed = signal<Typed | null>(null);

/** Until somebody puts it away; null where none was kept. */
export const kept = signal<Typed | null>(null);

const isRecalled = signal(false);

const UNITS = ['temperature', 'volume', 'length', 'pressure', 'mass', 'strength', 'power'] as const;

type Sheet = NonNullable<PlanPutBy['typed']>;

/** As it is put by: of all settings only the units. */
export const sheetOf = ({ draft, units }: Typed): Sheet => ({
  draft: { ...draft },
  units: Object.fromEntries(UNITS.map((unit) => [unit, units[unit]])),
});

/** What was put by, by this program or another of its versions; null where the form could not show it. */
export function typedOf(sheet: unknown, usual: Settings, kinds: readonly SapKind[]): Typed | null {
  const draft = planDraft(null, usual, kinds, '');
  const pans = draft.boil.pans.map((pan) => ({ ...pan, before: { id: '' } }));
  const units = Object.fromEntries(UNITS.map((unit) => [unit, usual[unit]]));
  if (!isLike(sheet, { draft: { ...draft, boil: { ...draft.boil, pans } }, units })) return null;
  const read = sheet as Typed;
  return read.draft.boil.pans.length === 0 ? null : { draft: read.draft, units: { ...usual, ...read.units } };
}

/** Whether a value has all fields of the example, of the same kind; a null in it stands for anything. */
function isLike(value: unknown, example: unknown): boolean {
  if (example === null) return true;
  if (Array.isArray(example))
    return Array.isArray(value) && (example.length === 0 || value.every((one) => isLike(one, example[0])));
  if (typeof example !== 'object') return typeof value === typeof example;
  if (typeof value !== 'object' || value === null) return false;
  return Object.entries(example).every(([key, one]) => isLike((value as Record<string, unknown>)[key], one));
}

/** Asks once what was put by; while the link is down nothing is typed over it, and the link that is back asks again. */
async function recall(): Promise<void> {
  try {
    const there = (await ask({ plan_put_by: true })) as PlanPutBy | null;
    if (isRecalled.value) return;
    typed.value = typedOf(there?.typed, settings.value, saps.value);
    kept.value = typedOf(there?.kept, settings.value, saps.value);
    isRecalled.value = true;
  } catch {
    // Without what was put by a boil can be planned all the same.
    if (linkState.value.state === 'open') isRecalled.value = true;
  }
}

/** Whether what was put by is here; asks for it where it is not. */
export function useRecalled(): boolean {
  const { state } = linkState.value;
  useEffect(() => {
    if (!isRecalled.value && state === 'open') void recall();
  }, [state]);
  return isRecalled.value;
}

/** What the host has not been told yet. */
let untold: Partial<PlanPutBy> = {};
let telling: Promise<string | null> | null = null;

/** One at a time, and then the newest: keys are typed faster than a slow disk writes. Gives why the host refused, null once it has all. */
function tellHost(): Promise<string | null> {
  telling ??= tellAll().finally(() => (telling = null));
  return telling;
}

async function tellAll(): Promise<string | null> {
  while (Object.keys(untold).length > 0) {
    const told = untold;
    untold = {};
    try {
      await ask({ put_plan_by: told });
    } catch (error) {
      untold = { ...told, ...untold };
      // The next change says it again, or the link once it is back.
      return error instanceof Error ? error.message : String(error);
    }
  }
  return null;
}

effect(() => {
  if (linkState.value.state === 'open') void tellHost();
});

/** Shows what is named at once, and has the host put it by; gives why it did not, null once it has. */
export function putBy(plans: Partial<Record<keyof PlanPutBy, Typed | null>>): Promise<string | null> {
  for (const [which, plan] of Object.entries(plans) as [keyof PlanPutBy, Typed | null][]) {
    (which === 'typed' ? typed : kept).value = plan;
    untold = { ...untold, [which]: plan === null ? null : sheetOf(plan) };
  }
  return tellHost();
}
