// What is asked back about a mark before it is noted.
import type { Header, Mark } from '../core/boil/entries.ts';
import { pressureDoubt } from '../core/physics/pressure-doubt.ts';
import type { PressureUnit } from '../core/quantities/units.ts';

/** A sentence in the person's unit where a pressure can hardly be meant; null for all else. */
export function doubtAbout(mark: Mark, header: Header, unit: PressureUnit): string | null {
  if (mark.kind !== 'pressure') return null;
  const { hpa, at = 'station', outdoor_celsius: outdoorC = null } = mark;
  return pressureDoubt({ hpa, at, altitudeM: header.site?.altitude_m ?? null, outdoorC }, unit);
}
