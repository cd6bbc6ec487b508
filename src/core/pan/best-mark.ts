// Which mark would narrow the forecast of a pan most, by trying on the model what each of them would tell.
import { Z80 } from '../quantities/spread.ts';
import { addVariance, type Belief, copyBelief, learn, OFFSET, SIZE, SUGAR, waterOf } from './filter/belief.ts';
import { brixOfWaterPerSugar, litresOf } from './filter/liquid.ts';
import { massShareOf } from './filter/mix.ts';
import { seeLitres, seeWater } from './filter/see.ts';
import { type Look, timeToStrength } from './forecast.ts';

/** What each mark would show, with its usual error. */
export type Trial =
  | { mark: 'depth' | 'top-up'; share: number }
  | { mark: 'density'; sigmaBrix: number }
  /** Of water point and probe together, °C. */
  | { mark: 'water-check' | 'pressure'; sigmaC: number };
export type AskedMark = Trial['mark'];

/** A forecast whose middle 80 % reaches no further than this to either side is good enough: nobody is asked. */
const GOOD_SHARE = 0.3;
/** Nor is anybody asked for a few minutes, s. */
const GOOD_SECONDS = 600;
/** A mark that leaves more of the range than this is not worth the walk. */
const WORTH_SHARE = 0.75;
/** What was supposed of an amount that nobody told is no more than a guess: variance of its logarithm. */
const ANY_AMOUNT_VARIANCE = 1.5 ** 2;

/** The one of the marks that would narrow the time to the finish most; null where it is known well, or none would help. */
export function bestMark(look: Look, trials: readonly Trial[]): AskedMark | null {
  const { brix } = look.setting.around.limits.finish;
  const left = timeToStrength(look, brix);
  if (look.now === null || (left !== null && isGood(left))) return null;
  const before = left?.sigma ?? Infinity;
  let best: { mark: AskedMark; sigma: number } | null = null;
  for (const trial of trials) {
    const sigma = timeToStrength(after(look, look.now, trial), brix)?.sigma ?? Infinity;
    if (sigma < WORTH_SHARE * before && sigma < (best?.sigma ?? Infinity)) best = { mark: trial.mark, sigma };
  }
  return best?.mark ?? null;
}

function isGood({ sigma, low, high }: { sigma: number; low: number; high: number }): boolean {
  return Math.expm1(Z80 * sigma) <= GOOD_SHARE || high - low <= GOOD_SECONDS;
}

/** The pan as it would be known after a mark that says just what is expected. */
function after(look: Look, now: Belief, trial: Trial): Look {
  const belief = copyBelief(now);
  const course = { ...look.pan.course };
  const u = waterOf(belief);
  if ('share' in trial) {
    if (!course.told) addVariance(belief, SUGAR, SUGAR, ANY_AMOUNT_VARIANCE);
    seeLitres(belief, litresOf(Math.exp(belief.x[SUGAR]!), u), trial.share);
    course.told = true;
  } else if ('sigmaBrix' in trial) {
    seeWater(belief, u, (100 / brixOfWaterPerSugar(u) ** 2) * trial.sigmaBrix);
    course.strengthTold = true;
  } else {
    const slopes = new Array<number>(SIZE).fill(0);
    slopes[OFFSET] = 1;
    learn(belief, { miss: 0, slopes, variance: trial.sigmaC ** 2 });
  }
  const litresShare = course.told ? massShareOf(belief) : Infinity;
  return { ...look, now: belief, pan: { ...look.pan, course }, litresShare };
}
