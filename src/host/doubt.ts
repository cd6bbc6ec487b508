// What is asked back about a mark before it is noted: it is tried on a copy of the boil.
import type { Mark } from '../core/boil/entries.ts';
import { empties, poursInto } from '../core/boil/mark-flow.ts';
import { applyEntry, panReadings, type BoilState } from '../core/boil/fold.ts';
import { heldLitres } from '../core/pan/held-litres.ts';
import { pressureDoubt } from '../core/physics/pressure-doubt.ts';
import { depthAtLitres } from '../core/physics/vessel.ts';
import { formatTyped } from '../core/quantities/format.ts';
import { rimMm } from '../core/quantities/rim.ts';
import { foldTools } from './fold-tools.ts';

/** More than is in a pan by this is no mistake of a jug (litres are counted to a third, and noted to a tenth). */
const MORE_THAN_THERE = 1.5;

/** A sentence where a mark noted at t (ms) can hardly be meant, in SI; null where it can. The note that it corrects does not stand beside it. */
export function doubtAbout(mark: Mark, boil: BoilState, t: number): string | null {
  const state = mark.corrects === undefined ? boil : tried({ kind: 'withdraw', id: mark.corrects }, boil, t);
  switch (mark.kind) {
    case 'pressure': {
      const { hpa, at = 'station', outdoor_celsius: outdoorC = null } = mark;
      return pressureDoubt({ hpa, at, altitudeM: state.header.site?.altitude_m ?? null, outdoorC });
    }
    case 'depth':
    case 'density': {
      const kept = tried(mark, state, t).marks.at(-1);
      return kept?.questioned === true ? kept.doubt : null;
    }
    case 'water-check':
      return noBoilingWater(mark, state, t);
    case 'reading':
      return noSap(mark, state, t) ?? tried(mark, state, t).marks.at(-1)?.doubt ?? null;
    case 'top-up':
      return runsOver(mark, mark.pan, state, t);
    case 'draw-off':
      return takesTooMuch(mark, mark.pan, state, t);
    case 'transfer':
      return takesTooMuch(mark, mark.from, state, t) ?? mixes(mark, state) ?? runsOver(mark, mark.to, state, t);
    default:
      return null;
  }
}

/** The boil as it would be with the mark. */
const tried = (mark: Mark, state: BoilState, t: number): BoilState =>
  applyEntry(structuredClone(state), { t, mark }, foldTools);

const readingOf = (state: BoilState, pan: string, t: number) =>
  panReadings(state, t).find((reading) => reading.pan === pan) ?? null;

/** A number that no boiling water shows here. One that was read in a thick pan counts by no word, so it is not asked about. */
function noBoilingWater(mark: Mark & { kind: 'water-check' }, state: BoilState, t: number): string | null {
  const { questioned = false, evidence = null } = tried(mark, state, t).marks.at(-1) ?? {};
  if (!questioned || evidence?.kind !== 'check' || evidence.inSyrup) return null;
  return `A check in boiling water needs plain water, and ${formatTyped(mark.celsius, 1)} °C is far from where water boils here.`;
}

/** Hotter than this over boiling water is no syrup any more, °C: 85 °Bx rise by about 15 (water-activity model). */
const NO_SYRUP_C = 15;
/** So much colder than it was just read, °C, and nothing poured in: a slip of the finger rather. */
const NOT_SO_COLD_C = 25;
/** Longer ago than this a pan may have cooled by itself, ms. */
const JUST_READ_MS = 20 * 60_000;

/** A temperature that no sap on a fire has, or that the pan cannot have come to since it was read. */
function noSap(mark: Mark & { kind: 'reading' }, state: BoilState, t: number): string | null {
  const { pan, celsius } = mark;
  const name = state.designs[pan]?.name ?? pan;
  const shown = `${name}: ${formatTyped(celsius, 1)} °C`;
  if (celsius < 0) return `${shown} is below freezing, and no sap on a fire is so cold.`;
  const water = state.around[pan]?.waterC ?? null;
  if (water !== null && celsius > water + NO_SYRUP_C) return `${shown} is hotter than any syrup boils.`;
  const at = mark.happened ?? t;
  const before = lastShown(state, pan, t);
  if (before === null || before.at > at || at - before.at > JUST_READ_MS) return null;
  if (celsius > before.celsius - NOT_SO_COLD_C || wasChanged(state, pan, before.at)) return null;
  return `${shown} is far colder than the ${before.celsius.toFixed(1)} °C that it showed, and nothing was poured in since.`;
}

/** What a pan showed last: its probe, else what was read by hand; `at` in ms. */
function lastShown(state: BoilState, pan: string, t: number): { celsius: number; at: number } | null {
  const byHand = state.pans[pan]?.byHand ?? null;
  if (byHand !== null) return byHand;
  const celsius = readingOf(state, pan, t)?.temperature_c ?? null;
  return celsius === null ? null : { celsius, at: t - JUST_CHANGED_MS };
}

/** A probe shows what was poured in within this, ms. */
const JUST_CHANGED_MS = 5 * 60_000;

/** Whether something was poured in or its flame changed since, ms. */
const wasChanged = (state: BoilState, pan: string, since: number): boolean =>
  state.marks.some(({ mark, at, withdrawn }) => {
    if (withdrawn || at < since) return false;
    return poursInto(mark, pan) || (mark.kind === 'flame' && mark.pan === pan);
  });

/** What goes in stands over the rim, by what was in it where that is known. */
function runsOver(
  mark: Mark & { litres?: number | undefined },
  pan: string,
  state: BoilState,
  t: number,
): string | null {
  const { name, vessel } = state.designs[pan] ?? { name: pan, vessel: null };
  const rim = vessel === null ? null : rimMm(vessel);
  if (vessel === null || rim === null) return null;
  const alone = depthAtLitres(vessel, mark.litres ?? 0) ?? 0;
  const all = readingOf(tried(mark, state, t), pan, t)?.depth_mm ?? 0;
  if (Math.max(alone, all) <= rim) return null;
  return `${name}: that is more than fits. It holds about ${(heldLitres(vessel) ?? 0).toFixed(1)} L up to its rim.`;
}

/** Taken from an empty pan, or more than is in it. */
function takesTooMuch(
  { litres, happened }: Mark & { litres?: number | undefined },
  pan: string,
  state: BoilState,
  t: number,
): string | null {
  const name = state.designs[pan]?.name ?? pan;
  const emptied = state.marks.findLast(({ mark, withdrawn }) => !withdrawn && empties(mark, pan));
  if (state.pans[pan]?.course.emptied === true && emptied !== undefined && (happened ?? t) >= emptied.at)
    return `${name} is empty: all of it was noted as taken out.`;
  // What was in it when it happened is not known now.
  const there = happened === undefined ? (readingOf(state, pan, t)?.litres ?? null) : null;
  if (litres === undefined || there === null || litres <= MORE_THAN_THERE * there) return null;
  return `${name}: that is more than is in it, about ${there.toFixed(1)} L.`;
}

/** Saps that differ by more of their sugar than this finish elsewhere: early and late maple do not, maple and birch do. */
const OTHER_SUGAR = 0.2;

/** Two saps in one pan have no finish that anybody could tell. */
function mixes({ from, to }: Mark & { kind: 'transfer' }, { designs }: BoilState): string | null {
  const [one, other] = [designs[from], designs[to]];
  if (one === undefined || other === undefined) return null;
  if (Math.abs(one.shares.sucrose - other.shares.sucrose) <= OTHER_SUGAR) return null;
  return `${one.name} and ${other.name} hold different saps: poured together they are neither, and their finish is not known.`;
}
