// What truly happens in a simulated boil, written down beside it, so that calls can be judged without the program.
import { depthMillimetres, litresAtTwenty, massKg, strengthBrix } from './liquid.ts';
import type { PanState } from './state.ts';

export type TruthWhat =
  | 'boil-began'
  | 'boil-stopped'
  | 'reached-finish'
  /** Less liquid over live heat than the pan's least depth. */
  | 'shallow'
  /** Hotter than the ceiling of a pan that is kept below a boil. */
  | 'passed-ceiling'
  | 'burned'
  | 'poured'
  | 'taken-off'
  | 'probe-lost'
  | 'probe-back'
  | 'port-lost'
  | 'port-back'
  | 'gap';

/** Quantities are those of the pan right after the moment: °Bx, litres at 20 °C, mm. */
export interface TruthMoment {
  t: number;
  what: TruthWhat;
  pan?: string;
  probe?: string;
  port?: string;
  brix?: number;
  litres?: number;
  depth_mm?: number;
}

export interface TruthSample {
  t: number;
  brix: number;
  litres: number;
  depth_mm: number;
  celsius: number;
}

export interface Truth {
  moments: TruthMoment[];
  /** Per pan, one sample every 10 s while it holds something. */
  tracks: Record<string, TruthSample[]>;
}

const sampleSeconds = 10;

/** A pan has to leave a limit by so much before it can pass it again. */
const deadband = { brix: 1, depthMm: 2, celsius: 0.5 };

const rounded = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(3));

function samplePan(pan: PanState, t: number): TruthSample {
  return {
    t,
    brix: rounded(strengthBrix(pan.liquid), 0.001),
    litres: rounded(litresAtTwenty(pan.liquid), 0.001),
    depth_mm: rounded(depthMillimetres(pan.liquid, pan.hearth.areaM2), 0.01),
    celsius: rounded(pan.liquid.celsius, 0.001),
  };
}

/** Writes down that this is truly so of a pan at t, ms of boil time, with what is in it then. */
export function noteTruth(truth: Truth, t: number, what: TruthWhat, pan: PanState): void {
  const { brix, litres, depth_mm } = samplePan(pan, t);
  truth.moments.push({ t, what, pan: pan.id, brix, litres, depth_mm });
}

/** Looks at a syrup pan once a second and writes down what has begun or ended since. */
export function watchPan(truth: Truth, pan: PanState, t: number, watts: number): void {
  if (massKg(pan.liquid) === 0) return;
  if (t % (sampleSeconds * 1000) === 0) (truth.tracks[pan.id] ??= []).push(samplePan(pan, t));
  const { passed } = pan;
  if (pan.boiling !== passed.boiling) {
    passed.boiling = pan.boiling;
    noteTruth(truth, t, pan.boiling ? 'boil-began' : 'boil-stopped', pan);
  }
  const brix = strengthBrix(pan.liquid);
  const depth = depthMillimetres(pan.liquid, pan.hearth.areaM2);
  const once = (
    key: 'finish' | 'shallow' | 'ceiling' | 'burned',
    is: boolean,
    over: boolean,
    what: TruthWhat,
  ): void => {
    if (is && !passed[key]) noteTruth(truth, t, what, pan);
    passed[key] = is || (passed[key] && !over);
  };
  once('finish', brix >= pan.finishBrix, brix < pan.finishBrix - deadband.brix, 'reached-finish');
  once('shallow', watts > 0 && depth < pan.minDepthMm, depth > pan.minDepthMm + deadband.depthMm, 'shallow');
  const { celsius } = pan.liquid;
  once('ceiling', celsius > pan.ceilingCelsius, celsius < pan.ceilingCelsius - deadband.celsius, 'passed-ceiling');
  once('burned', pan.burned, false, 'burned');
}

/** The true state of a pan at a time, straight between samples; null where the pan held nothing or had not begun. */
export function truthAt(truth: Truth, pan: string, t: number): TruthSample | null {
  const track = truth.tracks[pan] ?? [];
  const after = track.findIndex((sample) => sample.t >= t);
  const later = track[after];
  const earlier = later?.t === t ? later : track[after - 1];
  if (later === undefined || earlier === undefined || later.t - earlier.t > sampleSeconds * 1000) return null;
  const share = later.t > earlier.t ? (t - earlier.t) / (later.t - earlier.t) : 0;
  const between = (a: number, b: number): number => a + share * (b - a);
  return {
    t,
    brix: between(earlier.brix, later.brix),
    litres: between(earlier.litres, later.litres),
    depth_mm: between(earlier.depth_mm, later.depth_mm),
    celsius: between(earlier.celsius, later.celsius),
  };
}
