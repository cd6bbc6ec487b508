// How much stands in a vessel at a depth, how deep it stands with so much in it, and how wide its surface is.
import type { Vessel } from '../boil/entries.ts';

type Sloped = Vessel & { shape: 'round-sloped' };
type Row = { mm: number; litres: number };

/** One litre is one square metre, one millimetre deep: areas in m² times depths in mm are litres. */
const circleM2 = (diameterMm: number): number => (Math.PI / 4) * (diameterMm / 1000) ** 2;

/**
 * Litres as they stand, hot or cold, at a depth of 0 mm or more; null for what is no depth.
 * A wall or a fill table that ends below goes on as it ended, for a rim is where people stop measuring; a table
 * starts at nothing at the bottom. A wall that closes like a tent gives null above its point.
 */
export function litresAtDepth(vessel: Vessel, mm: number): number | null {
  if (!(mm >= 0 && mm < Infinity)) return null;
  if (vessel.shape === 'round-sloped') return litresInCone(vessel, mm);
  if (vessel.shape === 'measured') return litresInTable(vessel.fill, mm);
  return surfaceM2(vessel, mm) * mm;
}

/** Depth at which so many litres stand, hot or cold, mm; what litresAtDepth undoes. 0 or more litres, else null. */
export function depthAtLitres(vessel: Vessel, litres: number): number | null {
  if (!(litres >= 0 && litres < Infinity)) return null;
  if (vessel.shape === 'round-sloped') return depthInCone(vessel, litres);
  if (vessel.shape === 'measured') return depthInTable(vessel.fill, litres);
  return litres / surfaceM2(vessel, 0);
}

/** Free surface at a depth, m²: in a fill table the litres per millimetre there; 0 above a wall that closed. */
export function surfaceM2(vessel: Vessel, mm: number): number {
  if (vessel.shape === 'round') return circleM2(vessel.diameter_mm);
  if (vessel.shape === 'rectangular') return (vessel.length_mm / 1000) * (vessel.width_mm / 1000);
  if (vessel.shape === 'round-sloped') return circleM2(Math.max(0, diameterAt(vessel, mm)));
  const [below, above] = stretch(vessel.fill, (row) => row.mm > mm);
  return (above.litres - below.litres) / (above.mm - below.mm);
}

const growthPerMm = (cone: Sloped): number => (cone.top_diameter_mm - cone.bottom_diameter_mm) / cone.height_mm;
const diameterAt = (cone: Sloped, mm: number): number => cone.bottom_diameter_mm + growthPerMm(cone) * mm;

/** A frustum: V = π h (d0² + d0 d + d²) / 12. */
function litresInCone(cone: Sloped, mm: number): number | null {
  const bottom = cone.bottom_diameter_mm;
  const surface = diameterAt(cone, mm);
  if (surface < 0) return null;
  return (Math.PI * mm * (bottom * bottom + bottom * surface + surface * surface)) / 12 / 1e6;
}

/** The frustum's volume is π (d³ - d0³) / (12 s) with s the growth of the diameter per depth: its root is exact. */
function depthInCone(cone: Sloped, litres: number): number | null {
  const bottom = cone.bottom_diameter_mm;
  const growth = growthPerMm(cone);
  const share = (12 * litres * 1e6 * growth) / (Math.PI * bottom ** 3);
  if (share < -1) return null;
  // Where the wall hardly leans the root would be a difference of nearly equal numbers.
  if (Math.abs(share) < 1e-8) return litres / circleM2(bottom);
  return (bottom * (Math.cbrt(1 + share) - 1)) / growth;
}

function litresInTable(fill: readonly Row[], mm: number): number {
  const [below, above] = stretch(fill, (row) => row.mm >= mm);
  const share = Math.max(0, (mm - below.mm) / (above.mm - below.mm));
  return below.litres + share * (above.litres - below.litres);
}

/** A table may begin with litres at depth 0, in a hollow bottom: less than those stand no deeper than 0. */
function depthInTable(fill: readonly Row[], litres: number): number {
  const [below, above] = stretch(fill, (row) => row.litres >= litres);
  const rise = above.litres - below.litres;
  const share = rise > 0 ? Math.max(0, (litres - below.litres) / rise) : 0;
  return below.mm + share * (above.mm - below.mm);
}

/** The two rows between which something lies: the first row that reaches it and the one before; at the top the last two. */
function stretch(fill: readonly Row[], reaches: (row: Row) => boolean): [Row, Row] {
  const bottom = { mm: 0, litres: 0 };
  const rows = fill[0]?.mm === 0 ? fill : [bottom, ...fill];
  const found = rows.findIndex((row, i) => i > 0 && reaches(row));
  const above = found < 0 ? rows.length - 1 : found;
  return [rows[above - 1] ?? bottom, rows[above] ?? bottom];
}
