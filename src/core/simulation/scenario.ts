// What a simulated boil is made of: the header, the pans and their true heat, the probes' faults, and what people do.
import type { Header, Mark, SugarShares } from '../boil/entries.ts';

/** A point of a line of station pressure; between two points it is straight. */
export interface PressurePoint {
  t: number;
  hpa: number;
}

/** How a fire really behaves, in place of what its kind does. */
export interface FirePlan {
  /** Coloured noise on its strength: share of the mean, and how long it remembers itself, s. */
  flutter: { spread: number; memorySeconds: number };
  /** A slow swing by a share of the mean; each period is drawn anew between the two, s. */
  swing?: { share: number; periodSeconds: [number, number] };
}

/** Episodes of foam in a boiling pan from a strength on: a tip in it reads off and shakes. */
export interface FoamPlan {
  fromBrix: number;
  offsetCelsius: number;
  /** Added to the probe's own noise, °C. */
  noiseCelsius: number;
  /** Mean lengths of an episode and of the quiet between two, s. */
  lastsSeconds: number;
  restsSeconds: number;
}

/** The true state of a pan of the header at t = 0, and how well it takes heat. */
export interface ScenarioPan {
  id: string;
  /** Litres counted at 20 °C. */
  litres: number;
  brix: number;
  celsius: number;
  /** Burner's level, 0 to 1. */
  level: number;
  /** Share of the burner's power that reaches the liquid, 0 to 1. */
  efficiency: number;
  /** Heat lost through walls and rim per degree above the air, W/K. */
  lossWattsPerKelvin: number;
  /** What the header does not know or has wrong; unless set, the header is right. */
  shares?: SugarShares;
  powerWatts?: number;
  areaM2?: number;
  fire?: FirePlan;
  foam?: FoamPlan;
}

export interface ScenarioPort {
  id: string;
  /** Milliseconds between two lines, and of the first line after t = 0. */
  periodMs: number;
  phaseMs: number;
}

export interface ScenarioProbe {
  id: string;
  /** Time constant of the tip in liquid, s. */
  lagSeconds: number;
  /** A second time constant behind the first (sheath, then sensor), s; none unless set. */
  secondLagSeconds?: number;
  /** Heat at the tip's place over the liquid's own while it boils: wanders between 0 and the most, °C. */
  superheat?: { mostCelsius: number; memorySeconds: number };
  /** What the line says too much before the header's offset_c, °C. */
  biasCelsius: number;
  /** Standard deviation from one line to the next, boiling and electronics together, °C. */
  noiseCelsius: number;
  resolutionCelsius: number;
  /** Wild values that last one line. */
  spikesPerHour: number;
  /** Height of the tip over the bottom, mm: in shallower liquid it hangs in the steam. */
  tipMm: number;
}

/** `open`: the device says nan. `silent`: the channel is missing from the line. `out`: lifted out of the liquid. */
export type ProbeFault = 'none' | 'open' | 'silent' | 'out';

/** One thing that happens at somebody's hand or by accident. */
export type Act =
  | { act: 'pour'; pan: string; litres: number; brix: number; celsius: number }
  | { act: 'transfer'; from: string; to: string; litres: number | 'all' }
  | { act: 'draw-off'; pan: string; litres: number | 'all' }
  | { act: 'flame'; pan: string; level: number }
  | { act: 'move-probe'; probe: string; pan: string | null }
  /** Looks that change nothing: the true value is read with a plausible error and noted. */
  | { act: 'read-pressure' }
  /** `errorCelsius` is how far off the check is, instead of a good one's error by chance. */
  | { act: 'check-water'; probe: string; errorCelsius?: number }
  | { act: 'measure-density'; pan: string; instrument: 'hydrometer' | 'refractometer' }
  | { act: 'measure-depth'; pan: string }
  | { act: 'read-by-hand'; pan: string }
  /** A mark that is noted as it stands and changes nothing in the pans. */
  | { act: 'note'; mark: Mark }
  | { act: 'probe'; probe: string; fault: ProbeFault }
  | { act: 'port'; port: string; state: 'lost' | 'open' }
  /** The program does not run for so long: nothing is written down. */
  | { act: 'gap'; seconds: number };

export type Sight = 'brix-above' | 'depth-below' | 'celsius-above' | 'celsius-below';

export type When =
  /** Milliseconds of boil time. */
  | { at: number }
  | {
      sight: Sight;
      pan: string;
      /** °Bx, mm or °C. */
      value: number;
      /** Looked for only between these times, ms. */
      from?: number;
      until?: number;
      /** A person gets there so much later, s. */
      delaySeconds?: number;
      /** How often it may happen, 1 unless set, and how long it then rests, s. */
      times?: number;
      restSeconds?: number;
    };

export interface Deed {
  when: When;
  acts: Act[];
  /** Only where what was seen is still so when they get there: somebody else may have done it meanwhile. */
  looksAgain?: boolean;
  /** Typed so many seconds after it was done, somewhere between the two; at once unless set. */
  late?: [number, number];
  /** Share of times that it is never typed, 0 to 1; 0 unless set. */
  forgotten?: number;
  /** Share of times that litres or depth are typed wrong by the factor. */
  misread?: { share: number; factor: number };
  /** Share of times that it is typed twice. */
  doubled?: number;
}

export interface Scenario {
  seed: number;
  header: Header;
  /** When the boil is ended, ms. */
  endsAt: number;
  /** While a pan is still on a lit fire its end waits, until this at the latest, ms; it does not wait unless set. */
  waitsUntil?: number;
  air: {
    celsius: number;
    /** Mean wind over the pans and how much it changes, m/s. */
    windMetresPerSecond: number;
    windSpread: number;
    /** How long a gust remembers itself, s; 90 unless set. */
    gustSeconds?: number;
    pressure: PressurePoint[];
  };
  pans: ScenarioPan[];
  ports: ScenarioPort[];
  probes: ScenarioProbe[];
  deeds: Deed[];
}
