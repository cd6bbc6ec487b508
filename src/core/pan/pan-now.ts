// What is said of a pan at one moment, of which some is worked out only when it is asked for: alarms look every five seconds and want little.
import { Z80 } from '../quantities/spread.ts';
import { brixOfWaterPerSugar } from './filter/liquid.ts';
import {
  countToLow,
  depthMm,
  evaporation,
  litresNow,
  type Look,
  THERE,
  type TimeLeft,
  timeToStrength,
} from './forecast.ts';
import { USEFUL_SHARE } from './filter/mix.ts';
import type { PanReading, ProbeState, Stage } from './reading.ts';

/** How strong a pan is believed to be. */
export interface Strength {
  /** °Bx */
  brix: number;
  /** Water per sugar, kg/kg. */
  u: number;
  /** Standard deviation of its logarithm. */
  sigma: () => number;
}

/** Steam known worse than this is better called not known, standard deviation of its logarithm. */
const USEFUL_STEAM = 0.5;

/** A reading that stands for as long as its pan has not gone on. Accessors of a class cost nothing to make, those of a literal do. */
export class PanNow implements PanReading {
  readonly pan: string;
  readonly water_c: number | null;
  readonly brix: number | null;
  temperature_c: number | null = null;
  rise_c: number | null = null;
  rate_c_per_min: number | null = null;
  finish_in_s: number | null = null;
  finish_low_s: number | null = null;
  finish_high_s: number | null = null;
  top_up_in_s: number | null = null;
  stage: Stage = 'unknown';
  probe: ProbeState | null = null;
  readonly #look: Look;
  readonly #strength: Strength | null;
  readonly #shallow: TimeLeft | null;

  /** `shallow` is the time until it is too shallow for live heat. */
  constructor(look: Look, strength: Strength | null, shallow: TimeLeft | null) {
    this.pan = look.setting.design.id;
    this.water_c = look.setting.around.waterC;
    this.brix = strength?.brix ?? null;
    this.#look = look;
    this.#strength = strength;
    this.#shallow = shallow;
  }

  get brix_low(): number | null {
    const strength = this.#strength;
    return strength === null ? null : brixOfWaterPerSugar(strength.u * Math.exp(Z80 * strength.sigma()));
  }

  get brix_high(): number | null {
    const strength = this.#strength;
    return strength === null ? null : brixOfWaterPerSugar(strength.u / Math.exp(Z80 * strength.sigma()));
  }

  get litres(): number | null {
    return litresNow(this.#look);
  }

  get depth_mm(): number | null {
    return depthMm(this.#look, litresNow(this.#look));
  }

  get evaporation_l_per_h(): number | null {
    const steam = evaporation(this.#look);
    return steam === null || steam.sigma > USEFUL_STEAM ? null : steam.kgPerS * 3600;
  }

  /** Until it is too strong for live heat. What its thermometer shows beyond that is there, however belief lags behind. */
  tooStrong(): TimeLeft | null {
    const { around, design } = this.#look.setting;
    const { riseC, brix } = around.limits.scorch;
    if (around.waterC === null) return null;
    const isShown = this.probe !== null && this.rise_c !== null && riseC !== null && this.rise_c >= riseC;
    const left = timeToStrength(this.#look, brix);
    return left !== null && isShown && design.ceilingC === null ? THERE : left;
  }

  /** Until it may be low by a count that is too unsure to be said as a time, s. */
  mayBeLow(): number | null {
    return countToLow(this.#look, this.#look.setting.design.minDepthMm);
  }

  get scorch_in_s(): number | null {
    if (this.#look.fell) return null;
    const shallow = this.#look.litresShare < USEFUL_SHARE ? this.#shallow : null;
    return earlier(this.tooStrong(), shallow)?.seconds ?? null;
  }

  /** All of it, to be kept; the fields in the order of a `reading` line. */
  whole(): PanReading {
    return {
      pan: this.pan,
      temperature_c: this.temperature_c,
      water_c: this.water_c,
      rise_c: this.rise_c,
      rate_c_per_min: this.rate_c_per_min,
      brix: this.brix,
      brix_low: this.brix_low,
      brix_high: this.brix_high,
      litres: this.litres,
      depth_mm: this.depth_mm,
      evaporation_l_per_h: this.evaporation_l_per_h,
      finish_in_s: this.finish_in_s,
      finish_low_s: this.finish_low_s,
      finish_high_s: this.finish_high_s,
      scorch_in_s: this.scorch_in_s,
      top_up_in_s: this.top_up_in_s,
      stage: this.stage,
      probe: this.probe,
    };
  }
}

/** A pan burns when it is too strong or too shallow for live heat, whichever comes first; null while neither is known. */
const earlier = (one: TimeLeft | null, other: TimeLeft | null): TimeLeft | null =>
  one === null || (other !== null && other.seconds < one.seconds) ? other : one;
