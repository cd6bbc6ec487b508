// How much sap is surely boiled all the way to syrup before somebody has to leave, and how much is then kept for another day.

export interface WithinHours {
  hours: number;
  /** Litres of this sap that become syrup in that time with even odds. */
  boil_litres: number;
  /** With nine chances in ten, and with one: the middle 80 %. Nobody leaves a fire, so the first is what to boil. */
  boil_litres_low: number;
  boil_litres_high: number;
  /** What is then left of the sap that there is: all but `boil_litres_low`. */
  keep_litres: number;
}

/** What `litres` of the same sap over the same fires would take, h, with the standard deviation of its logarithm. */
export type HoursFor = (litres: number) => { hours: number | null; spread: number };

/**
 * `hours` over 0; `litres` is all the sap that there is. From `turns` on, L, another vessel can finish, so that more sap
 * may take less time there. null where the fires are not known.
 */
export function withinHours(
  hours: number,
  litres: number,
  turns: readonly number[],
  hoursFor: HoursFor,
  z: number,
): WithinHours | null {
  const doneIn =
    (z: number) =>
    (one: number): number | null => {
      const { hours: middle, spread } = hoursFor(one);
      return middle === null ? null : middle * Math.exp(z * spread);
    };
  const ends = [...turns.filter((turn) => turn < litres).sort((a, b) => a - b), litres];
  const middle = litresIn(hours, ends, doneIn(0));
  if (middle === null) return null;
  const surely = litresIn(hours, ends, doneIn(z))!;
  return {
    hours,
    boil_litres: middle,
    boil_litres_low: surely,
    boil_litres_high: litresIn(hours, ends, doneIn(-z))!,
    keep_litres: litres - surely,
  };
}

/**
 * The most that is done in time, to a thousandth of it and never nought, which could not be planned. Up to each of `ends`
 * more sap never takes less time, so halving finds it there.
 */
function litresIn(hours: number, ends: readonly number[], doneIn: (litres: number) => number | null): number | null {
  const all = ends.at(-1)!;
  const whole = doneIn(all);
  if (whole === null) return null;
  if (whole <= hours) return all;
  const from = Math.max(
    0,
    ends.findLastIndex((turn) => turn < all && doneIn(turn)! <= hours),
  );
  let [low, high] = doneIn(ends[from]!)! <= hours ? [ends[from]!, ends[from + 1] ?? all] : [0, ends[from]!];
  while (high - low > high / 1000) {
    const middle = (low + high) / 2;
    if (doneIn(middle)! <= hours) low = middle;
    else high = middle;
  }
  return low;
}
