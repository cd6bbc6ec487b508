// The whole state of a simulated boil as plain data, and how it starts.
import type { Entry, Header, PanSetup, SugarShares, Vessel } from '../boil/entries.ts';
import { sugarShares } from '../physics/sugar-shares.ts';
import { strengthFromRise } from '../physics/sugar-solution.ts';
import { surfaceM2 } from '../physics/vessel.ts';
import type { Hearth, HeatedLiquid } from './heating.ts';
import { liquidOf } from './liquid.ts';
import { randomStream, type RandomStream } from './random.ts';
import type { FirePlan, FoamPlan, ProbeFault, Scenario, ScenarioPan, ScenarioProbe } from './scenario.ts';
import { startFoam, startSuperheat, type Foam, type Superheat } from './tip-surroundings.ts';
import type { Truth } from './truth.ts';
import { startAir, startFire, type Air, type Fire } from './weather.ts';

export interface PanState extends HeatedLiquid {
  id: string;
  role: 'syrup' | 'reference';
  hearth: Hearth;
  heatKind: 'propane' | 'wood' | 'electric' | 'other';
  level: number;
  fire: Fire;
  firePlan: FirePlan | null;
  foam: Foam;
  foamPlan: FoamPlan | null;
  /** Poured out and lifted off; the burner does not heat it until something is poured in. */
  off: boolean;
  finishBrix: number;
  minDepthMm: number;
  /** Infinity for a pan that may boil. */
  ceilingCelsius: number;
  /** What the truth has been told already. */
  passed: { boiling: boolean; finish: boolean; shallow: boolean; ceiling: boolean; burned: boolean };
}

export interface ProbeState {
  setup: ScenarioProbe;
  port: string;
  channel: string;
  offsetCelsius: number;
  /** null: it hangs in the air. */
  pan: string | null;
  /** What the tip has warmed to, °C. */
  tipCelsius: number;
  /** What stands between the tip and the liquid has warmed to, °C, where the probe has a second lag. */
  sheathCelsius: number;
  superheat: Superheat;
  fault: ProbeFault;
}

export interface PortState {
  id: string;
  periodMs: number;
  nextLineAt: number;
  up: boolean;
}

/** How far a deed of the scenario has come. */
export interface DeedProgress {
  done: number;
  dueAt: number | null;
  restsUntil: number;
}

export interface SimulationState {
  scenario: Scenario;
  /** The next whole second to be worked out. */
  second: number;
  air: Air;
  pans: PanState[];
  probes: ProbeState[];
  ports: PortState[];
  deeds: DeedProgress[];
  /** Worked out and not handed over yet, in order of t. */
  pending: Entry[];
  marksMade: number;
  /** Nothing is written down before this, ms. */
  deafUntil: number;
  ended: boolean;
  truth: Truth;
  random: { weather: RandomStream; probes: RandomStream; hands: RandomStream; tips: RandomStream };
}

const defaultFinish = { maple: 66.9, other: 67 };
const defaultMinDepthMm = 15;

/** Simulated pans have upright walls. */
function areaM2(pan: string, vessel: Vessel | undefined): number {
  if (vessel === undefined) throw new Error(`The scenario's header gives pan ${pan} no vessel.`);
  if (vessel.shape === 'round' || vessel.shape === 'rectangular') return surfaceM2(vessel, 0);
  throw new Error(`A simulated pan is round or rectangular, not ${vessel.shape}.`);
}

/** A boil ready to be stepped from t = 0; throws when the scenario does not fit its own header. */
export function startSimulation(scenario: Scenario): SimulationState {
  const stream = (name: string): RandomStream => randomStream(scenario.seed, name);
  const air = startAir(scenario.air);
  return {
    scenario,
    second: 0,
    air,
    pans: scenario.pans.map((pan) => startPan(pan, scenario.header, air.pressureHpa)),
    probes: scenario.probes.map((probe) => startProbe(probe, scenario)),
    ports: scenario.ports.map(({ id, periodMs, phaseMs }) => ({ id, periodMs, nextLineAt: phaseMs, up: true })),
    deeds: scenario.deeds.map(() => ({ done: 0, dueAt: null, restsUntil: 0 })),
    pending: scenario.ports.map(({ id }) => ({ t: 0, port: id, state: 'open' })),
    marksMade: 0,
    deafUntil: 0,
    ended: false,
    truth: { moments: [], tracks: {} },
    random: { weather: stream('weather'), probes: stream('probes'), hands: stream('hands'), tips: stream('tips') },
  };
}

function startPan(plan: ScenarioPan, header: Header, pressureHpa: number): PanState {
  const setup = header.pans?.find(({ id }) => id === plan.id);
  if (setup === undefined) throw new Error(`The scenario's header has no pan ${plan.id}.`);
  const liquid = liquidOf(plan.litres, plan.brix, plan.celsius);
  const shares = plan.shares ?? sugarShares(setup.sap ?? 'maple');
  return {
    id: plan.id,
    role: setup.role ?? 'syrup',
    hearth: {
      areaM2: plan.areaM2 ?? areaM2(plan.id, setup.vessel),
      powerWatts: plan.powerWatts ?? setup.heat?.power_w ?? 0,
      efficiency: plan.efficiency,
      lossWattsPerKelvin: plan.lossWattsPerKelvin,
      shares,
    },
    heatKind: setup.heat?.kind ?? 'other',
    level: plan.level,
    fire: startFire(),
    firePlan: plan.fire ?? null,
    foam: startFoam(),
    foamPlan: plan.foam ?? null,
    liquid,
    off: plan.litres === 0,
    boiling: false,
    burned: false,
    evaporatedKg: 0,
    rise: null,
    finishBrix: finishBrix(setup, shares, pressureHpa),
    minDepthMm: setup.min_depth_mm ?? defaultMinDepthMm,
    ceilingCelsius: setup.finish?.ceiling_c ?? Infinity,
    passed: { boiling: false, finish: false, shallow: false, ceiling: false, burned: false },
  };
}

function finishBrix({ finish, sap }: PanSetup, shares: SugarShares, pressureHpa: number): number {
  if (finish === undefined) return sap === undefined || sap === 'maple' ? defaultFinish.maple : defaultFinish.other;
  if ('brix' in finish) return finish.brix;
  const brix = strengthFromRise(finish.rise_c, shares, pressureHpa);
  if (brix === null) throw new RangeError(`No strength belongs to a finish ${finish.rise_c} °C over water.`);
  return brix;
}

function startProbe(setup: ScenarioProbe, { header, pans }: Scenario): ProbeState {
  const wired = header.probes?.find(({ id }) => id === setup.id);
  if (wired === undefined) throw new Error(`The scenario's header has no probe ${setup.id}.`);
  const pan = header.pans?.find(({ probe }) => [probe].flat().includes(setup.id));
  const celsius = pans.find(({ id }) => id === pan?.id)?.celsius ?? 10;
  return {
    setup,
    port: wired.port,
    channel: wired.channel,
    offsetCelsius: wired.offset_c ?? 0,
    pan: pan?.id ?? null,
    tipCelsius: celsius,
    sheathCelsius: celsius,
    superheat: startSuperheat(),
    fault: 'none',
  };
}

/** Throws for a name that is not in the scenario. */
export function panNamed(state: SimulationState, id: string): PanState {
  const pan = state.pans.find((candidate) => candidate.id === id);
  if (pan === undefined) throw new Error(`No pan ${id} in this simulation.`);
  return pan;
}

/** Throws for a name that is not in the scenario. */
export function probeNamed(state: SimulationState, id: string): ProbeState {
  const probe = state.probes.find((candidate) => candidate.setup.id === id);
  if (probe === undefined) throw new Error(`No probe ${id} in this simulation.`);
  return probe;
}
