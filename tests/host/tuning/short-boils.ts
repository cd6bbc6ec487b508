// Short boils of one pot at Tarn Hollow (our invention), of which the end is known: a hydrometer is read near it, and the probe is checked in boiling water.
import { hour, inventedScenario, propane, round } from '../../../fixtures/boils/invented-boil.ts';
import { runSimulation } from '../../../src/core/simulation/simulate.ts';
import { startSimulation } from '../../../src/core/simulation/state.ts';

/** The line says so much too much, °C: the truth that is to be found. */
export const BIAS_C = 0.6;

/** The text of one, for a day of March; each day's weather, noise and looks are its own. */
export function shortBoil(day: number): string {
  const endsAt = 1.6 * hour;
  const scenario = inventedScenario({
    seed: 900 + day,
    name: `Short boil ${day}`,
    started: `2027-03-${String(day).padStart(2, '0')}T08:00:00-07:00`,
    airCelsius: 4,
    ports: [{ id: 'A', periodMs: 2000 }],
    pans: [
      {
        id: 'p1',
        name: 'Small pot',
        sap: 'maple',
        vessel: round(300),
        heat: propane(8000),
        finish: { brix: 66.9 },
        probes: [{ id: 'A/1', biasCelsius: BIAS_C }],
        litres: 6,
        brix: 40,
        celsius: 85,
        efficiency: 0.34,
      },
    ],
    pressure: [
      { t: 0, hpa: 938 + day },
      { t: endsAt, hpa: 939 + day },
    ],
    deeds: [
      { when: { at: 60_000 }, acts: [{ act: 'read-pressure' }] },
      { when: { at: 120_000 }, acts: [{ act: 'check-water', probe: 'A/1' }] },
      {
        when: { sight: 'brix-above', pan: 'p1', value: 64 },
        acts: [{ act: 'measure-density', pan: 'p1', instrument: 'hydrometer' }],
      },
      { when: { sight: 'brix-above', pan: 'p1', value: 68 }, acts: [{ act: 'draw-off', pan: 'p1', litres: 'all' }] },
    ],
    endsAt,
  });
  const state = startSimulation(scenario);
  const lines = [JSON.stringify(scenario.header)];
  for (const entry of runSimulation(state)) lines.push(JSON.stringify(entry));
  return `${lines.join('\n')}\n`;
}
