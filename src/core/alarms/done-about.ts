// What a person did about a call before they said that they saw it: who does what it asks for has seen it.
import { type AlarmBook, type AlarmState, forgetWhenDone, isOn } from './engine.ts';

/**
 * Somebody did, at `at` (ms), what the calls that `isAsked` gives ask for. One that stood then is seen: it goes on calling
 * as long as its cause is there, and once it is over nobody is asked about it. One that came later is another, and so is one
 * of that very moment: whether it was looked at before the deed depends on who looks.
 */
export function doneAbout(book: AlarmBook, isAsked: (state: AlarmState) => boolean, at: number): void {
  for (const state of book.alarms.filter((one) => at > one.raisedAt && isAsked(one))) {
    if (isOn(state)) state.seenOnce = true;
    else if (state.overUnseen && state.condition === 'ok' && at <= state.since) {
      state.overUnseen = false;
      forgetWhenDone(book, state);
    }
  }
}
