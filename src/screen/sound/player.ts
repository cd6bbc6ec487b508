// Plays rendered bursts through Web Audio at chosen moments, and knows whether this machine lets them be heard.
import { signal } from '@preact/signals';
import type { Priority, Settings } from '../client/types.ts';
import { callFor } from './patterns.ts';
import type { Call } from './patterns.ts';
import { renderBurst } from './render.ts';

/** `waiting` until the page has been tapped: browsers forbid sound before that. */
export const soundState = signal<'waiting' | 'ready' | 'none'>('waiting');

type Loudness = Settings['loudness'];
/** The steps are 8 dB and 10 dB: soft is for beside the pans, loud for across the yard. */
const GAIN: Record<Loudness, number> = { soft: 0.11, middle: 0.36, loud: 0.9 };
/** Long enough that a sound that is cut off does not click, s. */
const FADE_S = 0.01;
/** What is to be heard now still has to reach the device, s. */
const SOON_S = 0.02;

let context: AudioContext | null = null;
let isDeviceGone = false;
const rendered = new Map<string, AudioBuffer>();

/** What the host is told: only `running` can be heard. */
export function audioState(): 'running' | 'suspended' | 'closed' | 'none' {
  if (context === null || isDeviceGone) return 'none';
  if (context.state === 'running' || context.state === 'closed') return context.state;
  return 'suspended';
}

function noteState(): void {
  const state = audioState();
  soundState.value = state === 'running' ? 'ready' : state === 'suspended' ? 'waiting' : 'none';
}

/** A machine that had a loudspeaker and has none any more is silent. One that never named any may still have one. */
function watchDevices(): void {
  let most = 0;
  const count = async (): Promise<void> => {
    const devices = await navigator.mediaDevices.enumerateDevices();
    const outputs = devices.filter(({ kind }) => kind === 'audiooutput').length;
    most = Math.max(most, outputs);
    isDeviceGone = most > 0 && outputs === 0;
    noteState();
  };
  // Only pages of a safe address are told; a browser that does not tell is taken at its audio's word.
  if (!('mediaDevices' in navigator)) return;
  navigator.mediaDevices.addEventListener('devicechange', () => void count().catch(() => undefined));
  void count().catch(() => undefined);
}

function audio(): AudioContext | null {
  if (context !== null && context.state !== 'closed') return context;
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
  watchDevices();
  for (const event of ['pointerup', 'keydown'] as const) {
    addEventListener(event, () => void allowSound(), { capture: true });
  }
}

/** Seconds of the audio's own clock, which no browser slows down in a hidden page; null while nothing can be heard. */
export function audioSeconds(): number | null {
  return context?.state === 'running' ? context.currentTime : null;
}

function bufferOf(found: AudioContext, call: Call, isLoop: boolean): AudioBuffer {
  const name = `${call.fundamentalHz} ${call.pulses.length} ${isLoop}`;
  const made = rendered.get(name);
  if (made?.sampleRate === found.sampleRate) return made;
  const samples = renderBurst(call, found.sampleRate, isLoop ? call.pauseMs : 0);
  const buffer = found.createBuffer(1, samples.length, found.sampleRate);
  buffer.copyToChannel(samples, 0);
  rendered.set(name, buffer);
  return buffer;
}

export interface Playing {
  /** The moment of the audio's clock at which it begins, s. */
  startsAt: number;
  stop(): void;
}

/** Plays a burst at a moment of the audio's clock, or as soon as can be; in a loop, it is played again after its pause. */
export function playAt(call: Call, loudness: Loudness, at: number, { loop = false, quieter = 1 } = {}): Playing | null {
  if (context?.state !== 'running') return null;
  const found = context;
  const source = found.createBufferSource();
  source.buffer = bufferOf(found, call, loop);
  source.loop = loop;
  const level = found.createGain();
  level.gain.value = GAIN[loudness] * quieter;
  source.connect(level).connect(found.destination);
  source.onended = () => level.disconnect();
  const startsAt = Math.max(at, found.currentTime + SOON_S);
  source.start(startsAt);
  return {
    startsAt,
    stop() {
      level.gain.setTargetAtTime(0, found.currentTime, FADE_S / 3);
      source.stop(found.currentTime + FADE_S);
    },
  };
}

/** Plays one burst now. False when the browser does not let it. */
export function playBurst(priority: Priority, loudness: Loudness): boolean {
  return playAt(callFor(priority), loudness, 0) !== null;
}
