// Round numbers for an axis: steps of 1, 2 or 5 times a power of ten.
import { localDigits } from '../language/numbers.ts';
import type { Extent } from './lines-scale.ts';

/** At most `most` ticks from `least` to `greatest`, and two at least where two are allowed: one alone is no scale. */
export function niceTicks(least: number, greatest: number, most: number): number[] {
  const rough = (greatest - least) / Math.max(1, most);
  if (!(rough > 0)) return [least];
  const power = 10 ** Math.floor(Math.log10(rough));
  const steps = [0.5, 1, 2, 5, 10].map((each) => each * power);
  const place = steps.findIndex((each) => each >= rough);
  const ticks = everyStep(least, greatest, steps[place]!);
  if (ticks.length >= 2 || most < 2) return ticks;
  // In the next finer steps there are more than fit: the outermost span the scale.
  const finer = everyStep(least, greatest, steps[place - 1]!);
  return finer.length < 2 ? ticks : [finer[0]!, finer.at(-1)!];
}

function everyStep(least: number, greatest: number, step: number): number[] {
  const ticks: number[] = [];
  for (let n = Math.ceil(least / step); n * step <= greatest; n += 1) ticks.push(Number((n * step).toPrecision(12)));
  return ticks;
}

/** "5.20", "5.25" and "5.30" of 5.2, 5.25 and 5.3: the numbers of one axis have as many decimals as the one that needs most; with a true minus. */
export function tickNumbers(ticks: readonly number[]): string[] {
  const digits = Math.max(0, ...ticks.map((tick) => (String(tick).split('.')[1] ?? '').length));
  return ticks.map((tick) => tick.toFixed(digits).replace('-', '−'));
}

/** At most so many ticks of an axis, each with its number as the language writes it. */
export function plainTicks({ least, greatest }: Extent, most: number): { at: number; word: string }[] {
  const ticks = niceTicks(least, greatest, most);
  const numbers = tickNumbers(ticks);
  return ticks.map((at, place) => ({ at, word: localDigits(numbers[place]!) }));
}
