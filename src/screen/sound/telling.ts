// What a call does beside its sound: it is spoken where that is wanted, and notified where the page is not looked at.
import { effect } from '@preact/signals';
import { live, settings } from '../client/store.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { language } from '../language/language.ts';
import { say } from '../language/say.ts';
import { asSentence, firstUnseen, soundsNow, whereWords } from '../words/alarm-words.ts';
import { spokenCall } from '../words/spoken-words.ts';
import { whyWords } from '../words/why-words.ts';
import { burstLengthMs, callFor } from './patterns.ts';

/** The one call that would be answered next, while it sounds. */
function calling(now: Now | null): AlarmView | null {
  if (now === null || soundsNow(now) === null) return null;
  const alarm = firstUnseen(now.alarms);
  return alarm?.condition === 'active' && alarm.asideUntil === null ? alarm : null;
}

function speak(sentence: string): void {
  if (!('speechSynthesis' in globalThis)) return;
  const words = new SpeechSynthesisUtterance(sentence);
  // The voice of the language that the sentence is in, whatever the machine's own is.
  words.lang = language.value;
  speechSynthesis.speak(words);
}

/** Whether the browser has notifications, and whether the person lets this page show them. */
export function notificationState(): 'none' | 'ask' | 'allowed' | 'refused' {
  return 'Notification' in globalThis ? ANSWERS[Notification.permission] : 'none';
}

const ANSWERS = { granted: 'allowed', denied: 'refused', default: 'ask' } as const;

/** To be called from a press; gives what the person decided. */
export async function allowNotifications(): Promise<ReturnType<typeof notificationState>> {
  // What the page knows of it may lag behind the answer itself.
  return notificationState() === 'ask' ? ANSWERS[await Notification.requestPermission()] : notificationState();
}

function notify(alarm: AlarmView, now: Now): void {
  if (notificationState() !== 'allowed' || document.hasFocus()) return;
  const title = say('alarm.called', { where: whereWords(alarm, now.header), what: hostWords(alarm.title) });
  // A reminder is told in the words that it was given.
  const why = alarm.alarm === 'reminder' ? alarm.why : hostWords(whyWords(alarm.why, settings.value));
  const body = `${asSentence(why)} ${hostWords(alarm.todo)}`;
  const shown = new Notification(title, { body, tag: title, requireInteraction: true });
  shown.onclick = () => focus();
}

/** Starts telling, for the life of the page; each call once, and again when it is called anew or becomes worse. */
export function tellTheCalls(): void {
  let told = '';
  effect(() => {
    const now = live.value;
    const alarm = calling(now);
    const name =
      alarm === null ? '' : JSON.stringify([alarm.alarm, alarm.pan, alarm.port, alarm.since, alarm.priority]);
    if (name === told) return;
    told = name;
    if (alarm === null || now === null) return;
    notify(alarm, now);
    if (!settings.value.spoken_calls) return;
    // Behind the sound, never in its place.
    setTimeout(() => speak(spokenCall(alarm, now)), burstLengthMs(callFor(alarm.priority)));
  });
}
