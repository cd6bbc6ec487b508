// How strong a pan of cold sap is by the plan, as the screen and the plan that is under way both take it.
import { counts, empties, poursInto } from '../core/boil/mark-flow.ts';
import { sugarShares } from '../core/physics/sugar-shares.ts';
import { riseFromStrength } from '../core/physics/sugar-solution.ts';
import type { PanReading } from '../core/pan/reading.ts';
import type { Now } from './messages.ts';

type MarkSeen = Pick<Now['marks'][number], 'at' | 'mark' | 'withdrawn' | 'questioned'>;

/** A pan that does not boil yet, of which no instrument and no thermometer tells how strong it is. */
function isColdSap({ stage, brix, rise_c: rise }: PanReading, boilsAtC = 0): boolean {
  if ((stage !== 'warming' && stage !== 'unknown') || brix !== null) return false;
  // So hot it may have boiled for a while, and is stronger.
  return rise === null || rise < boilsAtC;
}

/** A probe shows so much more of a rise than there is, share (practice): its own error and the bubbles. */
const SHOWS_MORE = 0.1;

/** Up to this rise what was noted so strong has not boiled on, °C: no sap rises less than maple's. */
const boilsAtC = (brix: number): number =>
  (1 + SHOWS_MORE) * (riseFromStrength(brix, sugarShares('maple'), 1013.25) ?? 0);

/** The plan's strength of sap, °Bx, of a pan that holds nothing else yet as far as anybody noted; null for any other. */
export function plannedStrength({ header, marks }: Pick<Now, 'header' | 'marks'>, reading: PanReading): number | null {
  if (!isColdSap(reading) || reading.litres === null) return null;
  const others = marks.some(
    (each) =>
      counts(each) && poursInto(each.mark, reading.pan) && (each.mark.kind === 'transfer' || 'brix' in each.mark),
  );
  const { brix } = (header as { plan?: { brix?: unknown } | null } | null)?.plan ?? {};
  return !others && typeof brix === 'number' && brix > 0 ? brix : null;
}

/** kg of a litre of sap, of its strength in °Bx: near enough to weigh saps against each other. */
const kgPerLitre = (brix: number): number => 1 + 0.004 * brix;

/**
 * Strength of a pan of cold sap of which each pour was noted with its strength, °Bx: that of all of it; null for any
 * other.
 */
export function notedStrength({ marks }: Pick<Now, 'marks'>, reading: PanReading): number | null {
  if (reading.litres === null) return null;
  const counted = marks.filter(counts).toSorted((a, b) => a.at - b.at);
  const since = counted.slice(counted.findLastIndex((each) => empties(each.mark, reading.pan)) + 1);
  const poured = since.filter((each) => poursInto(each.mark, reading.pan));
  let [sugar, mass] = [0, 0];
  for (const { mark } of poured) {
    if (mark.kind !== 'top-up' || mark.brix === undefined) return null;
    if (mark.litres === undefined && poured.length > 1) return null;
    const kg = (mark.litres ?? 1) * kgPerLitre(mark.brix);
    sugar += kg * mark.brix;
    mass += kg;
  }
  if (mass <= 0 || !isColdSap(reading, boilsAtC(sugar / mass))) return null;
  return sugar / mass;
}

/** Strength of the sap that was poured cold into a pan, °Bx: as typed last, else `sapBrix`; null for a pan that holds anything else. */
export function coldStrength(marks: readonly MarkSeen[], reading: PanReading, sapBrix: number): number | null {
  if (!isColdSap(reading)) return null;
  const poured = marks.filter((each) => counts(each) && poursInto(each.mark, reading.pan));
  if (poured.some(({ mark }) => mark.kind === 'transfer')) return null;
  const typed = poured.flatMap(({ mark }) => ('brix' in mark && typeof mark.brix === 'number' ? [mark.brix] : []));
  return typed.at(-1) ?? sapBrix;
}
