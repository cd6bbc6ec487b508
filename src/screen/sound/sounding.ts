// Sounds while the host says that a call is to be heard, and when the host says nothing any more; stops at once when it is not.
import { effect, signal } from '@preact/signals';
import { isLost, live, settings } from '../client/store.ts';
import type { Now, Priority } from '../client/types.ts';
import { soundsNow } from '../words/alarm-words.ts';
import { TICK, burstLengthMs, callFor } from './patterns.ts';
import { audioSeconds, playAt, soundState } from './player.ts';
import type { Playing } from './player.ts';

const TURN_MS = 250;
/** A burst is handed to the audio this long before it is due: the host speaks once a second, timers may not, s. */
const AHEAD_S = 1.3;
/** Just behind the moment at which the page shows that the host is gone, s. */
const LOST_CALL_AFTER_S = 4.5;
const TICK_EVERY_S = 60;
/** About 12 dB under the calls. */
const TICK_QUIETER = 0.25;

/** Somebody knows that the host is gone: no more sound of it, until the host was there again. */
export const knowsOfLoss = signal(false);

/** Stops the sound that says that the host is gone. */
export function quietLoss(): void {
  knowsOfLoss.value = true;
}

const watches = (now: Now | null): boolean => now !== null && now.mode !== 'idle' && !now.ended;

/** The bursts of the calls, one after the other, by the audio's own clock. */
class Calls {
  #priority: Priority | null = null;
  #playing: Playing | null = null;
  #nextAt = 0;

  /** One look: begins, goes on or stops. */
  turn(priority: Priority | null, seconds: number): void {
    if (priority !== this.#priority) {
      this.#playing?.stop();
      this.#playing = null;
      this.#nextAt = seconds;
    }
    this.#priority = priority;
    if (priority === null || seconds + AHEAD_S < this.#nextAt) return;
    const call = callFor(priority);
    this.#playing = playAt(call, settings.value.loudness, this.#nextAt);
    const startsAt = this.#playing?.startsAt ?? seconds;
    this.#nextAt = startsAt + (burstLengthMs(call) + call.pauseMs) / 1000;
  }
}

/**
 * The sound that says that the host is gone. It is handed to the audio beforehand, and put off by every word of the
 * host: so it is heard though the page's timers are slowed down, or the page itself hangs.
 */
class LossCall {
  #waiting: Playing | null = null;

  putOff(seconds: number): void {
    this.stop();
    if (!watches(live.value)) return;
    this.#waiting = playAt(callFor('high'), settings.value.loudness, seconds + LOST_CALL_AFTER_S, { loop: true });
  }

  stop(): void {
    this.#waiting?.stop();
    this.#waiting = null;
  }
}

class MinuteTick {
  #lastAt = 0;

  turn(seconds: number): void {
    if (!settings.value.minute_tick || !watches(live.value) || seconds - this.#lastAt < TICK_EVERY_S) return;
    this.#lastAt = seconds;
    playAt(TICK, settings.value.loudness, seconds, { quieter: TICK_QUIETER });
  }
}

/** Starts listening to the host's calls; for the life of the page. */
export function soundTheCalls(): void {
  const calls = new Calls();
  const loss = new LossCall();
  const tick = new MinuteTick();

  function turn(): void {
    // Read first: each of these makes it worth another look.
    const priority = isLost.value ? null : soundsNow(live.value);
    const seconds = soundState.value === 'ready' ? audioSeconds() : null;
    if (seconds === null) return;
    calls.turn(priority, seconds);
    if (priority === null && !isLost.value) tick.turn(seconds);
  }

  effect(() => {
    const seconds = live.value === null || soundState.value !== 'ready' ? null : audioSeconds();
    knowsOfLoss.value = false;
    if (seconds !== null) loss.putOff(seconds);
  });
  effect(() => {
    if (knowsOfLoss.value) loss.stop();
  });
  effect(turn);
  setInterval(turn, TURN_MS);
}
