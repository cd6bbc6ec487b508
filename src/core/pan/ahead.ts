// What a pan's thermometer is expected to show from now on, with its middle 80 %, by the forecast's own law.
import { riseFromStrength } from '../physics/sugar-solution.ts';
import { waterOf } from './filter/belief.ts';
import { brixOfWaterPerSugar, waterPerSugar } from './filter/liquid.ts';
import { type Look, timeToStrength } from './forecast.ts';

/** Times in ms of boil time, temperatures in °C; a pan that would be beyond its scorch limit stands at it. */
export interface Ahead {
  t: number[];
  low: number[];
  middle: number[];
  high: number[];
}

/** Between two of so many strengths, and of so many times, the curve is as good as straight. */
const STRENGTHS = 24;
const TIMES = 60;
/** Further ahead than this nobody looks at a curve, s. */
const FURTHEST_S = 4 * 3600;

/** A strength of the way ahead, and the s from now at which it is reached: at the soonest, most likely, at the latest. */
interface Step {
  celsius: number;
  low: number;
  middle: number;
  high: number;
}

/** From now to the latest that the finish is expected, if the fire stays and nothing is poured in; null where that is not known. */
export function aheadOf(look: Look): Ahead | null {
  const { now, setting, t } = look;
  const { finish, scorch } = setting.around.limits;
  const left = timeToStrength(look, finish.brix);
  if (now === null || left === null || left.seconds <= 0) return null;
  const steps = stepsTo(look, scorch.brix);
  if (steps.length < 2) return null;
  const end = Math.min(left.high, FURTHEST_S);
  const seconds = Array.from({ length: TIMES + 1 }, (_, i) => (end * i) / TIMES);
  // What comes soonest is hottest at any one time.
  return {
    t: seconds.map((s) => Math.round(t + s * 1000)),
    low: seconds.map((s) => shownAt(steps, 'high', s)),
    middle: seconds.map((s) => shownAt(steps, 'middle', s)),
    high: seconds.map((s) => shownAt(steps, 'low', s)),
  };
}

/** The way from the strength now to another, °Bx: each step takes the same share of the water, for the end is steep. */
function stepsTo(look: Look, brix: number): Step[] {
  const u = waterOf(look.now!);
  const end = waterPerSugar(brix);
  const steps: Step[] = [];
  for (let i = 0; i <= STRENGTHS; i++) {
    const there = brixOfWaterPerSugar(u * (end / u) ** (i / STRENGTHS));
    const celsius = celsiusOf(look, there);
    const left = i === 0 ? { low: 0, seconds: 0, high: 0 } : timeToStrength(look, there);
    if (celsius === null || left === null) continue;
    const before = steps.at(-1);
    steps.push({
      celsius,
      low: Math.max(before?.low ?? 0, left.low),
      middle: Math.max(before?.middle ?? 0, left.seconds),
      high: Math.max(before?.high ?? 0, left.high),
    });
  }
  return steps;
}

/** What the thermometer shows in a pan of a strength at today's water point. */
function celsiusOf({ setting }: Look, brix: number): number | null {
  const { waterC, pressureHpa, sapShare } = setting.around;
  const riseC = riseFromStrength(brix, setting.design.shares, pressureHpa ?? 1013.25);
  return waterC === null || riseC === null ? null : waterC + riseC * (1 + sapShare);
}

/** The temperature after so many s, on the straight line between two steps; beyond the last as there. */
function shownAt(steps: readonly Step[], when: 'low' | 'middle' | 'high', seconds: number): number {
  const next = steps.findIndex((step) => step[when] >= seconds);
  const to = next < 0 ? steps.at(-1)! : steps[next]!;
  const from = next < 0 ? to : steps[Math.max(0, next - 1)]!;
  const share = to[when] === from[when] ? 0 : (seconds - from[when]) / (to[when] - from[when]);
  return Math.round((from.celsius + (to.celsius - from.celsius) * share) * 1000) / 1000;
}
