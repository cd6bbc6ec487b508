// Plays call patterns through Web Audio, and knows whether the browser lets it.
import { signal } from '@preact/signals';
import type { Priority, Settings } from '../client/types.ts';
import { HARMONIC_STRENGTHS, RISE_SHARE, callFor } from './patterns.ts';
import type { Call, Pulse } from './patterns.ts';

/** `waiting` until the page has been tapped: browsers forbid sound before that. */
export const soundState = signal<'waiting' | 'ready' | 'none'>('waiting');

const GAIN: Record<Settings['loudness'], number> = { soft: 0.12, middle: 0.4, loud: 1 };
const SAFETY_GAIN = 0.3;

let context: AudioContext | null = null;

function noteState(): void {
  soundState.value = context === null ? 'none' : context.state === 'running' ? 'ready' : 'waiting';
}

function audio(): AudioContext | null {
  if (context !== null) return context;
  try {
    context = new AudioContext();
    context.onstatechange = noteState;
  } catch {
    context = null;
  }
  noteState();
  return context;
}

/** To be called from a press or a key, which is when a browser lets a page begin to sound. */
export async function allowSound(): Promise<boolean> {
  const found = audio();
  if (found !== null && found.state !== 'running') await found.resume().catch(() => undefined);
  noteState();
  return soundState.value === 'ready';
}

/** Lets the first press or key anywhere on the page allow the sound. */
export function allowSoundOnFirstTouch(): void {
  audio();
  for (const event of ['pointerup', 'keydown'] as const) {
    addEventListener(event, () => void allowSound(), { capture: true });
  }
}

function playPulse(found: AudioContext, call: Call, pulse: Pulse, gain: number, beganAt: number): void {
  const start = beganAt + pulse.startMs / 1000;
  const length = pulse.lengthMs / 1000;
  const tone = found.createOscillator();
  const sines = new Float32Array([0, ...HARMONIC_STRENGTHS]);
  tone.setPeriodicWave(found.createPeriodicWave(new Float32Array(sines.length), sines));
  tone.frequency.value = call.fundamentalHz;
  const shape = found.createGain();
  shape.gain.setValueAtTime(0, start);
  shape.gain.linearRampToValueAtTime(gain * SAFETY_GAIN, start + length * RISE_SHARE);
  shape.gain.setValueAtTime(gain * SAFETY_GAIN, start + length * (1 - RISE_SHARE));
  shape.gain.linearRampToValueAtTime(0, start + length);
  tone.connect(shape).connect(found.destination);
  tone.start(start);
  tone.stop(start + length);
}

/** Plays one burst now. False when the browser does not let it. */
export function playBurst(priority: Priority, loudness: Settings['loudness']): boolean {
  const found = audio();
  if (found?.state !== 'running') return false;
  const call = callFor(priority);
  for (const pulse of call.pulses) playPulse(found, call, pulse, GAIN[loudness], found.currentTime + 0.02);
  return true;
}
