// One simulated pot for the tests: a whole scenario in which a test changes what it is about.
import type { Deed, Scenario, ScenarioPan, ScenarioProbe } from '../../../src/core/simulation/scenario.ts';
import { startSimulation, type SimulationState } from '../../../src/core/simulation/state.ts';
import { runSimulation } from '../../../src/core/simulation/simulate.ts';
import type { Entry, PanSetup } from '../../../src/core/boil/entries.ts';

export interface OnePot {
  setup?: Partial<PanSetup>;
  pan?: Partial<ScenarioPan>;
  probe?: Partial<ScenarioProbe>;
  deeds?: Deed[];
  endsAt?: number;
  periodMs?: number;
  seed?: number;
}

export const onePot = (given: OnePot = {}): Scenario => ({
  seed: given.seed ?? 1,
  header: {
    recording: 'panwarden',
    version: 1,
    started: '2027-03-20T09:00:00-07:00',
    ports: [{ id: 'A' }],
    probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
    pans: [
      {
        id: 'p1',
        probe: 'A/1',
        vessel: { shape: 'round', diameter_mm: 300 },
        heat: { kind: 'propane', power_w: 8000 },
        ...given.setup,
      },
      { id: 'p2', vessel: { shape: 'round', diameter_mm: 300 }, heat: { kind: 'propane', power_w: 8000 } },
    ],
  },
  endsAt: given.endsAt ?? 3_600_000,
  air: { celsius: 5, windMetresPerSecond: 0.5, windSpread: 0.3, pressure: [{ t: 0, hpa: 940 }] },
  pans: [
    { id: 'p1', litres: 10, brix: 20, celsius: 95, level: 1, efficiency: 0.35, lossWattsPerKelvin: 5, ...given.pan },
    { id: 'p2', litres: 0, brix: 0, celsius: 10, level: 1, efficiency: 0.35, lossWattsPerKelvin: 5 },
  ],
  ports: [{ id: 'A', periodMs: given.periodMs ?? 1000, phaseMs: 200 }],
  probes: [
    {
      id: 'A/1',
      lagSeconds: 4,
      biasCelsius: 0,
      noiseCelsius: 0,
      resolutionCelsius: 0.01,
      spikesPerHour: 0,
      tipMm: 5,
      ...given.probe,
    },
  ],
  deeds: given.deeds ?? [],
});

export function wholeBoil(scenario: Scenario): { state: SimulationState; entries: Entry[] } {
  const state = startSimulation(scenario);
  return { state, entries: [...runSimulation(state)] };
}

export const marksOf = (entries: Entry[]) =>
  entries.flatMap((entry) => ('mark' in entry ? [{ t: entry.t, ...entry.mark }] : []));

/** What the lines say, in order; NaN where the device said nan. */
export const readingsOf = (entries: Entry[]): { t: number; celsius: number }[] =>
  entries.flatMap((entry) =>
    'line' in entry ? [{ t: entry.t, celsius: Number(entry.line.replace('T1=', '').replace('C', '')) }] : [],
  );
