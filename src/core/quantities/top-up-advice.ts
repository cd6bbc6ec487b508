// Whether the time of a pan's least depth is worth telling as the time to top up.

interface Shown {
  stage: string;
  /** s from now; null is not known. */
  finish_in_s: number | null;
  top_up_in_s: number | null;
  /** °C */
  temperature_c: number | null;
  probe: string | null;
}

/**
 * Who is nearly there draws off, and pours nothing in: so none near the finish, and none that comes after it. A pan of
 * which no temperature was ever heard may stand cold: its least depth is a sum over nothing. How fast it still boils away
 * nobody knows while its probe says nothing.
 */
export function isTopUpAdvised({
  stage,
  finish_in_s: finish,
  top_up_in_s: topUp,
  temperature_c: celsius,
  probe,
}: Shown): boolean {
  if (topUp === null || stage === 'near-finish' || stage === 'off') return false;
  if (probe === 'lost' || probe === 'broken') return false;
  if (celsius === null && (stage === 'warming' || stage === 'unknown')) return false;
  return finish === null || topUp < finish;
}
