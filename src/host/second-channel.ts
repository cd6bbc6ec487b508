// Decides which calls also go another way: what nobody answered for a minute, and what nobody could hear.
import type { Header } from '../core/boil/entries.ts';
import type { AlarmView, Now } from '../protocol/messages.ts';

/** A high call that nobody answered for so long goes out, ms. */
const UNANSWERED_MS = 60_000;
/** And again after so long, ms; a person who drives home wants no more. */
const AGAIN_MS = 5 * 60_000;

/** What became worse, or came back after an answer, is a call of its own. */
const nameOf = ({ alarm, pan, port, since, priority }: AlarmView): string =>
  JSON.stringify([alarm, pan, port, since, priority]);

/** One call as a sentence that can stand alone in a message. It never begins with what a program takes for an option. */
export function callSentence({ pan, port, title, why, todo }: AlarmView, header: Header | null): string {
  const name = header?.pans?.find(({ id }) => id === pan)?.name ?? pan;
  const where = name ?? (port === null ? null : `Board ${port}`);
  return `Panwarden: ${where === null ? '' : `${where}: `}${title} (${why.replace(/\.$/, '')}). ${todo}`;
}

/** Since when a call waits for an answer, and when it went out last; ms of boil time. */
interface Waiting {
  since: number;
  toldAt: number | null;
}

export class SecondChannel {
  #waiting = new Map<string, Waiting>();

  /**
   * The calls that are due now. While nobody could hear (`heard` false), calls of middle priority go out too, and at
   * once. A silence holds for this way also: somebody is there.
   */
  due({ alarms, sound, t }: Pick<Now, 'alarms' | 'sound' | 't'>, heard: boolean): AlarmView[] {
    const isFor = ({ priority }: AlarmView) => priority === 'high' || (!heard && priority === 'medium');
    const calling = alarms.filter((one) => one.condition === 'active' && !one.answered && one.asideUntil === null);
    const before = this.#waiting;
    this.#waiting = new Map(
      calling.map(nameOf).map((name) => [name, before.get(name) ?? { since: t, toldAt: null }] as const),
    );
    if (sound.silencedUntil !== null && sound.silencedUntil > t) return [];
    return calling.filter((alarm) => isFor(alarm) && this.#goesOut(nameOf(alarm), t, heard));
  }

  #goesOut(name: string, t: number, heard: boolean): boolean {
    const waiting = this.#waiting.get(name);
    if (waiting === undefined) return false;
    const { since, toldAt } = waiting;
    const isDue = toldAt === null ? !heard || t - since >= UNANSWERED_MS : t - toldAt >= AGAIN_MS;
    if (isDue) waiting.toldAt = t;
    return isDue;
  }
}
