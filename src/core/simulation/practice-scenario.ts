// The practice boil: three simulated pots at Tarn Hollow, each at another stage, so that soon something is called.
import type { Header } from '../boil/entries.ts';
import type { Deed, Scenario, ScenarioPan, ScenarioProbe } from './scenario.ts';

const minute = 60_000;

export const practiceName = 'Practice boil, Tarn Hollow (simulated)';

/** The host puts its own `started` in. */
const header: Header & { invented: string } = {
  recording: 'panwarden',
  version: 1,
  name: practiceName,
  invented: 'Made by the simulator for Tarn Hollow; no real boil',
  started: '2027-03-20T09:00:00-07:00',
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A' }],
  probes: [
    { id: 'A/1', port: 'A', channel: 'T1' },
    { id: 'A/2', port: 'A', channel: 'T2', offset_c: -0.4 },
    { id: 'A/3', port: 'A', channel: 'T3' },
  ],
  pans: [
    {
      id: 'front',
      name: 'Front pot',
      sap: 'maple',
      probe: 'A/1',
      finish: { brix: 66.9 },
      vessel: { shape: 'round', diameter_mm: 360 },
      heat: { kind: 'propane', power_w: 10_000 },
    },
    {
      id: 'middle',
      name: 'Middle pot',
      sap: 'maple',
      probe: 'A/2',
      finish: { brix: 66.9 },
      vessel: { shape: 'round', diameter_mm: 400 },
      heat: { kind: 'propane', power_w: 16_000 },
    },
    {
      id: 'birch',
      name: 'Birch pot',
      sap: 'birch',
      probe: 'A/3',
      finish: { brix: 67 },
      vessel: { shape: 'round', diameter_mm: 320 },
      heat: { kind: 'propane', power_w: 8000 },
    },
  ],
};

const probe = (id: string, biasCelsius: number): ScenarioProbe => ({
  id,
  biasCelsius,
  lagSeconds: 4,
  noiseCelsius: 0.1,
  resolutionCelsius: 0.0625,
  spikesPerHour: 0.5,
  tipMm: 8,
});

const pans: ScenarioPan[] = [
  { id: 'front', litres: 9.6, brix: 48, celsius: 90, level: 1, efficiency: 0.34, lossWattsPerKelvin: 6 },
  { id: 'middle', litres: 4, brix: 9, celsius: 80, level: 1, efficiency: 0.32, lossWattsPerKelvin: 6 },
  { id: 'birch', litres: 8.4, brix: 26, celsius: 60, level: 1, efficiency: 0.36, lossWattsPerKelvin: 5 },
];

/** Under what the middle pot's card says may be poured in at once (0.58 L at the least), so that the boil is soon back. */
const littleAndOften = { act: 'pour' as const, pan: 'middle', litres: 0.5, brix: 2.2, celsius: 40 };

/** The same that is noted again within two minutes counts once (core/boil/marks.ts), so the next pour waits longer. */
const notedTwiceSeconds = 125;

/**
 * A pot is left on for a while after its finish, so that a beginner hears it called and may take it off first; then,
 * however often it is filled again, somebody takes it off, before it is past its finish.
 */
const takenOff = (pan: string, value: number, delaySeconds: number): Deed => ({
  when: { sight: 'brix-above', pan, value, delaySeconds, times: 40 },
  acts: [{ act: 'draw-off', pan, litres: 'all' }],
  looksAgain: true,
});

const deeds: Deed[] = [
  { when: { at: 0 }, acts: [{ act: 'read-pressure' }] },
  ...['A/1', 'A/2', 'A/3'].map((id): Deed => ({ when: { at: 0 }, acts: [{ act: 'check-water', probe: id }] })),
  ...pans.map(({ id, litres, brix, celsius }): Deed => {
    const mark = { kind: 'top-up' as const, pan: id, litres, brix, celsius };
    return { when: { at: 0 }, acts: [{ act: 'note', mark }] };
  }),
  {
    when: {
      sight: 'depth-below',
      pan: 'middle',
      value: 34,
      times: 40,
      delaySeconds: 60,
      restSeconds: notedTwiceSeconds,
      // Only after it was called as running low: the beginner hears that, and may do it first.
      from: 14 * minute,
      until: 104 * minute,
    },
    acts: [littleAndOften],
    // Typed as it is done: who had not seen it yet would pour, and note, the same once more.
    looksAgain: true,
  },
  // Towards the end it is left to boil down, but where the person took out of it or lit it again nobody lets it burn.
  {
    when: {
      sight: 'depth-below',
      pan: 'middle',
      value: 8,
      times: 60,
      delaySeconds: 5,
      restSeconds: notedTwiceSeconds,
      from: 104 * minute,
    },
    acts: [littleAndOften],
    looksAgain: true,
  },
  // Somebody dips a stick now and then: it tells the thin pot's litres, which its temperature cannot.
  ...[12, 34, 50, 72, 90].map((minutes): Deed => ({
    when: { at: minutes * minute },
    acts: [{ act: 'measure-depth', pan: 'middle' }],
  })),
  takenOff('front', 66.9, 100),
  takenOff('middle', 66.9, 30),
  takenOff('birch', 67, 75),
  { when: { at: 118 * minute }, acts: [{ act: 'flame', pan: 'middle', level: 0 }] },
];

/**
 * The practice boil for a seed: about 2 h of boil time, then it ends by itself. Where the person poured on, it waits up
 * to 2 h more for the pots that are still on their fires.
 * The front pot reaches its finish after some 50 min and is drawn off two minutes later unless the person does it first.
 */
export function practiceScenario(seed: number): Scenario {
  return {
    seed,
    header: structuredClone(header),
    endsAt: 120 * minute,
    waitsUntil: 240 * minute,
    air: {
      celsius: 6,
      windMetresPerSecond: 0.8,
      windSpread: 0.5,
      pressure: [
        { t: 0, hpa: 941.5 },
        { t: 120 * minute, hpa: 939.5 },
      ],
    },
    pans: structuredClone(pans),
    ports: [{ id: 'A', periodMs: 1000, phaseMs: 240 }],
    probes: [probe('A/1', 0.25), probe('A/2', 0.55), probe('A/3', -0.2)],
    deeds: structuredClone(deeds),
  };
}
