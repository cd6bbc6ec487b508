// Strength on the scale that a person reads: °Brix, degrees Baumé or specific gravity.
import {
  baumeFromBrix,
  brixFromBaume,
  brixFromSpecificGravity,
  specificGravityFromBrix,
  type StrengthScale,
} from '../physics/hydrometer.ts';

/** A strength on a scale; Baumé (modulus 145) and specific gravity at 60/60 °F, 0 to 85 °Bx; outside it null, as is no number. */
export function strengthFromBrix(brix: number, scale: StrengthScale): number | null {
  if (scale === 'baume') return baumeFromBrix(brix);
  if (scale === 'sg') return specificGravityFromBrix(brix);
  return Number.isFinite(brix) ? brix : null;
}

/** °Bx from a strength on a scale; what 0 to 85 °Bx gives, else null. */
export function brixFromStrength(value: number, scale: StrengthScale): number | null {
  if (scale === 'baume') return brixFromBaume(value);
  if (scale === 'sg') return brixFromSpecificGravity(value);
  return Number.isFinite(value) ? value : null;
}
