// How a boil of the forecast bench is put together: what the person believes goes into the header, what is true beside it.
import type { Finish, Header, Heat, PanSetup, Sap, SugarShares, Vessel } from '../../../src/core/boil/entries.ts';
import type {
  Deed,
  FirePlan,
  FoamPlan,
  PressurePoint,
  Scenario,
  ScenarioProbe,
} from '../../../src/core/simulation/scenario.ts';

export const minute = 60_000;
export const hour = 60 * minute;

/** Field by field: believed (header) or true (simulator). */
export interface PotPlan {
  id: string;
  sap: Sap;
  /** True mix; the header's unless set. */
  trueShares?: SugarShares;
  /** True bottom; the header's vessel is left out where nobody measured it. */
  areaM2: number;
  vesselTold: boolean;
  heatKind: Heat['kind'];
  truePowerWatts: number;
  /** What the person believes; left out where nobody knows. */
  toldPowerWatts?: number;
  efficiency: number;
  lossWattsPerKelvin: number;
  level?: number;
  finish?: Finish;
  minDepthMm: number;
  litres: number;
  brix: number;
  celsius: number;
  fire?: FirePlan;
  foam?: FoamPlan;
  /** The flaws of its probe; null for a pan without one. */
  probe: Omit<ScenarioProbe, 'id'> | null;
}

export interface BoilPlan {
  seed: number;
  name: string;
  pots: PotPlan[];
  periodMs: number;
  altitudeM: number | null;
  pressure: PressurePoint[];
  wind: { mean: number; spread: number; gustSeconds: number };
  airCelsius: number;
  deeds: Deed[];
  endsAt: number;
}

/** A probe of pan p1 is called A/1, and so on. */
export const probeOf = (pot: PotPlan): string => `A/${pot.id.slice(1)}`;

function vesselOf(pot: PotPlan): Vessel {
  if (pot.areaM2 > 0.2) {
    const width = Math.sqrt(pot.areaM2 / 2);
    return { shape: 'rectangular', length_mm: Math.round(2000 * width), width_mm: Math.round(1000 * width) };
  }
  return { shape: 'round', diameter_mm: Math.round(2000 * Math.sqrt(pot.areaM2 / Math.PI)) };
}

function panSetup(pot: PotPlan): PanSetup {
  const { id, sap, probe, finish, heatKind, toldPowerWatts } = pot;
  return {
    id,
    sap,
    ...(probe !== null && { probe: probeOf(pot) }),
    ...(pot.vesselTold && { vessel: vesselOf(pot) }),
    heat: { kind: heatKind, ...(toldPowerWatts !== undefined && { power_w: Math.round(toldPowerWatts) }) },
    min_depth_mm: pot.minDepthMm,
    ...(finish && { finish }),
  };
}

export function scenarioOf(plan: BoilPlan): Scenario {
  const header: Header & { invented: string } = {
    recording: 'panwarden',
    version: 1,
    name: plan.name,
    invented: 'Made by the simulator for Tarn Hollow; no real boil',
    started: '2027-03-20T06:00:00-07:00',
    ...(plan.altitudeM !== null && { site: { name: 'Tarn Hollow', altitude_m: Math.round(plan.altitudeM) } }),
    ports: [{ id: 'A' }],
    probes: plan.pots.flatMap((pot) =>
      pot.probe === null ? [] : [{ id: probeOf(pot), port: 'A', channel: `T${pot.id.slice(1)}` }],
    ),
    pans: plan.pots.map(panSetup),
  };
  return {
    seed: plan.seed,
    header,
    endsAt: plan.endsAt,
    air: {
      celsius: plan.airCelsius,
      windMetresPerSecond: plan.wind.mean,
      windSpread: plan.wind.spread,
      gustSeconds: plan.wind.gustSeconds,
      pressure: plan.pressure,
    },
    pans: plan.pots.map((pot) => ({
      id: pot.id,
      litres: pot.litres,
      brix: pot.brix,
      celsius: pot.celsius,
      level: pot.level ?? 1,
      efficiency: pot.efficiency,
      lossWattsPerKelvin: pot.lossWattsPerKelvin,
      powerWatts: pot.truePowerWatts,
      areaM2: pot.areaM2,
      ...(pot.trueShares && { shares: pot.trueShares }),
      ...(pot.fire && { fire: pot.fire }),
      ...(pot.foam && { foam: pot.foam }),
    })),
    ports: [{ id: 'A', periodMs: plan.periodMs, phaseMs: 310 }],
    probes: plan.pots.flatMap((pot) => (pot.probe === null ? [] : [{ ...pot.probe, id: probeOf(pot) }])),
    deeds: plan.deeds,
  };
}
