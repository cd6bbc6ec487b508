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
 * Who is nearly there draws off, and pours nothing in: so none near the finish, and none that comes after it.
 */
export function isTopUpAdvised(shown: Shown): boolean {
  const { stage, finish_in_s: finish, top_up_in_s: topUp } = shown;
  if (topUp === null || stage === 'near-finish' || !isCountBelieved(shown)) return false;
  return finish === null || topUp < finish;
}

/** A finish so near is waited for, s (judgement: who stands there takes it off). */
const AT_HAND_S = 120;

/** At its least depth or under it over live heat, with minutes still to go: nothing that is to be done later goes before that. */
export function isRunLow(shown: Shown): boolean {
  const { finish_in_s: finish, top_up_in_s: topUp, stage } = shown;
  return topUp === 0 && stage !== 'finished' && (finish === null || finish > AT_HAND_S) && isCountBelieved(shown);
}

/**
 * A pan of which no temperature was ever heard may stand cold: its least depth is a sum over nothing. How fast it still
 * boils away nobody knows while its probe says nothing.
 */
function isCountBelieved({ stage, temperature_c: celsius, probe }: Shown): boolean {
  if (stage === 'off' || probe === 'lost' || probe === 'broken') return false;
  return celsius !== null || (stage !== 'warming' && stage !== 'unknown');
}
