// Sounds while the host says that a call is to be heard, burst after burst, and stops at once when it is not.
import { computed, effect } from '@preact/signals';
import { live, settings } from '../client/store.ts';
import { soundsNow } from '../words/alarm-words.ts';
import { burstLengthMs, callFor } from './patterns.ts';
import { playBurst } from './player.ts';

const calling = computed(() => soundsNow(live.value));

/** Starts listening to the host's calls; for the life of the page. */
export function soundTheCalls(): void {
  effect(() => {
    const priority = calling.value;
    if (priority === null) return;
    const { loudness } = settings.value;
    const call = callFor(priority);
    playBurst(priority, loudness);
    const timer = setInterval(() => playBurst(priority, loudness), burstLengthMs(call) + call.pauseMs);
    return () => clearInterval(timer);
  });
}
