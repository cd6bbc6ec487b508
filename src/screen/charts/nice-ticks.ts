// Round numbers for an axis: steps of 1, 2 or 5 times a power of ten.

/** At most `most` ticks (one at least) from `least` to `greatest`. */
export function niceTicks(least: number, greatest: number, most: number): number[] {
  const rough = (greatest - least) / Math.max(1, most);
  if (!(rough > 0)) return [least];
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough) ?? 10 * power;
  const ticks: number[] = [];
  for (let n = Math.ceil(least / step); n * step <= greatest; n += 1) ticks.push(Number((n * step).toPrecision(12)));
  return ticks;
}
