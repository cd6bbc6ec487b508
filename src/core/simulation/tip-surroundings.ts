// What a tip meets at its own place in a boiling pan and the pan's mean does not tell: local superheat and foam.
import { strengthBrix } from './liquid.ts';
import { driftingNoise, nextUniform, type RandomStream } from './random.ts';
import type { PanState, ProbeState } from './state.ts';

/** Drifts without a unit; what it means in degrees is the probe's plan. */
export interface Superheat {
  drift: number;
}

export interface Foam {
  standing: boolean;
}

/** A tip that stands no higher than its liquid yet. */
export const startSuperheat = (): Superheat => ({ drift: 0 });
/** A pan without foam. */
export const startFoam = (): Foam => ({ standing: false });

/** One second; draws nothing for a probe without a plan. */
export function moveSuperheat({ setup, superheat }: ProbeState, random: RandomStream): void {
  if (setup.superheat === undefined) return;
  const { memorySeconds } = setup.superheat;
  superheat.drift = driftingNoise(superheat.drift, { seconds: 1, memorySeconds, spread: 1 }, random);
}

/** One second; foam comes and goes by chance while the pan boils and is thick enough. */
export function moveFoam(pan: PanState, random: RandomStream): void {
  const plan = pan.foamPlan;
  if (plan === null) return;
  if (!pan.boiling || strengthBrix(pan.liquid) < plan.fromBrix) {
    pan.foam.standing = false;
    return;
  }
  const meanSeconds = pan.foam.standing ? plan.lastsSeconds : plan.restsSeconds;
  if (nextUniform(random) < 1 / meanSeconds) pan.foam.standing = !pan.foam.standing;
}

/** How much hotter than the pan's liquid a covered tip's place is, °C; under 0 in foam that reads low. */
export function overLiquidCelsius({ setup, superheat }: ProbeState, pan: PanState): number {
  const most = pan.boiling ? (setup.superheat?.mostCelsius ?? 0) : 0;
  const inFoam = pan.foam.standing ? (pan.foamPlan?.offsetCelsius ?? 0) : 0;
  return (most * (1 + Math.tanh(superheat.drift))) / 2 + inFoam;
}

/** What foam adds to a probe's noise, °C. */
export function foamNoiseCelsius(pan: PanState | undefined): number {
  return pan?.foam.standing ? (pan.foamPlan?.noiseCelsius ?? 0) : 0;
}
