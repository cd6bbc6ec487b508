// Keeps the machine's screen on while pans are watched, where the browser can, and knows when it cannot.
import { computed, effect, signal } from '@preact/signals';
import { live } from '../client/store.ts';

const isWatching = computed(() => live.value !== null && live.value.mode === 'live' && !live.value.ended);

/** True while pans are watched and nothing keeps this machine awake, as far as the browser tells. */
export const maySleep = signal(false);

async function hold(): Promise<WakeLockSentinel | null> {
  if (!('wakeLock' in navigator)) return null;
  return navigator.wakeLock.request('screen').catch(() => null);
}

/** Holds the screen for as long as pans are watched. A browser lets go of it when the page is hidden, so it is asked again. */
export function keepAwake(): void {
  // The desktop window does it itself.
  if (window.panwarden !== undefined) return;
  effect(() => {
    if (!isWatching.value) return;
    let held: WakeLockSentinel | null = null;
    let isOver = false;
    const ask = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return;
      const lock = await hold();
      if (isOver) return void lock?.release();
      held = lock;
      maySleep.value = held === null;
    };
    const askAgain = (): void => void ask();
    document.addEventListener('visibilitychange', askAgain);
    void ask();
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', askAgain);
      void held?.release();
      maySleep.value = false;
    };
  });
}
