// What the time to a finish, and the temperatures at which a pan is done and burns, rest on.
import { waterPerSugar } from '../pan/filter/liquid.ts';
import { sugarRiseSigmaC } from '../pan/pan-state.ts';
import type { Limit } from '../pan/limits.ts';
import type { PanReading } from '../pan/reading.ts';
import type { Origin } from '../quantities/measured.ts';
import { Z80 } from '../quantities/spread.ts';
import { explainRise, explainWater } from './baseline-view.ts';
import { evaporationPart, explainLitres } from './explain-contents.ts';
import { sapPart } from './explain-heat.ts';
import { bare, type Bare, NOT_KNOWN, ranged, scaled } from './explanation.ts';
import type { BoilState } from './state.ts';

/** Water point and probe error, °C, without the reading itself; only the water point while the pan has no rise. */
function basePartsC(state: BoilState, pan: string): Origin[] {
  const rise = explainRise(state, pan);
  return rise === null ? [...(explainWater(state)?.origins ?? [])] : rise.origins.slice(1);
}

/** Seconds until the finish. What is left of its range after rise and sap is how fast the water goes. */
export function explainFinish(state: BoilState, reading: PanReading): Bare {
  const { finish_in_s: seconds, finish_low_s: low, finish_high_s: high, pan } = reading;
  if (seconds === null) return NOT_KNOWN;
  const known = [...finishPartsS(state, reading), ...countPartsS(state, reading)];
  const sigma = ((high ?? seconds) - seconds) / Z80;
  const rest = sigma * sigma - known.reduce((sum, part) => sum + part.sigma * part.sigma, 0);
  const going = { ...evaporationPart(state, pan, seconds), sigma: -Math.sqrt(Math.max(0, rest)) };
  return ranged(seconds, low, high, [...known, going]);
}

/** What water point, probe and sap bring to the time, s: a degree of rise at the finish is so much water per sugar. */
function finishPartsS(state: BoilState, { brix, finish_in_s: seconds, pan }: PanReading): Origin[] {
  const { finish } = state.around[pan]!.limits;
  const toGo = brix === null ? 0 : waterPerSugar(brix) - waterPerSugar(finish.brix);
  if (toGo <= 0 || seconds === null) return [];
  const sPerC = (finish.waterPerSugarPerC * seconds) / toGo;
  return scaled([...basePartsC(state, pan), sapPart(state, pan, finish.riseC ?? 0)], sPerC);
}

/** Where the strength is not known, the time is by the count of sugar and water alone. */
function countPartsS(state: BoilState, reading: PanReading): Origin[] {
  const { brix, finish_in_s: seconds, litres } = reading;
  if (brix !== null || seconds === null || litres === null || litres <= 0) return [];
  return scaled(explainLitres(state, reading).parts, seconds / litres).filter(({ kind }) => kind !== 'nominal-power');
}

/** The temperature of the finish now, °C. A finish that was given as a rise needs no model. */
export function explainFinishPoint(state: BoilState, pan: string, celsius: number | null): Bare {
  const { ceilingC, finishRiseC } = state.designs[pan]!;
  return explainPoint(state, pan, state.around[pan]!.limits.finish, {
    celsius: ceilingC === null ? celsius : null,
    byRise: finishRiseC !== null,
  });
}

/** The temperature at which the pan burns, °C, or the ceiling that was set for it. */
export function explainScorchPoint(state: BoilState, pan: string, celsius: number | null): Bare {
  const { ceilingC } = state.designs[pan]!;
  if (ceilingC !== null) return bare(ceilingC, 0, []);
  return explainPoint(state, pan, state.around[pan]!.limits.scorch, { celsius, byRise: false });
}

function explainPoint(
  state: BoilState,
  pan: string,
  { riseC }: Limit,
  { celsius, byRise }: { celsius: number | null; byRise: boolean },
): Bare {
  if (celsius === null || riseC === null) return NOT_KNOWN;
  const around = state.around[pan]!;
  const sap = byRise ? [] : [sapPart(state, pan, riseC)];
  const sigma = byRise ? around.waterSigmaC : sugarRiseSigmaC(around, riseC);
  return bare(celsius, sigma, [...basePartsC(state, pan), ...sap]);
}
