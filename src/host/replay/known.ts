// What was expected of each pan at a moment of a boil, beside what came later: "it said 16:40, it was 16:47".
import type { Finished } from '../../core/compare/finishes.ts';
import type { PanKnown } from '../../protocol/replay-messages.ts';
import { LOOK_MS, type Looks } from './looks.ts';

/** At t, ms of boil time. A finish beyond the one that was next then is of another batch, and says nothing. */
export function knownAt(looks: Looks, finishes: readonly Finished[], t: number): PanKnown[] {
  return looks.pans.map((pan) => {
    const said = saidAt(looks, pan, Math.floor(t / LOOK_MS));
    const next = finishes.find((one) => one.pan === pan && one.at > t);
    const was = next === undefined ? null : { at: next.at, by: next.by };
    // What was taken off unfinished does not tell when it would have been.
    const bothKnown = said !== null && was !== null && was.by !== 'unfinished';
    return {
      pan,
      said,
      was,
      later_s: bothKnown ? Math.round((was.at - said.at) / 1000) : null,
      inRange: bothKnown && said.low !== null && said.high !== null ? was.at >= said.low && was.at <= said.high : null,
    };
  });
}

function saidAt(looks: Looks, pan: string, number: number): PanKnown['said'] {
  const time = (seconds: number | null): number | null =>
    seconds === null ? null : Math.round(number * LOOK_MS + seconds * 1000);
  const at = time(looks.at(pan, 'in', number));
  if (at === null) return null;
  return { at, low: time(looks.at(pan, 'inLow', number)), high: time(looks.at(pan, 'inHigh', number)) };
}
