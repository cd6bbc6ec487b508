// The second channel beside the page's sound: notifications and beeps; and keeps the machine awake while pans are watched.
import { Notification, powerSaveBlocker, shell } from 'electron';
import type { BrowserWindow } from 'electron';
import type { AlarmView, HostMessage, Now } from '../src/protocol/messages.ts';
import { hostWords, say } from './spoken.ts';

/** Shows a system notification where the system lets us; it may be muted, so it is never the alarm itself. */
export function notify(title: string, body: string, clicked = (): void => undefined): void {
  if (!Notification.isSupported()) return;
  new Notification({ title, body, urgency: 'critical', timeoutType: 'never' }).on('click', clicked).show();
}

/** Brings a window to the front that may be hidden, behind others, or made small. */
export function bringUp(window: BrowserWindow): void {
  if (window.isMinimized()) window.restore();
  window.show();
}

const nameOf = ({ alarm, pan, port, since }: AlarmView): string => JSON.stringify([alarm, pan, port, since]);

export class Attention {
  /** True while the page cannot be trusted to sound; then alarms of middle priority are called here too. */
  pageIsDown = false;
  /** Whether pans are watched now, so that closing the program would leave them alone. */
  watching = false;
  #called = new Set<string>();
  #blocker: number | null = null;

  /** `show` brings the window to the front. */
  hear(message: HostMessage, show: () => void): void {
    if (message.kind !== 'now' || message.view !== 'live') return;
    this.watching = message.mode !== 'idle' && !message.ended;
    this.#keepAwake();
    this.#call(message, show);
  }

  /** A call that nobody answered or could hear. */
  tell(sentence: string): void {
    notify(say('window.waits'), sentence);
    shell.beep();
  }

  /** The machine was asleep: what kept it awake did not, and nobody watched. */
  slept(): void {
    if (!this.watching) return;
    this.#letSleep();
    this.#keepAwake();
    notify(say('window.slept'), say('window.slept.todo'));
    shell.beep();
  }

  #call({ alarms, sound, header, t }: Now, show: () => void): void {
    const isFor = ({ priority }: AlarmView) => priority === 'high' || (this.pageIsDown && priority === 'medium');
    const urgent = alarms.filter((alarm) => alarm.condition === 'active' && !alarm.answered && isFor(alarm));
    for (const alarm of urgent.filter((each) => !this.#called.has(nameOf(each)))) {
      const pan = header?.pans?.find(({ id }) => id === alarm.pan)?.name ?? alarm.pan;
      const title = hostWords(alarm.title);
      const body = say('window.why_and_todo', { why: hostWords(alarm.why), todo: hostWords(alarm.todo) });
      notify(pan === null ? title : say('mark.of_pan', { pan, words: title }), body, show);
      show();
    }
    this.#called = new Set(urgent.map(nameOf));
    // The host speaks at least once a second, so this goes on until somebody answers or silences it.
    if (this.pageIsDown && urgent.length > 0 && (sound.silencedUntil ?? 0) <= t) shell.beep();
  }

  #keepAwake(): void {
    if (this.watching === (this.#blocker !== null)) return;
    if (!this.watching) return this.#letSleep();
    this.#blocker = powerSaveBlocker.start('prevent-display-sleep');
    // Some desktops of Linux give a number and do nothing.
    if (powerSaveBlocker.isStarted(this.#blocker)) return;
    notify(say('window.may_sleep'), say('window.may_sleep.todo'));
  }

  #letSleep(): void {
    if (this.#blocker !== null) powerSaveBlocker.stop(this.#blocker);
    this.#blocker = null;
  }
}
