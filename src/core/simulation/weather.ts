// The air round the pans and the fires under them: wind and fires that swing, pressure that drifts.
import type { Heat } from '../boil/entries.ts';
import { saturationPressureHpa, saturationTemperatureCelsius } from '../physics/water-point.ts';
import { driftingNoise, nextUniform, type RandomStream } from './random.ts';
import type { FirePlan, PressurePoint, Scenario } from './scenario.ts';

export interface Air {
  celsius: number;
  windMetresPerSecond: number;
  pressureHpa: number;
  /** Water's boiling point at that pressure. */
  waterCelsius: number;
  /** Pressure of the vapour in the air. */
  vapourHpa: number;
  /** What wind and pressure have drifted from their plan. */
  windDrift: number;
  pressureDrift: number;
}

export interface Fire {
  /** Heat given now as a share of the burner's own at this level; 1 on the mean. */
  strength: number;
  drift: number;
  /** A wood fire is fed at these times and dies down between, s of boil time. */
  fedAtSecond: number;
  feedAgainSecond: number;
  /** Of a fire that swings by plan: how far round it is, 0 to 1, and this round's length, s. */
  swing: { phase: number; periodSeconds: number };
}

/** Gusts last a minute or two; small waves of pressure last half an hour. */
const gust = { memorySeconds: 90 };
const pressureWave = { memorySeconds: 1800, spread: 0.12 };

/** Its vapour matters little beside that of hot sap. */
const airHumidity = 0.6;

/** A gas flame is steady to a few per cent; wood is fed every 9 to 16 min and swings by a third. */
const gasFlutter = { memorySeconds: 300, spread: 0.025 };
const woodFlutter = { memorySeconds: 120, spread: 0.06 };
const woodPeak = 1.25;
const woodDecaySeconds = 1500;
const leastFeedSeconds = 540;
const feedSpreadSeconds = 420;
/** Fresh wood takes a while to catch. */
const woodCatchSeconds = 90;

/** hPa on the line through the points, level before the first and after the last. */
export function plannedPressure(points: PressurePoint[], t: number): number {
  let before = points[0];
  if (before === undefined) throw new RangeError('A scenario needs at least one point of pressure.');
  for (const point of points) {
    if (point.t > t) {
      const share = point.t > before.t ? Math.max(0, (t - before.t) / (point.t - before.t)) : 1;
      return before.hpa + share * (point.hpa - before.hpa);
    }
    before = point;
  }
  return before.hpa;
}

function waterPointCelsius(pressureHpa: number): number {
  const celsius = saturationTemperatureCelsius(pressureHpa);
  if (celsius === null) throw new RangeError(`Water does not boil at ${pressureHpa} hPa: check the scenario.`);
  return celsius;
}

/** The air as a boil begins. */
export function startAir(plan: Scenario['air']): Air {
  const pressureHpa = plannedPressure(plan.pressure, 0);
  return {
    celsius: plan.celsius,
    windMetresPerSecond: plan.windMetresPerSecond,
    pressureHpa,
    waterCelsius: waterPointCelsius(pressureHpa),
    vapourHpa: airHumidity * (saturationPressureHpa(Math.max(0, plan.celsius)) ?? 0),
    windDrift: 0,
    pressureDrift: 0,
  };
}

/** One second of weather up to t (ms). */
export function moveAir(air: Air, plan: Scenario['air'], t: number, random: RandomStream): void {
  air.windDrift = driftingNoise(
    air.windDrift,
    { seconds: 1, memorySeconds: plan.gustSeconds ?? gust.memorySeconds, spread: plan.windSpread },
    random,
  );
  air.pressureDrift = driftingNoise(air.pressureDrift, { seconds: 1, ...pressureWave }, random);
  air.windMetresPerSecond = Math.max(0, plan.windMetresPerSecond + air.windDrift);
  air.pressureHpa = plannedPressure(plan.pressure, t) + air.pressureDrift;
  air.waterCelsius = waterPointCelsius(air.pressureHpa);
}

/** A fire as a boil begins. */
export function startFire(): Fire {
  return {
    strength: 1,
    drift: 0,
    fedAtSecond: 0,
    feedAgainSecond: leastFeedSeconds,
    swing: { phase: 0, periodSeconds: 0 },
  };
}

/** One second of a fire; electric heat does not change, and a plan stands in place of what the kind does. */
export function moveFire(
  fire: Fire,
  kind: Heat['kind'],
  second: number,
  random: RandomStream,
  plan: FirePlan | null = null,
): void {
  if (plan !== null) return followPlan(fire, plan, random);
  if (kind === 'electric') return;
  const flutter = kind === 'wood' ? woodFlutter : gasFlutter;
  fire.drift = driftingNoise(fire.drift, { seconds: 1, ...flutter }, random);
  fire.strength = Math.max(0, (kind === 'wood' ? woodStrength(fire, second, random) : 1) + fire.drift);
}

function followPlan(fire: Fire, { flutter, swing }: FirePlan, random: RandomStream): void {
  fire.drift = driftingNoise(fire.drift, { seconds: 1, ...flutter }, random);
  const swung = swing === undefined ? 0 : swing.share * swingOn(fire.swing, swing.periodSeconds, random);
  fire.strength = Math.max(0, 1 + swung + fire.drift);
}

function swingOn(swing: Fire['swing'], [least, most]: [number, number], random: RandomStream): number {
  if (swing.periodSeconds === 0 || swing.phase >= 1) {
    swing.phase = swing.periodSeconds === 0 ? nextUniform(random) : swing.phase - 1;
    swing.periodSeconds = least + (most - least) * nextUniform(random);
  }
  swing.phase += 1 / swing.periodSeconds;
  return Math.sin(2 * Math.PI * swing.phase);
}

function woodStrength(fire: Fire, second: number, random: RandomStream): number {
  if (second >= fire.feedAgainSecond) {
    fire.fedAtSecond = second;
    fire.feedAgainSecond = second + leastFeedSeconds + Math.floor(feedSpreadSeconds * nextUniform(random));
  }
  const age = second - fire.fedAtSecond;
  const caught = 1 - 0.3 * Math.exp(-age / woodCatchSeconds);
  return woodPeak * caught * Math.exp(-age / woodDecaySeconds);
}
