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

/** `hours` over 0; `litres` is all the sap that there is. null where the fires are not known. */
export function withinHours(hours: number, litres: number, hoursFor: HoursFor, z: number): WithinHours | null {
  const doneIn =
    (z: number) =>
    (one: number): number | null => {
      const { hours: middle, spread } = hoursFor(one);
      return middle === null ? null : middle * Math.exp(z * spread);
    };
  const middle = litresIn(hours, litres, doneIn(0));
  if (middle === null) return null;
  const surely = litresIn(hours, litres, doneIn(z))!;
  return {
    hours,
    boil_litres: middle,
    boil_litres_low: surely,
    boil_litres_high: litresIn(hours, litres, doneIn(-z))!,
    keep_litres: litres - surely,
  };
}

/** More sap never takes less time, so halving finds it, to a thousandth of itself: never nought, which could not be planned. */
function litresIn(hours: number, all: number, doneIn: (litres: number) => number | null): number | null {
  const whole = doneIn(all);
  if (whole === null) return null;
  if (whole <= hours) return all;
  let [low, high] = [0, all];
  while (high - low > high / 1000) {
    const middle = (low + high) / 2;
    if (doneIn(middle)! <= hours) low = middle;
    else high = middle;
  }
  return low;
}
