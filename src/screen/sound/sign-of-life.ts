// Tells the host about once a second that this page lives, whether it can sound, and what it knows of the battery.
import { effect } from '@preact/signals';
import { live, report } from '../client/store.ts';
import type { PageReport } from '../client/types.ts';
import { audioState, soundState } from './player.ts';

/** As much of the Battery Status API as is used here; only some browsers have it. */
interface Battery {
  readonly charging: boolean;
  readonly level: number;
  /** Seconds; Infinity where it is not known. */
  readonly dischargingTime: number;
}

let battery: Battery | null = null;

async function findBattery(): Promise<void> {
  const { getBattery } = navigator as Navigator & { getBattery?: () => Promise<Battery> };
  battery = (await getBattery?.call(navigator)) ?? null;
}

function batteryNow(): PageReport['battery'] {
  if (battery === null) return null;
  const { charging, level, dischargingTime } = battery;
  return { charging, level, seconds_left: Number.isFinite(dischargingTime) ? dischargingTime : null };
}

/**
 * Each word of the host is answered, once a second at most. It is no timer's work: a browser slows down the timers of a
 * hidden page, but not what comes to it; and a page that hangs cannot answer.
 */
export function showSignsOfLife(): void {
  let toldOf = '';
  void findBattery().catch(() => undefined);
  effect(() => {
    const moment = `${live.value?.clock} ${soundState.value}`;
    if (live.value === null || moment === toldOf) return;
    toldOf = moment;
    report({ audio: audioState(), battery: batteryNow() });
  });
}
