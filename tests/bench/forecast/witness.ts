// Runs a simulated boil: its recording as text for the program, and beside it what is true, which the program never sees.
import type { Entry, Mark, SugarShares } from '../../../src/core/boil/entries.ts';
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { depthMillimetres, litresAtTwenty, massKg, strengthBrix } from '../../../src/core/simulation/liquid.ts';
import type { Scenario } from '../../../src/core/simulation/scenario.ts';
import { stepSimulation } from '../../../src/core/simulation/simulate.ts';
import { startSimulation, type PanState, type SimulationState } from '../../../src/core/simulation/state.ts';
import type { TruthMoment } from '../../../src/core/simulation/truth.ts';

export const SAMPLE_MS = 10_000;
const ALIKE_C = 0.1;
/** Somebody ends the boil once every pan has been off for so long. */
const IDLE_MS = 10 * 60_000;

/** The true state of a pan; of one that is off or empty the quantities are 0. */
export interface Sample {
  t: number;
  brix: number;
  /** At 20 °C. */
  litres: number;
  depthMm: number;
  celsius: number;
  massKg: number;
  level: number;
  boiling: boolean;
  burned: boolean;
  off: boolean;
  /** A probe hangs in it, and its tip is in the liquid and sound. */
  probed: boolean;
  /** A probe hangs in it and its tip is bare or faulty. */
  tipBare: boolean;
}

export interface PanFacts {
  id: string;
  finishBrix: number;
  minDepthMm: number;
  /** Infinity for a pan that may boil. */
  ceilingC: number;
  /** The true mix rises as the header's does, to 0.1 °C near the finish. */
  mixAlike: boolean;
  probe: string | null;
}

export interface Witnessed {
  recording: string;
  header: Scenario['header'];
  pans: PanFacts[];
  /** One each 10 s from t = 0, by pan. */
  samples: Record<string, Sample[]>;
  moments: TruthMoment[];
  marks: { t: number; mark: Mark }[];
  endsAt: number;
}

export function witness(scenario: Scenario): Witnessed {
  const state = startSimulation(scenario);
  const lines = [JSON.stringify(scenario.header)];
  const samples: Record<string, Sample[]> = Object.fromEntries(state.pans.map(({ id }) => [id, []]));
  const marks: Witnessed['marks'] = [];
  let t = 0;
  let idleMs = 0;
  for (; !state.ended && idleMs < IDLE_MS; t += SAMPLE_MS) {
    for (const entry of stepSimulation(state, t)) keep(entry, lines, marks);
    for (const pan of state.pans) samples[pan.id]!.push(sampleOf(state, pan, t));
    idleMs = state.pans.every(({ off }) => off) ? idleMs + SAMPLE_MS : 0;
  }
  if (!state.ended) lines.push(JSON.stringify({ t, run: 'ended' }));
  return {
    recording: `${lines.join('\n')}\n`,
    header: scenario.header,
    pans: state.pans.filter(({ role }) => role === 'syrup').map((pan) => factsOf(scenario, pan)),
    samples,
    moments: state.truth.moments,
    marks,
    endsAt: t,
  };
}

function keep(entry: Entry, lines: string[], marks: Witnessed['marks']): void {
  lines.push(JSON.stringify(entry));
  if ('mark' in entry) marks.push(entry);
}

function sampleOf(state: SimulationState, pan: PanState, t: number): Sample {
  const off = pan.off || massKg(pan.liquid) === 0;
  const depthMm = off ? 0 : depthMillimetres(pan.liquid, pan.hearth.areaM2);
  const probes = state.probes.filter((probe) => probe.pan === pan.id);
  const probed = probes.some(({ fault, setup }) => fault === 'none' && setup.tipMm < depthMm);
  return {
    t,
    brix: off ? 0 : strengthBrix(pan.liquid),
    litres: off ? 0 : litresAtTwenty(pan.liquid),
    depthMm,
    celsius: pan.liquid.celsius,
    massKg: massKg(pan.liquid),
    level: pan.level,
    boiling: pan.boiling && !off,
    burned: pan.burned,
    off,
    probed,
    tipBare: !off && probes.length > 0 && !probed,
  };
}

function factsOf(scenario: Scenario, pan: PanState): PanFacts {
  const setup = scenario.header.pans!.find(({ id }) => id === pan.id)!;
  const rise = (shares: SugarShares): number => riseFromStrength(66, shares, 980) ?? 0;
  const probe = [setup.probe].flat()[0] ?? null;
  return {
    id: pan.id,
    finishBrix: pan.finishBrix,
    minDepthMm: pan.minDepthMm,
    ceilingC: pan.ceilingCelsius,
    mixAlike: Math.abs(rise(pan.hearth.shares) - rise(sugarShares(setup.sap ?? 'maple'))) < ALIKE_C,
    probe,
  };
}
